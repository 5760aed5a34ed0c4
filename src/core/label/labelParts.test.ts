/** What a label's lines come to: two figures for one amount, salt, kilojoules, fiber, columns, a second label, faults in words. */
import { describe, expect, test } from 'vitest';
import { readPanel } from '#core/label/panel/readPanel.ts';
import { compareLabels } from './compareLabels.ts';
import { foodNameKey } from './foodNameKey.ts';
import type { PrintedLabel, PrintedPanel } from './label.ts';
import { labelFromJson } from './labelFromJson.ts';
import { labelIssue } from './labelIssue.ts';
import { readLabel } from './readLabel.ts';

function read(panel: PrintedPanel, more: Partial<PrintedLabel> = {}) {
  return readLabel({ market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], otherColumns: [], panel, ...more });
}

const eu = { market: 'eu', basis: 'per-100-g' } as const;
const near = (value: number): number => expect.closeTo(value, 9) as number;

describe('amounts of a panel', () => {
  // Regulation (EU) 1169/2011, Annex I: salt is sodium × 2.5. 1.20 g stand for 1.195 to 1.205 g, 478 to 482 mg.
  test('[LBL-9] sodium from salt, its words kept where it is a range or unknown', () => {
    const salt = read({ saltG: '1,20 g' }, eu);
    expect(salt.amounts.sodiumMg).toEqual({ kind: 'known', printed: 480, range: { lo: near(478), hi: near(482) }, source: 'computed' });
    expect(salt.asPrinted.sodiumMg).toBe('1,20 g, as salt');
    expect(read({ saltG: '< 0,01 g' }, eu).amounts.sodiumMg).toEqual({ kind: 'known', range: { lo: 0, hi: 5 }, source: 'computed' });
    expect(read({ saltG: 'O g' }, eu).amounts.sodiumMg).toEqual({ kind: 'unknown', reason: 'not-legible' });
    expect(read({}, eu).asPrinted.sodiumMg).toBeUndefined();
  });

  test('[LBL-9] both printed: what they have in common, and the printed sodium in it; nothing in common is a contradiction', () => {
    const both = read({ sodiumMg: 480, saltG: '1,20 g' }, eu);
    expect(both.amounts.sodiumMg).toEqual({ kind: 'known', printed: 480, range: { lo: 479.5, hi: 480.5 }, source: 'printed' });
    expect(both.asPrinted.sodiumMg).toBeUndefined();
    // 482 mg stand for 481.5 to 482.5 mg, salt for 478 to 482 mg.
    expect(read({ sodiumMg: 482, saltG: '1,20 g' }, eu).amounts.sodiumMg).toMatchObject({ range: { lo: 481.5, hi: near(482) } });
    // 483 mg, 482.5 to 483.5, have nothing in common with it.
    expect(read({ sodiumMg: 483, saltG: '1,20 g' }, eu).amounts.sodiumMg).toEqual({ kind: 'unknown', reason: 'contradiction' });
    // One of the two cannot be read: the other stands.
    expect(read({ sodiumMg: 'O mg', saltG: '1,20 g' }, eu).amounts.sodiumMg).toMatchObject({ printed: 480, source: 'computed' });
    expect(read({ sodiumMg: 480, saltG: 'O g' }, eu).amounts.sodiumMg).toMatchObject({ printed: 480, source: 'printed' });
  });

  // 1 kcal is 4.0 to 4.33 kJ by the factors of Annex XIV; 4.184 kJ in physics. 1200 kJ are 1199.5 to 1200.5 kJ.
  test('[LBL-9] kilocalories from kilojoules only where they are not printed', () => {
    const kj = read({ energyKj: 1200 }, eu);
    expect(kj.amounts.energyKcal).toMatchObject({ printed: expect.closeTo(286.81, 2), source: 'computed' });
    expect(kj.amounts.energyKcal).toMatchObject({ range: { lo: expect.closeTo(1199.5 / 4.33, 6), hi: expect.closeTo(1200.5 / 4, 6) } });
    expect(kj.asPrinted.energyKcal).toBe('1200');
    expect(read({ energyKj: 1200, energyKcal: 290 }, eu).amounts.energyKcal).toMatchObject({ printed: 290, source: 'printed' });
    expect(read({ energyKj: 'O' }, eu).amounts.energyKcal).toEqual({ kind: 'unknown', reason: 'not-legible' });
  });

  test('[LBL-9] EU and UK fiber is added to carbohydrate, or its absence told; elsewhere it is within', () => {
    for (const market of ['eu', 'uk'] as const) {
      const panel = { carbohydrateG: '40,0 g', fiberG: '5,0 g' };
      expect(read(panel, { ...eu, market }).amounts.carbohydrateG).toEqual({
        kind: 'known',
        printed: 45,
        range: { lo: near(44.9), hi: near(45.1) },
        source: 'computed',
      });
      const without = read({ carbohydrateG: '40,0 g' }, { ...eu, market });
      expect(without.asPrinted.carbohydrateG).toBe('40 g, without fiber');
      expect(read({ fiberG: 5 }, { ...eu, market }).amounts.carbohydrateG).toMatchObject({ kind: 'unknown' });
      expect(read({ carbohydrateG: 40, fiberG: '<1 g' }, { ...eu, market }).amounts.carbohydrateG).toEqual({
        kind: 'known',
        range: { lo: 39.5, hi: 41.5 },
        source: 'computed',
      });
    }
    for (const market of ['us', 'ca'] as const)
      expect(read({ carbohydrateG: 40, fiberG: 5 }, { market }).amounts.carbohydrateG).toMatchObject({ printed: 40, source: 'printed' });
    expect(read({ carbohydrateG: '<1 g' }, eu).asPrinted.carbohydrateG).toBe('<1 g, without fiber');
  });

  test('[LBL-7] "not a significant source" beside a line narrows it, and does not stand against what was not legible', () => {
    const both = read({ potassiumMg: '2%' }, { notSignificantSourceOf: 'potassium' });
    // 2 % is 47 to 141 mg, not significant up to 94 mg.
    expect(both.amounts.potassiumMg).toEqual({ kind: 'known', range: { lo: near(47), hi: 94 }, source: 'printed' });
    expect(both.asPrinted.potassiumMg).toBe('2%');
    expect(read({ potassiumMg: 'O mg' }, { notSignificantSourceOf: 'potassium' }).amounts.potassiumMg).toMatchObject({
      range: { lo: 0, hi: 94 },
    });
    // A figure that its %DV contradicts is not mended by it.
    expect(read({ potassiumMg: '470 mg 60%' }, { notSignificantSourceOf: 'potassium' }).amounts.potassiumMg).toEqual({
      kind: 'unknown',
      reason: 'contradiction',
    });
  });

  test('[LBL-3] a key that no panel has is told; a line that is left out is none', () => {
    const { lines, issues } = readPanel({ sodiumMg: 140, fatG: undefined, sodimMg: 5 } as unknown as PrintedPanel, 'us');
    expect(lines.map(({ key, words }) => [key, words])).toEqual([['sodiumMg', '140']]);
    expect(issues.map(({ code, place, found }) => [code, place.heading, found])).toEqual([['key-not-known', 'panel.sodimMg', 'sodimMg']]);
  });

  test('[LBL-6] a percent without a Daily Value is told once, beside an amount or a misprint it is not', () => {
    const codes = (panel: PrintedPanel, market: PrintedLabel['market'] = 'us') => readPanel(panel, market).issues.map(({ code }) => code);
    expect(codes({ transFatG: '10%' })).toEqual(['percent-without-amount']);
    expect(codes({ transFatG: '2 g 10%' })).toEqual([]);
    expect(codes({ sodiumMg: '10%' })).toEqual([]);
    expect(codes({ sodiumMg: '10%' }, 'eu')).toEqual(['percent-without-amount']);
    expect(codes({ sodiumMg: '480 mg 20%', fiberG: '7 g 25%', potassiumMg: '10%' })).toEqual([]);
  });
});

describe('a label', () => {
  test('[LBL-3] what is noticed of a column keeps its place', () => {
    const { issues } = read(
      {},
      { otherColumns: [{ basis: 'per-serving', state: 'as-packaged', serving: { grams: 'many' }, panel: { sodiumMg: 'O mg' } }] },
    );
    expect(issues.map(({ place }) => place.heading)).toEqual(['otherColumns[0].panel.sodiumMg', 'otherColumns[0].serving.grams']);
    expect(read({}, { otherColumns: [{ basis: 'per-serving', state: 'as-packaged', panel: {} }] }).issues).toEqual([]);
  });

  test('[LBL-11] a panel per 100 mL is for as many servings, grams and measures as 100 mL are', () => {
    const drink = { market: 'eu', basis: 'per-100-ml', serving: { household: '2 cups', milliliters: 250, grams: 260 } } as const;
    expect(read({}, drink).amountsFor).toEqual({ servings: 0.4, grams: 104, milliliters: 100, household: { count: 0.8, measure: 'cup' } });
    expect(read({}, { ...drink, serving: { grams: 260 } }).amountsFor).toEqual({ milliliters: 100 });
    expect(read({}, { ...eu, serving: { milliliters: 50, grams: 40 } }).amountsFor).toEqual({
      servings: 2.5,
      grams: 100,
      milliliters: 125,
    });
    expect(read({}, { ...eu, serving: {} }).amountsFor).toEqual({ grams: 100 });
  });

  test('what is found is cut and cleaned before it is told', () => {
    const found = (value: unknown) => labelIssue('value-of-wrong-type', 'x', value, 'text').found;
    expect([5, null, [1], {}, true, undefined].map(found)).toEqual(['5', 'null', 'a list', 'a object', 'a boolean', 'a undefined']);
    expect(found('x'.repeat(60))).toBe('x'.repeat(60));
    expect(found('x'.repeat(61))).toBe(`${'x'.repeat(60)}…`);
    expect(found('a b\u0000\u007fc')).toBe('a b\ufffd\ufffdc');
    expect(found('🥖'.repeat(60))).toBe('🥖'.repeat(60));
    expect(found('🥖'.repeat(61))).toBe(`${'🥖'.repeat(60)}…`);
  });

  test('a food is the same by maker and name, whatever the case and the blanks', () => {
    expect(foodNameKey('The Maker', 'Ham  slices ')).toBe(foodNameKey(' the maker', 'ham slices'));
    expect(foodNameKey(undefined, 'Ham')).not.toBe(foodNameKey('Maker', 'Ham'));
    expect(foodNameKey(undefined, 'Ham')).toBe(foodNameKey('', 'HAM'));
  });

  test('[LBL-22] what is no label at all is refused, and why; what may be left out may be', () => {
    let nested: unknown = {};
    for (let level = 0; level < 201; level++) nested = { panel: nested };
    expect(labelFromJson(nested).issues[0]).toMatchObject({ code: 'label-not-an-object', found: expect.stringContaining('200 levels') });
    expect(labelFromJson({ format: 99, panel: {} })).toMatchObject({ value: undefined, issues: [{ code: 'json-format-not-known' }] });
    const column = { panel: { sodiumMg: 5 } };
    const { value } = labelFromJson({
      panel: {},
      otherColumns: [column, { ...column, serving: { grams: 30 }, basis: 'per-100-g', state: 'as-prepared' }],
    });
    expect(value?.otherColumns).toEqual([
      { basis: 'per-serving', state: 'as-packaged', panel: { sodiumMg: 5 } },
      { basis: 'per-100-g', state: 'as-prepared', serving: { grams: 30 }, panel: { sodiumMg: 5 } },
    ]);
    expect(labelFromJson({ panel: {}, otherColumns: [{ ...column, basis: 'per-year' }] }).value?.otherColumns).toEqual([]);
    expect(labelFromJson({ panel: {}, otherColumns: [{ ...column, state: 'as-thrown' }] }).value?.otherColumns).toEqual([]);
  });
});

describe('two labels', () => {
  const drink: PrintedLabel = {
    market: 'us',
    serving: { milliliters: 240 },
    basis: 'per-serving',
    state: 'as-packaged',
    front: [],
    otherColumns: [],
    panel: { sodiumMg: 140 },
  };
  const compare = (one: Partial<PrintedLabel>, other: Partial<PrintedLabel>) =>
    compareLabels(readLabel({ ...drink, ...one }), readLabel({ ...drink, ...other }));

  test('[LBL-25] drinks with another serving are compared by 100 mL', () => {
    expect(compare({}, { serving: { milliliters: 250 } })).toMatchObject({ comparedPer: '100-ml', outcome: 'reprinted', figures: [] });
    expect(compare({}, { serving: { milliliters: 250 }, panel: { sodiumMg: 300 } })).toMatchObject({ outcome: 'changed' });
    expect(compare({}, { serving: { grams: 250 } })).toMatchObject({ comparedPer: 'nothing', figures: [], servingChanged: true });
    expect(compare({ serving: { grams: 250 } }, {})).toMatchObject({ comparedPer: 'nothing' });
    expect(compare({ serving: {} }, { serving: { household: '1 cup' } })).toMatchObject({ comparedPer: 'nothing', servingChanged: true });
  });

  test('[LBL-25] a statement that comes or goes says nothing, of additives neither; another additive is a change', () => {
    const ham = 'HAM, WATER, SALT.';
    const phosphate = 'HAM, WATER, SALT, SODIUM PHOSPHATES.';
    expect(compare({}, {})).toMatchObject({ outcome: 'same', statement: 'same' });
    expect(compare({}, { statement: phosphate })).toMatchObject({ outcome: 'reprinted', statement: 'appeared', additivesCame: [] });
    expect(compare({ statement: phosphate }, {})).toMatchObject({ outcome: 'reprinted', statement: 'disappeared', additivesWent: [] });
    const came = compare({ statement: ham }, { statement: phosphate });
    expect(came).toMatchObject({ outcome: 'changed', statement: 'changed', additivesWent: [] });
    expect(came.additivesCame.map(({ name, class: kind }) => `${name} ${kind}`)).toContain('sodium phosphates phosphate');
    expect(compare({ statement: phosphate }, { statement: ham }).additivesWent.length).toBe(came.additivesCame.length);
    // The same words in other order of additives alone: salt is one of one name, its certainty does not make another.
    expect(compare({ statement: ham }, { statement: 'Ham, water, salt.' })).toMatchObject({ outcome: 'reprinted', statement: 'reworded' });
  });
});
