/**
 * A function from UTF-16 offsets to code point positions. For a text without surrogate pairs, which is nearly every
 * statement, it is the identity.
 */
export function codePointPositions(text: string): (offset: number) => number {
  if (!/[\ud800-\udbff][\udc00-\udfff]/.test(text)) return identity;
  const positions = new Uint32Array(text.length + 1);
  let position = 0;
  for (let offset = 0; offset < text.length; offset++) {
    positions[offset] = position;
    const code = text.charCodeAt(offset);
    const next = text.charCodeAt(offset + 1);
    const opensPair = code >= 0xd800 && code <= 0xdbff && next >= 0xdc00 && next <= 0xdfff;
    if (opensPair) {
      positions[offset + 1] = position;
      offset += 1;
    }
    position += 1;
  }
  positions[text.length] = position;
  return offset => positions[offset] ?? position;
}

const identity = (offset: number): number => offset;
