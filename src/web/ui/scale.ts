/** 1, 2 or 5 times a power of ten, at least as large as asked; 1 where nothing is asked. 37 gives 50. */
function roundStep(atLeast: number): number {
  if (atLeast <= 0) return 1;
  const power = 10 ** Math.floor(Math.log10(atLeast));
  return exact([1, 2, 5, 10].map(times => times * power).find(step => step >= atLeast) ?? 10 * power);
}

/**
 * The ticks of a scale from zero to a round end that holds `most`, in about so many steps.
 * @example ticksTo(234, 4) // 0, 100, 200, 300
 */
export function ticksTo(most: number, steps: number): readonly number[] {
  const step = roundStep(most / steps);
  const count = Math.max(1, Math.ceil(exact(most / step)));
  return Array.from({ length: count + 1 }, (_, index) => exact(index * step));
}

/** Without the dust of binary fractions: 0.30000000000000004 is 0.3. */
function exact(figure: number): number {
  return Number(figure.toPrecision(12));
}
