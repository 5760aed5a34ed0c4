/** From a figure up to another one; null where it has no upper end. */
export type Band = readonly [least: number, most: number | null];

export interface TrendPoint {
  /** "2026-05-01" */
  readonly day: string;
  readonly value: number;
}

export interface TrendScale {
  readonly least: number;
  readonly most: number;
  /** From 0, the first day, to 1, the last one. */
  readonly across: (day: string) => number;
  /** From 0, the least value, to 1, the most; what lies beyond stands at the end. */
  readonly up: (value: number) => number;
}

/** Where points stand. Bands that end within sight are in it; a band that begins at nothing does not press the points together. */
export function trendScale(points: readonly TrendPoint[], bands: readonly Band[]): TrendScale {
  const ends = bands.flat().filter(end => end !== null && end !== 0);
  const values = [...points.map(({ value }) => value), ...ends.filter(end => end !== null)];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const times = points.map(({ day }) => Date.parse(day));
  const [first, last] = [Math.min(...times), Math.max(...times)];
  return {
    least,
    most,
    across: day => (first === last ? 0.5 : (Date.parse(day) - first) / (last - first)),
    up: value => (least === most ? 0.5 : Math.min(1, Math.max(0, (value - least) / (most - least)))),
  };
}
