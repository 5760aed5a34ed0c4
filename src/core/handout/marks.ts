import type { HandoutFood } from './handout.ts';
import type { Line } from './handoutPage.ts';
import { joined, programLine } from './line.ts';
import type { Words } from './words/words.ts';

/** What stands on a food wherever it is listed: how it is safe to eat, and which signed mineral its label does not tell. */
export function marksOf({ unsafe, notTold = [] }: Pick<HandoutFood, 'unsafe' | 'notTold'>, words: Words): readonly string[] {
  return [...(unsafe?.rule === 'heat' ? [words.heatIt(unsafe)] : []), ...(notTold.length === 0 ? [] : [words.mineralsNotKnown(notTold)])];
}

/** A line about a food with its marks behind it. */
export function marked(line: Line, food: Pick<HandoutFood, 'unsafe' | 'notTold'>, words: Words): Line {
  const marks = marksOf(food, words);
  return marks.length === 0 ? line : joined([line, ...marks.map(mark => programLine(`${mark}.`))]);
}
