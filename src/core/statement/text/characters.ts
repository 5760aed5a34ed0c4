/** What a character is to the reader of words. */
export const characterClass = { other: 0, letter: 1, digit: 2, blank: 3 } as const;

/** The class of each ASCII character, by its code. */
export const asciiClass = new Uint8Array(128);
for (let code = 0; code < 128; code++) {
  const isLetter = (code >= 65 && code <= 90) || (code >= 97 && code <= 122);
  const isDigit = code >= 48 && code <= 57;
  const isBlank = code <= 32 || code === 127;
  asciiClass[code] = isLetter
    ? characterClass.letter
    : isDigit
      ? characterClass.digit
      : isBlank
        ? characterClass.blank
        : characterClass.other;
}

/**
 * Double-decoded UTF-8 leaves such characters where a dagger, a quote or a trade mark stood. The three lead letters
 * (\u00c2, \u00c3, \u00e2) are also French and Portuguese letters: they count as damage only before one of the others.
 */
const damageFollower =
  /[\u0080-\u00bf\u20ac\u2122\u0152\u0153\u0160\u0161\u017d\u017e\u0178\u0192\u201a-\u201e\u2020-\u2022\u2026\u2030\u02c6\u2039\u203a\ufffd]/;
const damageLead = /[\u00c2\u00c3\u00e2]/;
const wideBlanks: ReadonlySet<number> = new Set([0xa0, 0x2009, 0x202f, 0x3000, 0x200b, 0xfeff, 0x2028, 0x2029]);

/** The class of the character with this code at this place: letters of damaged text are none. */
export function classOf(code: number, text: string, at: number): number {
  if (code < 128) return asciiClass[code]!;
  if (wideBlanks.has(code)) return characterClass.blank;
  const character = text[at]!;
  if (damageFollower.test(character)) return characterClass.other;
  if (damageLead.test(character) && (damageFollower.test(text[at + 1] ?? '') || damageFollower.test(text[at - 1] ?? '')))
    return characterClass.other;
  return /\p{L}/u.test(character) ? characterClass.letter : characterClass.other;
}

/** The end of a run of characters that are neither letter nor blank nor ASCII. */
export function strangeRunEnd(text: string, from: number): number {
  let end = from + 1;
  while (end < text.length) {
    const code = text.charCodeAt(end);
    if (code < 128 || classOf(code, text, end) !== characterClass.other) break;
    end += 1;
  }
  return end;
}

/** True for a run of characters that only a wrong encoding leaves. */
export function isDamage(text: string, start: number, end: number): boolean {
  const first = text[start]!;
  return first === '\ufffd' || (damageLead.test(first) && end - start > 1);
}
