import type { RandomNumbers } from '../randomNumbers.ts';
import { dot } from './dot.ts';
import type { HardRow } from './hardRows.ts';
import type { Observation } from './observations.ts';

/** One step: the segment that the hard rows leave on the line, and a draw from the normal cut at its ends. What each row comes to is kept. */
export function lineStep(
  x: Float64Array,
  hard: readonly HardRow[],
  observed: readonly Observation[],
  decay: Float64Array,
  random: RandomNumbers,
): (direction: Float64Array) => void {
  const hardNow = Float64Array.from(hard, ({ coefficients }) => dot(coefficients, x));
  const hardSlope = new Float64Array(hard.length);
  const observedNow = Float64Array.from(observed, ({ coefficients }) => dot(coefficients, x));
  const observedSlope = new Float64Array(observed.length);
  return direction => {
    let from = Number.NEGATIVE_INFINITY;
    let to = Number.POSITIVE_INFINITY;
    // What rounding leaves of a slope of zero is no slope: a row that the direction runs along would stop it.
    const least = 1e-12 * direction.reduce((most, part) => Math.max(most, Math.abs(part)), 0);
    for (let at = 0; at < hard.length; at++) {
      const { coefficients, lo, hi } = hard[at]!;
      const slope = dot(coefficients, direction);
      hardSlope[at] = slope;
      if (Math.abs(slope) < least) continue;
      const now = hardNow[at]!;
      const low = (slope > 0 ? lo - now : hi - now) / slope;
      const high = (slope > 0 ? hi - now : lo - now) / slope;
      if (low > from) from = low;
      if (high < to) to = high;
    }
    if (!(to > from) || !Number.isFinite(from) || !Number.isFinite(to)) return;
    let precision = 0;
    let pull = -dot(decay, direction);
    for (let at = 0; at < observed.length; at++) {
      const { coefficients, mean, variance } = observed[at]!;
      const slope = dot(coefficients, direction);
      observedSlope[at] = slope;
      precision += (slope * slope) / variance;
      pull += (slope * (mean - observedNow[at]!)) / variance;
    }
    const t = random.cutNormal(precision, pull, Math.min(from, 0), Math.max(to, 0));
    for (let i = 0; i < x.length; i++) x[i] = Math.max(0, x[i]! + t * direction[i]!);
    for (let at = 0; at < hard.length; at++) hardNow[at]! += t * hardSlope[at]!;
    for (let at = 0; at < observed.length; at++) observedNow[at]! += t * observedSlope[at]!;
  };
}
