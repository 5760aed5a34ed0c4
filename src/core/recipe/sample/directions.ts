import type { Observation } from './observations.ts';

/** A little of one thing for as much of another. */
export function exchange(direction: Float64Array, leaves: number, uniform: () => number): void {
  const first = Math.floor(uniform() * (leaves + 1));
  let second = Math.floor(uniform() * leaves);
  if (second >= first) second += 1;
  direction[first] = 1;
  direction[second] = first === leaves || second === leaves ? 1 : -1;
}

/** Directions along which the balances change little: from the inverse of the posterior's precision, so that narrow valleys are walked lengthwise. */
export function gaussianDirections(
  observed: readonly Observation[],
  x: Float64Array,
  serving: number,
  size: number,
): (direction: Float64Array, normal: () => number) => void {
  const precision = Array.from({ length: size }, () => new Float64Array(size));
  for (let i = 0; i < size; i++) precision[i]![i] = 1 / (0.5 * x[i]! + 0.01 * serving) ** 2;
  const mass = Float64Array.from({ length: size }, (_, at) => (at === size - 1 ? -1 : 1));
  for (const { coefficients, variance } of [...observed, { coefficients: mass, variance: (1e-3 * serving) ** 2 }]) {
    for (let i = 0; i < size; i++) {
      const scaled = coefficients[i]! / variance;
      if (scaled !== 0) for (let j = 0; j < size; j++) precision[i]![j]! += scaled * coefficients[j]!;
    }
  }
  const factor = cholesky(precision);
  return (direction, normal) => {
    for (let i = size - 1; i >= 0; i--) {
      let sum = normal();
      for (let j = i + 1; j < size; j++) sum -= factor[j]![i]! * direction[j]!;
      direction[i] = sum / factor[i]![i]!;
    }
    // Mass is kept to the last digit by the largest part.
    let largest = 0;
    let off = 0;
    for (let i = 0; i < size; i++) {
      off += mass[i]! * direction[i]!;
      if (i < size - 1 && x[i]! > x[largest]!) largest = i;
    }
    direction[largest]! -= off;
  };
}

/** Lower factor of a positive definite matrix. */
function cholesky(matrix: readonly Float64Array[]): readonly Float64Array[] {
  const size = matrix.length;
  const factor = Array.from({ length: size }, () => new Float64Array(size));
  for (let i = 0; i < size; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= factor[i]![k]! * factor[j]![k]!;
      factor[i]![j] = i === j ? Math.sqrt(Math.max(sum, 1e-300)) : sum / factor[j]![j]!;
    }
  }
  return factor;
}
