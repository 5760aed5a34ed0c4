import type { PanelLine } from '#data/packages/panelLines.ts';

/**
 * The true amounts that may print so: 21 CFR 101.9(c) turned round, ranges half-open. The rows for vitamins and minerals
 * are the increments of FDA's guidance on quantitative amounts, and (c)(8)(iii) for a percent beside them.
 */
export function lawfulTruth(line: PanelLine, printed: string): readonly [lo: number, hi: number] {
  const value = Number.parseFloat(printed.replace(/^(<|less than )/, ''));
  const lessThan = /^(<|less than )/.test(printed);
  switch (line) {
    case 'energyKcal':
      if (value <= 5) return value === 0 ? [0, 5] : [5, 7.5];
      return value < 50 ? [value - 2.5, value + 2.5] : value === 50 ? [47.5, 55] : [value - 5, value + 5];
    case 'sodiumMg':
      if (value <= 5) return value === 0 ? [0, 5] : [5, 7.5];
      return value < 140 ? [value - 2.5, value + 2.5] : value === 140 ? [137.5, 145] : [value - 5, value + 5];
    case 'fatG':
    case 'saturatedFatG':
    case 'transFatG':
      if (value <= 0.5) return value === 0 ? [0, 0.5] : [0.5, 0.75];
      return value < 5 ? [value - 0.25, value + 0.25] : value === 5 ? [4.75, 5.5] : [value - 0.5, value + 0.5];
    case 'cholesterolMg':
      if (lessThan) return [2, 5];
      return value === 0 ? [0, 2] : [value === 5 ? 5 : value - 2.5, value + 2.5];
    case 'vitaminDMcg':
      return withPercent(printed, [value - 0.05, value + 0.05], 20);
    case 'ironMg':
      return withPercent(printed, [value - 0.05, value + 0.05], 18);
    case 'calciumMg':
      return withPercent(printed, [value - 5, value + 5], 1300);
    case 'potassiumMg':
      return withPercent(printed, [value - 5, value + 5], 4700);
    default:
      if (lessThan) return [0.5, 1];
      return value <= 1 ? [value === 0 ? 0 : 1, value + 0.5] : [value - 0.5, value + 0.5];
  }
}

function withPercent(printed: string, [lo, hi]: readonly [number, number], dailyValue: number): readonly [number, number] {
  const percent = /(\d+)%/.exec(printed);
  if (percent === null) return [lo, hi];
  const of = Number(percent[1]);
  const [from, to] =
    of === 0
      ? [0, 2]
      : of < 10
        ? [of === 2 ? 2 : of - 1, of + 1]
        : of === 10
          ? [9, 12.5]
          : of < 50
            ? [of - 2.5, of + 2.5]
            : of === 50
              ? [47.5, 55]
              : [of - 5, of + 5];
  return [Math.max(lo, (from * dailyValue) / 100), Math.min(hi, (to * dailyValue) / 100)];
}
