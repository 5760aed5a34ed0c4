import { describe, expect, test } from 'vitest';
import { compareLabels } from './compareLabels.ts';
import type { PrintedLabel } from './label.ts';
import { readLabel } from './readLabel.ts';

const earlier: PrintedLabel = {
  market: 'us',
  serving: { household: '2 slices', grams: 28 },
  basis: 'per-serving',
  state: 'as-packaged',
  front: [],
  otherColumns: [],
  panel: { energyKcal: 40, sodiumMg: 140, proteinG: 6 },
  statement: 'BEEF, WATER, SALT, SODIUM PHOSPHATES.',
};

function compare(later: Partial<PrintedLabel>) {
  return compareLabels(readLabel(earlier), readLabel({ ...earlier, ...later }));
}

describe('two labels of one food', () => {
  test('[LBL-25] the same print is the same', () => {
    expect(compare({})).toEqual({
      outcome: 'same',
      comparedPer: 'the-same-quantity',
      figures: [],
      servingChanged: false,
      statement: 'same',
      additivesCame: [],
      additivesWent: [],
    });
  });

  test('[LBL-25] another printed number for the same serving is a change', () => {
    const { outcome, figures } = compare({ panel: { ...earlier.panel, sodiumMg: 150 } });
    expect(outcome).toBe('changed');
    expect(figures).toEqual([
      {
        nutrient: 'sodiumMg',
        kind: 'changed',
        earlier: { kind: 'known', printed: 140, range: { lo: 137.5, hi: 145 }, source: 'printed' },
        later: { kind: 'known', printed: 150, range: { lo: 145, hi: 155 }, source: 'printed' },
      },
    ]);
  });

  test('[LBL-25] another serving whose figures rounding can bring together is a reprint', () => {
    const same = compare({ serving: { household: '2 slices', grams: 30 }, panel: { energyKcal: 45, sodiumMg: 150, proteinG: 6 } });
    expect(same).toMatchObject({ outcome: 'reprinted', comparedPer: '100-g', figures: [], servingChanged: true });
    const other = compare({ serving: { household: '2 slices', grams: 30 }, panel: { energyKcal: 45, sodiumMg: 200, proteinG: 6 } });
    expect(other.outcome).toBe('changed');
    expect(other.figures.map(({ nutrient }) => nutrient)).toEqual(['sodiumMg']);
  });

  test('[LBL-25] a line that comes or goes says nothing about the food', () => {
    const { outcome, figures } = compare({ panel: { energyKcal: 40, sodiumMg: '140 mg 6%', potassiumMg: 90 } });
    expect(outcome).toBe('reprinted');
    expect(figures.map(({ nutrient, kind }) => [nutrient, kind])).toEqual([
      ['proteinG', 'disappeared'],
      ['potassiumMg', 'appeared'],
    ]);
  });

  test('[LBL-25] servings that cannot be brought together are not compared', () => {
    expect(compare({ serving: { household: '1 slice' } })).toMatchObject({ comparedPer: 'nothing', figures: [], outcome: 'reprinted' });
    expect(compare({ state: 'as-prepared', panel: { sodiumMg: 900 } })).toMatchObject({ comparedPer: 'nothing', figures: [] });
  });

  test('[LBL-25] the same ingredients in other letters are a rewording', () => {
    expect(compare({ statement: 'Beef, water, salt, sodium phosphates' })).toMatchObject({ statement: 'reworded', outcome: 'reprinted' });
    expect(compare({ statement: 'WATER, BEEF, SALT, SODIUM PHOSPHATES.' })).toMatchObject({ statement: 'changed', outcome: 'changed' });
  });

  test('[LBL-25] additives that came and went are named', () => {
    const { additivesCame, additivesWent, outcome } = compare({ statement: 'BEEF, WATER, SALT, POTASSIUM CHLORIDE.' });
    expect(additivesCame.filter(({ class: kind }) => kind === 'potassium').map(({ found }) => found)).toEqual(['POTASSIUM CHLORIDE']);
    expect(additivesWent.some(({ class: kind }) => kind === 'phosphate')).toBe(true);
    expect(outcome).toBe('changed');
  });

  test('[LBL-25] without a statement on one of them, no additive is said to have gone', () => {
    const { statement: _, ...bare } = earlier;
    const comparison = compareLabels(readLabel(earlier), readLabel(bare));
    expect(comparison).toMatchObject({ statement: 'disappeared', additivesCame: [], additivesWent: [], outcome: 'reprinted' });
  });
});
