/**
 * Rounding that is right at ties. 0.5-steps written in binary are often a hair below the tie (1.005 is
 * 1.00499999999999989…), so a figure within a billionth of a tie counts as the tie.
 */
const tieTolerance = 1e-9;

/**
 * Nearest multiple of `step`, ties up. `nearest(7.5, 5)` is 10, `nearest(142, 5)` is 140.
 * 21 CFR 101.9(c) says only "nearest"; ties-up is what its own sample label does (235 mg potassium, 5.0 %, prints as 6 %).
 */
export function nearest(value: number, step: number): number {
  return cleanFloat(Math.floor(value / step + 0.5 + tieTolerance) * step);
}

/** Rounds half up to a number of decimals, for display. 0.975 shows as 0.98. */
export function roundHalfUp(value: number, decimals: number): number {
  const factor = 10 ** decimals;
  const scaled = Math.abs(value) * factor;
  const rounded = Math.floor(scaled + 0.5 + tieTolerance * Math.max(1, scaled)) / factor;
  return value < 0 ? -rounded : rounded;
}

/** Removes binary dust: 0.1 + 0.2 becomes 0.3. Keeps 12 significant digits, more than any label carries. */
export function cleanFloat(value: number): number {
  return Number.isFinite(value) ? Number(value.toPrecision(12)) : value;
}

/** The last line of output: a range is rounded outward, so that the shown range never claims more than is known. */
export function floorTo(value: number, decimals: number): number {
  if (Number.isInteger(value)) return value;
  const factor = 10 ** decimals;
  return Math.floor(cleanFloat(value * factor)) / factor;
}

export function ceilTo(value: number, decimals: number): number {
  if (Number.isInteger(value)) return value;
  const factor = 10 ** decimals;
  return Math.ceil(cleanFloat(value * factor)) / factor;
}
