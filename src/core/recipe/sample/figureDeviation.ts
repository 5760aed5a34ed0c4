import type { Figure } from '../content.ts';

/** One standard deviation of a reference figure, as a share of the half width of its spread. */
const deviation = 0.8;

/** One standard deviation of a figure of the table: of 0.1 to 0.2 g in a gram, 0.04 g. */
export function figureDeviation({ lo, hi }: Figure): number {
  return ((hi - lo) / 2) * deviation;
}
