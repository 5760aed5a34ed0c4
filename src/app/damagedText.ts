// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
const damage = /[\0-\x08\x0b\x0c\x0e-\x1f\x7f\uFFFD]|\p{Surrogate}/u;

/** True for text with characters that no package prints: control characters, halves of a pair, the mark of a broken encoding. */
export function isDamaged(text: string): boolean {
  return damage.test(text);
}
