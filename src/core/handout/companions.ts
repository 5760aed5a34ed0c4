import type { Plate } from '#core/plate/plate.ts';
import type { Run } from './handoutPage.ts';
import { foodRun } from './line.ts';
import type { Words } from './words/words.ts';

/** What a plate's food is eaten with: "Low-sodium bread (2 slices)". */
export function companionsRun({ companions }: Plate, words: Words): Run {
  return foodRun(companions.map(({ food, portion }) => `${food.name} (${words.portion(portion)})`).join(' + '));
}
