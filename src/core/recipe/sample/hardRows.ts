import type { RecipeModel } from '../recipeModel.ts';
import { dot } from './dot.ts';

/** A row that no draw may break: its sum stays between its ends. */
export interface HardRow {
  readonly coefficients: Float64Array;
  readonly lo: number;
  readonly hi: number;
}

/** Rows over grams and water alone, as arrays; an end that the start breaks by rounding or a relaxed row is moved to it. */
export function hardRows({ model, meanings }: RecipeModel, size: number, x: Float64Array): readonly HardRow[] {
  const rows: HardRow[] = [];
  for (const [at, { terms, lo, hi }] of model.rows.entries()) {
    const { kind } = meanings[at]!;
    if (kind === 'printed' || kind === 'tie') continue;
    const coefficients = new Float64Array(size);
    for (const term of terms) if (term.at < size) coefficients[term.at] = term.coefficient;
    const now = dot(coefficients, x);
    rows.push({ coefficients, lo: Math.min(lo, now), hi: Math.max(hi, now) });
  }
  for (let at = 0; at < size; at++) {
    const coefficients = new Float64Array(size);
    coefficients[at] = 1;
    x[at] = Math.max(0, x[at]!);
    rows.push({ coefficients, lo: 0, hi: model.columns[at]!.hi });
  }
  return rows;
}
