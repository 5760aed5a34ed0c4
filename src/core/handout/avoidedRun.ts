import { avoidedName, isKnownName } from '#core/yardstick/ingredientKin.ts';
import type { Language } from './handout.ts';
import type { Run } from './handoutPage.ts';
import { foodRun, outsideRun } from './line.ts';

/** What a reader avoids: in the page's language where the program knows the word, else as it was typed and marked as English, like names on labels. */
export function avoidedRun(word: string, language: Language): Run {
  return isKnownName(word) ? outsideRun(avoidedName(word, language)) : foodRun(word);
}
