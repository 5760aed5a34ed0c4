import type { LinearModel, Objective } from './linearModel.ts';

/**
 * How far an answer may be from its model: relative to the size of the condition, at least this much (own decision).
 *
 * @internal
 */
export const solutionTolerance = 1e-6;

/** What an answer breaks, in words; empty when it keeps every bound and every row and its value is that of its columns. */
export function checkSolution(model: LinearModel, objective: Objective, value: number, columns: ArrayLike<number>): readonly string[] {
  const broken: string[] = [];
  const outside = (amount: number, lo: number, hi: number, size: number): boolean =>
    !(amount >= lo - solutionTolerance * size && amount <= hi + solutionTolerance * size);
  for (const [at, { name, lo, hi }] of model.columns.entries()) {
    if (outside(columns[at]!, lo, hi, Math.max(1, Math.abs(columns[at]!))))
      broken.push(`${name} is ${columns[at]}, outside ${lo} to ${hi}`);
  }
  for (const { name, lo, hi, terms } of model.rows) {
    let sum = 0;
    let size = 1;
    for (const { at, coefficient } of terms) {
      const term = coefficient * columns[at]!;
      sum += term;
      size = Math.max(size, Math.abs(term));
    }
    if (outside(sum, lo, hi, size)) broken.push(`${name} is ${sum}, outside ${lo} to ${hi}`);
  }
  const reached = objective.terms.reduce((sum, { at, coefficient }) => sum + coefficient * columns[at]!, 0);
  if (outside(value, reached, reached, Math.max(1, Math.abs(reached)))) broken.push(`the value is ${value}, its columns give ${reached}`);
  return broken;
}
