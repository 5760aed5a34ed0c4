import type { VerdictWord } from '#core/yardstick/yardstick.ts';

/** The class that carries a verdict's tone; "can't tell" has no word that a class may be named after. */
export function toneOf(word: VerdictWord): string {
  return word === "can't tell" ? 'untold' : word;
}
