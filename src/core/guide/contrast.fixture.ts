/** The least contrast of text (WCAG 2.2 SC 1.4.3 AA). Compared unrounded. */
export const leastTextContrast = 4.5;

/**
 * Contrast of two colors written #rrggbb: (L1 + 0.05) / (L2 + 0.05) on linear values; undefined where one is no such color.
 * #767676 on #ffffff: 4.54. #777777: 4.478, which fails 4.5. For display it is truncated, never rounded up. Source: WCAG 2.2.
 */
export function contrastRatio(one: string, other: string): number | undefined {
  const a = luminance(one);
  const b = luminance(other);
  if (a === undefined || b === undefined) return undefined;
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

function luminance(color: string): number | undefined {
  const digits = /^#([0-9a-f]{6})$/i.exec(color)?.[1];
  if (digits === undefined) return undefined;
  const [red, green, blue] = [0, 2, 4].map(at => linear(Number.parseInt(digits.slice(at, at + 2), 16) / 255));
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

function linear(part: number): number {
  return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
}
