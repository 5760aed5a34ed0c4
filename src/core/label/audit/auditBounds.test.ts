/** Where the audit begins to tell: exactly at the bound nothing, one printed step beyond it a finding. */
import { describe, expect, test } from 'vitest';
import { interval } from '#core/quantity/interval.ts';
import type { Finding, FindingCode, PrintedColumn, PrintedLabel, PrintedPanel } from '../label.ts';
import { readLabel } from '../readLabel.ts';
import { euEnergyEnvelope, usEnergyEnvelope } from './auditEnergy.ts';

function findings(panel: PrintedPanel, more: Partial<PrintedLabel> = {}): readonly Finding[] {
  return readLabel({ market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], otherColumns: [], panel, ...more })
    .findings;
}

const eu = { market: 'eu', basis: 'per-100-g' } as const;

/** Whether a code is told, whatever else is. */
function tells(code: FindingCode, panel: PrintedPanel, more: Partial<PrintedLabel> = {}): boolean {
  return findings(panel, more).some(finding => finding.code === code);
}

describe('energy', () => {
  const grams = {
    protein: interval(2, 3),
    carbohydrate: interval(10, 12),
    fat: interval(1, 2),
    fiber: interval(1, 3),
    alcohol: interval(1, 2),
    mayHideSweeteners: false,
  };

  // 21 CFR 101.9(c)(1)(i)(B), (C), (F): 4-4-9 and 7 for alcohol; fiber and sugar alcohols may count nothing, sugars count 4.
  test('[LBL-14] the US envelope, worked by hand', () => {
    expect(usEnergyEnvelope({ ...grams, sugarAlcohol: interval(2, 3) })).toEqual({ lo: 4 * 2 + 4 * (10 - 3 - 3) + 9 + 7, hi: 92 });
    expect(usEnergyEnvelope({ ...grams, totalSugars: interval(8, 9) })).toEqual({ lo: 4 * 2 + 4 * 8 + 9 + 7, hi: 92 });
    // All of the carbohydrate may be sweeteners, or fiber where none is printed.
    expect(usEnergyEnvelope({ ...grams, mayHideSweeteners: true }).lo).toBe(4 * 2 + 9 + 7);
    expect(usEnergyEnvelope({ ...grams, fiber: undefined }).lo).toBe(4 * 2 + 9 + 7);
  });

  // Regulation (EU) 1169/2011, Annex XIV: 4, 4, 9, fiber 2, alcohol 7; what is not printed 3 at most.
  test('[LBL-14] the EU envelope, worked by hand', () => {
    const withPolyols = { ...grams, sugarAlcohol: interval(2, 3) };
    const lo = 4 * 2 + 4 * (10 - 3) + 9 + 2 + 7;
    // 20 g less 2, 10, 1, 1 and 1 g leave 5 g that no line prints.
    expect(euEnergyEnvelope(withPolyols, 20)).toEqual({ lo, hi: 4 * 3 + 4 * 12 + 9 * 2 + 2 * 3 + 7 * 2 + 3 * 5 });
    expect(euEnergyEnvelope(withPolyols, 12).hi).toBe(98);
    expect(euEnergyEnvelope({ ...withPolyols, sugarAlcohol: interval(9, 11), totalSugars: interval(4, 5) }, 12).lo).toBe(42);
    expect(euEnergyEnvelope({ ...withPolyols, sugarAlcohol: interval(9, 11) }, 12).lo).toBe(26);
    expect(euEnergyEnvelope({ ...grams, fiber: undefined, alcohol: undefined }, 13)).toEqual({ lo: 8 + 40 + 9, hi: 12 + 48 + 18 });
  });

  test('[LBL-14] by whose law it is checked: 40 g of fiber are 80 kcal in the EU and the UK, where they are no carbohydrate', () => {
    const panel = { energyKcal: 80, proteinG: 0, carbohydrateG: 0, fatG: 0, fiberG: 40 };
    for (const market of ['eu', 'uk'] as const) expect(findings(panel, { market, basis: 'per-100-g', statement: 'Bran.' })).toEqual([]);
    const source = (more: Partial<PrintedLabel>) => findings({ ...panel, energyKcal: 400 }, { ...more, statement: 'Bran.' })[0]?.source;
    expect(source(eu)).toBe('Regulation (EU) 1169/2011, Annex XIV');
    expect(source({ market: 'us' })).toBe('21 CFR 101.9(c)(1)(i)');
  });

  // 99.5 g of fat are 895.5 kcal at least, 80 % of them 716.4; 1 kcal is 4 kJ at least. At most 904.5 kcal, 4 from the zeros and 1.5 from
  // half a gram that no line prints: 910, 120 % of them 1092; 1 kcal is 4.33 kJ at most.
  test('[LBL-14] kilojoules alone are checked by 4 to 4.33', () => {
    const told = (energyKj: number) =>
      tells('energy-does-not-add-up', { energyKj, proteinG: 0, carbohydrateG: 0, fatG: 100 }, { ...eu, statement: 'Fat.' });
    expect([2865, 2866, 4728, 4729].map(told)).toEqual([true, false, false, true]);
  });

  test('[LBL-14] without protein, carbohydrate or fat nothing is said of the energy', () => {
    const panel = { energyKcal: 500, proteinG: 1, carbohydrateG: 1, fatG: 1 };
    for (const missing of Object.keys(panel)) expect(findings({ ...panel, [missing]: undefined })).toEqual([]);
    expect(tells('energy-does-not-add-up', panel)).toBe(true);
  });

  test('[LBL-14] alcohol that is printed counts, also in a drink', () => {
    const wine = { energyKcal: 250, proteinG: 0, carbohydrateG: 4, fatG: 0 };
    expect(findings(wine, { name: 'Red wine' })).toEqual([]);
    expect(tells('energy-does-not-add-up', { ...wine, alcoholG: 10 }, { category: 'Wine' })).toBe(true);
    expect(findings(wine, { category: 'Wine' })).toEqual([]);
  });

  // 300 kcal are 299.5 to 300.5: 1198.5 / 299.5 is above 4, 1197.5 / 299.5 below; 1301.5 / 300.5 is below 13 / 3, 1302.5 / 300.5 above.
  test('[LBL-14] kilojoules beside kilocalories go together from 4 to 13 / 3', () => {
    const told = (energyKj: number) => tells('figures-disagree', { energyKj, energyKcal: 300 }, eu);
    expect([1197, 1198, 1302, 1303].map(told)).toEqual([true, false, false, true]);
  });
});

describe('parts and mass', () => {
  test('[LBL-15] the sentence names the parts that are there, and both figures', () => {
    expect(findings({ fatG: 2, saturatedFatG: 1.5, transFatG: 1.5 })[0]?.message).toBe(
      'Saturated fat and trans fat come to at least 2.5 g, but total fat is at most 2.25 g.',
    );
    expect(findings({ fatG: 2, saturatedFatG: 3, transFatG: 0 })[0]?.message).toBe(
      'Saturated fat comes to at least 2.75 g, but total fat is at most 2.25 g.',
    );
  });

  // 29.5 + 39.5 + 19.5 g are 88.5 g; 19.5 g of fiber more are 108 g.
  test('[LBL-15] EU fiber weighs beside carbohydrate, US fiber within it', () => {
    const panel = { fatG: 30, carbohydrateG: 40, proteinG: 20, fiberG: 20 };
    expect(findings(panel, eu).map(({ about }) => about)).toEqual(['serving']);
    expect(findings(panel, { basis: 'per-100-g' })).toEqual([]);
  });

  test('[LBL-15] what weighs exactly as much as the food is in it', () => {
    // 19.5 g three times are 58.5 g: what 58 g stand for at most.
    expect(findings({ fatG: 20, carbohydrateG: 20, proteinG: 20 }, { serving: { grams: 58 } })).toEqual([]);
    expect(tells('impossible-value', { carbohydrateG: 100.5 }, { basis: 'per-100-g' })).toBe(false);
    expect(tells('impossible-value', { carbohydrateG: 101 }, { basis: 'per-100-g' })).toBe(true);
  });

  // 10 g stand for up to 10.5 g, 14 g for 14.5 g, 1 g for 1.05 g (21 CFR 101.9(b)(7)(ii)).
  const impossible: readonly (readonly [PrintedPanel, PrintedPanel, Partial<PrintedLabel>])[] = [
    // 10.5 g of sodium carbonate hold 4557 mg of sodium.
    [{ sodiumMg: 4560 }, { sodiumMg: 4570 }, { serving: { grams: 10 } }],
    // 14.5 g of fat give 130.8 kcal.
    [{ energyKcal: 130 }, { energyKcal: 140 }, { serving: { grams: 14 } }],
    // 100 g of fat give 902 kcal, 3905.66 kJ.
    [{ energyKj: 3905 }, { energyKj: 3907 }, eu],
    // 100 g of sodium carbonate stand as 108.5 g of salt.
    [{ saltG: '108.5' }, { saltG: '108.6' }, eu],
    [{ potassiumMg: 100_000 }, { potassiumMg: 100_010 }, { basis: 'per-100-g' }],
    [{ vitaminDMcg: 1_050_000 }, { vitaminDMcg: 1_060_000 }, { serving: { grams: 1 } }],
    // No liquid weighs more than 1.6 g per mL: 160 g in 100 mL.
    [{ carbohydrateG: 160 }, { carbohydrateG: 161 }, { market: 'eu', basis: 'per-100-ml' }],
  ];
  test.each(impossible)('[LBL-15] %j may be in the food, %j cannot', (possible, beyond, more) => {
    expect(tells('impossible-value', possible, more)).toBe(false);
    expect(tells('impossible-value', beyond, more)).toBe(true);
  });

  test('[LBL-15] the sentence gives the reason: energy by fat, the rest by mass', () => {
    const [energy] = findings({ energyKcal: 150 }, { serving: { grams: 14 } });
    expect(energy).toMatchObject({ source: 'fat, the richest food, gives 9 kcal per g (9.02 by USDA Handbook 74)' });
    expect(energy?.message).toContain('is at least 145 kcal; 14.5 g of food cannot hold more than 130.79 kcal.');
    expect(findings({ energyKj: 4000 }, eu)[0]?.source).toContain('Handbook 74');
    expect(findings({ sodiumMg: 4600 }, { serving: { grams: 10 } })[0]?.source).toBe('a food weighs at least what is in it');
  });

  test('[LBL-15] a prepared food does not weigh its packaged serving, neither in grams nor in milliliters', () => {
    for (const serving of [{ grams: 10 }, { milliliters: 10 }]) {
      expect(tells('impossible-value', { proteinG: 30 }, { serving })).toBe(true);
      expect(findings({ proteinG: 30 }, { serving, state: 'as-prepared' })).toEqual([]);
      expect(findings({ proteinG: 30 }, { serving, basis: 'per-100-g' })).toEqual([]);
    }
  });
});

describe('columns', () => {
  const told = (first: Partial<PrintedLabel>, other: Partial<PrintedColumn>, panel: PrintedPanel = { sodiumMg: 140 }) =>
    findings(panel, {
      ...first,
      otherColumns: [{ basis: 'per-serving', state: 'as-packaged', panel: { sodiumMg: 140 }, ...other }],
    });

  test('[LBL-19] milliliters tell the proportion where grams do not, grams without a whole container', () => {
    const [finding, ...rest] = told({ serving: { milliliters: 240 } }, { serving: { milliliters: 480 } });
    expect(rest).toEqual([]);
    expect(finding?.message).toBe('Sodium of this column is not in proportion to the first column, even with rounding.');
    expect(told({ serving: { milliliters: 240 } }, { serving: { milliliters: 480 }, panel: { sodiumMg: 280 } })).toEqual([]);
    expect(told({ serving: { grams: 30 } }, { serving: { household: '1 bowl', grams: 90 } })).toHaveLength(1);
    expect(told({ serving: { grams: 30 } }, { serving: { milliliters: 480 } })).toEqual([]);
    expect(told({ serving: { milliliters: 240 } }, { basis: 'per-100-ml' })).toHaveLength(1);
  });

  test('[LBL-19] all nutrients out of proportion are named, one that the first column does not print is not', () => {
    const panel = { sodiumMg: 140, fatG: 10, proteinG: 3 };
    const [finding] = told({ serving: { grams: 30 } }, { serving: { grams: 90 }, panel }, { sodiumMg: 140, fatG: 10 });
    expect(finding?.message).toBe('Sodium and total fat of this column are not in proportion to the first column, even with rounding.');
  });

  test('[LBL-19] a column without a serving is for the label’s own, but not in another state', () => {
    expect(tells('impossible-value', {}, { serving: { grams: 10 }, otherColumns: [column({})] })).toBe(true);
    expect(tells('impossible-value', {}, { serving: { grams: 10 }, otherColumns: [column({ state: 'as-prepared' })] })).toBe(false);
  });

  const column = (more: Partial<PrintedColumn>): PrintedColumn => ({
    basis: 'per-serving',
    state: 'as-packaged',
    panel: { proteinG: 30 },
    ...more,
  });
});

describe('potassium', () => {
  const salted = { statement: 'WATER, POTASSIUM CHLORIDE, SALT.' };
  const told = (panel: PrintedPanel, more: Partial<PrintedLabel> = salted) => tells('potassium-zero-beside-potassium-salt', panel, more);

  // 21 CFR 101.9(c)(8)(iii): under 2 % may print as zero.
  test('[LBL-20] under 2 % is nothing, 2 % is something, and so is a milligram', () => {
    expect(told({ potassiumMg: '1%' })).toBe(true);
    expect(told({ potassiumMg: '2%' })).toBe(false);
    expect(told({ potassiumMg: 1 })).toBe(false);
    expect(told({ potassiumMg: 'Not a significant source of potassium' })).toBe(true);
  });

  test('[LBL-20] the salt must be named, misspelled or not, and count', () => {
    expect(told({ potassiumMg: 0 }, { statement: 'WATER, POTASSIUM CHLORDE.' })).toBe(true);
    expect(told({ potassiumMg: 0 }, { statement: 'WATER. MAY CONTAIN POTASSIUM CHLORIDE.' })).toBe(false);
    expect(told({ potassiumMg: 0 }, { statement: 'WATER, POTASSIUM SORBATE.' })).toBe(false);
    expect(told({ potassiumMg: 0 }, { statement: 'WATER, SODIUM PHOSPHATE.' })).toBe(false);
    expect(told({ potassiumMg: 0 }, { ...salted, market: 'ca' })).toBe(false);
  });
});
