import { describe, expect, it } from 'vitest';
import { buildGuide } from '../buildGuide.ts';
import { guideInput, slices } from '../guideFixture.ts';
import { mostSodiumMg, pocketCardSvg, slideChartSvg } from './cutOutSvg.ts';
import { wrapText } from './wrapText.ts';

describe('what readers cut out', () => {
  const page = buildGuide(guideInput([slices('Mild', 80, 100)])).value;
  const line = page.rule.line!;

  it.each([
    [{ ...line, offset: 140 }, 80, 220],
    [{ ...line, offset: 139.6 }, 80, 219],
    [{ ...line, offset: -100 }, 80, undefined],
    [{ ...line, slope: 0, offset: 140 }, 500, 140],
  ])('[GDE-23] on the line %j a portion of %i kcal may hold %s mg, rounded down', (rule, kcal, most) => {
    expect(mostSodiumMg(rule, kcal)).toBe(most);
  });

  it('[GDE-23] the card and the chart hold what the companions leave: as many mg as kcal, and 140 more (by hand: 160 - 20)', () => {
    const cells = [...pocketCardSvg(page, line).matchAll(/>(\d+)</g)].map(([, cell]) => Number(cell));
    expect(cells).toEqual([50, 190, 80, 220, 100, 240, 120, 260, 150, 290, 200, 340]);
    expect(pocketCardSvg(page, line).replace(/<[^>]*>/g, ' ')).toMatch(/140\s+mg\s+more\./);
    const rows = [...slideChartSvg(page, line)!.matchAll(/>(\d+) kcal<.*?>(\d+) mg</g)].map(
      ([, kcal, most]) => Number(most) - Number(kcal),
    );
    expect(rows).toEqual(Array.from({ length: 28 }, () => 140));
    expect(slideChartSvg(page, { ...line, slope: 0 })).toBeUndefined();
  });

  it('[GDE-23] long words are broken and what does not fit ends in "…"', () => {
    expect(wrapText('abc defgh', 4, 3)).toEqual(['abc', 'defg', 'h']);
    expect(wrapText('abc defgh', 4, 2)).toEqual(['abc', 'def…']);
  });
});
