import { describe, expect, it } from 'vitest';
import { clientWith, today } from '#core/client/assessment/clientFixture.ts';
import type { TargetItem } from '#core/client/prescription/target.ts';
import type { ClientRecord, DecidedTarget } from '#core/client/record/record.ts';
import { recordOf } from '#core/client/record/recordFixture.ts';
import type { PrintedLabel } from '#core/label/label.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import type { ShelfFood } from '../shelf.ts';
import { type ForClient, judgeForClient } from './judgeForClient.ts';
import { whatFits } from './whatFits.ts';
import { whatIsForbidden } from './whatIsForbidden.ts';

const alone: Plate = { id: 'alone', title: 'on its own', portion: { servings: 1 }, companions: [] };

function target(item: TargetItem, hi: number, unit: DecidedTarget['unit'] = 'mg'): DecidedTarget {
  return { item, unit, kind: 'bounded', range: { lo: 0, hi }, limit: 'at-most', from: 'own', reason: 'r', says: 's' };
}

function shelved(name: string, panel: PrintedLabel['panel'], statement: string | undefined = 'Rice, water.', category = 'food'): ShelfFood {
  const food = foodWith(name, { panel, serving: { household: '1 cup', grams: 100 }, ...(statement === '' ? {} : { statement }) });
  return {
    row: { id: food.id, name, category, version: 1, isDemo: false },
    label: { kind: 'read', id: food.id, foodId: food.id, printed: food.label.printed, addedAt: '2026-06-01T00:00:00Z', photoIds: [] },
    food,
  };
}

function judgeWith(more: Partial<ForClient> = {}) {
  const client: ForClient = {
    targets: [target('sodium', 2000)],
    avoidedFoods: [],
    allergies: [],
    useEstimates: false,
    isSuppressed: false,
    meal: { name: 'lunch', percent: 30 },
    plate: alone,
    ...more,
  };
  return (food: PlateFood, category?: string) => judgeForClient([category === undefined ? { food } : { food, category }], client).foods[0]!;
}

/** A record whose signed prescription bounds these alone. */
function recordWith(targets: readonly DecidedTarget[], more: Parameters<typeof clientWith>[0] = {}): ClientRecord {
  const record = recordOf(clientWith(more));
  return { ...record, prescriptions: record.prescriptions.map(one => ({ ...one, targets })) };
}

const fitsOf = (record: ClientRecord, foods: readonly ShelfFood[], plate = alone) =>
  whatFits({ record, served: [{ plate, foods }], meal: 'lunch', useEstimates: false, today });

describe('what must not be eaten', () => {
  const peanut = { avoidedFoods: ['peanuts'], allergies: ['peanuts'] };
  const noodles = (statement: string, sodiumMg = 900) => shelved('Noodles', { energyKcal: 200, sodiumMg }, statement).food;

  it('[CLT-60] an allergen named stands first and in the place of any portion, also where less would keep the sodium', () => {
    // 600 mg at lunch over 900 mg: two thirds of it would keep the sodium, and are not offered.
    expect(judgeWith()(noodles('WHEAT, PEANUTS.'))).toMatchObject({ offer: 'less', shareOfMeal: expect.closeTo(2 / 3) });
    const judged = judgeWith(peanut)(noodles('WHEAT, PEANUTS.'));
    expect(judged).toMatchObject({ offer: 'never', shareOfMeal: 0 });
    expect(judged.reasons[0]).toMatchObject({
      kind: 'allergen',
      kin: 'peanut',
      testId: 'avoids peanut',
      presence: 'named',
      found: { food: 'Noodles', how: 'named' },
    });
    expect(judged.reasons[1]).toMatchObject({
      kind: 'nutrient',
      nutrient: 'sodiumMg',
      verdict: 'over',
      judged: { lo: 900, hi: 900 },
      bound: 600,
    });
  });

  it.each([
    ['MAY CONTAIN PEANUTS', 'WHEAT. MAY CONTAIN PEANUTS.', 'possible'],
    ['nuts of any kind', 'WHEAT, MIXED NUTS.', 'possible'],
    ['no statement', '', 'unread'],
  ])('[CLT-60] %s is asked about, in no portion, whatever the sodium', (_title, statement, presence) => {
    for (const mg of [50, 900]) {
      const judged = judgeWith(peanut)(noodles(statement, mg));
      expect(judged).toMatchObject({ offer: 'ask', shareOfMeal: 0 });
      expect(judged.reasons[0]).toMatchObject({ kind: 'allergen', presence });
    }
  });

  it('[CLT-60] a name that ends with "named" decides nothing: only what the label says', () => {
    const judged = judgeWith()(shelved('Named, famed and unnamed noodles', { energyKcal: 200, sodiumMg: 900 }).food);
    expect(judged.offer).toBe('less');
  });

  it('[CLT-60] what is avoided is told as avoided, an additive ruled out as an additive, allergens before both', () => {
    const judge = judgeWith({
      targets: [target('sodium', 2000), target('phosphateAdditives', 0, 'named on the label')],
      avoidedFoods: ['pork', 'peanuts'],
      allergies: ['peanuts'],
    });
    const { reasons } = judge(noodles('WHEAT, PORK, SODIUM PHOSPHATES, PEANUTS.'));
    expect(reasons.map(({ kind }) => kind)).toEqual(['allergen', 'avoided', 'additive', 'nutrient']);
    expect(judge(noodles('WHEAT, SODIUM PHOSPHATES.'))).toMatchObject({ offer: 'never', shareOfMeal: 0 });
  });

  it('[CLT-61] an allergy of either assessment forbids: a newer one that tells none does not lift what was signed for', () => {
    const record = recordOf(clientWith({ allergies: ['peanuts'], avoidedFoods: ['pork'] }));
    const newer = { id: 'newer', assessment: clientWith({ allergies: ['milk'] }) };
    const both = { ...record, assessments: [newer, ...record.assessments] };
    // Dropping the signed assessment's allergies would offer peanuts again as soon as somebody assesses anew without asking.
    expect(new Set(whatIsForbidden(both, today).allergies)).toEqual(new Set(['milk', 'peanuts']));
    expect(new Set(whatIsForbidden(both, today).avoidedFoods)).toEqual(new Set(['milk', 'peanuts', 'pork']));
    const foods = [
      shelved('Peanut cup', { energyKcal: 90, sodiumMg: 10 }, 'PEANUTS.'),
      shelved('Milk cup', { energyKcal: 90, sodiumMg: 10 }, 'MILK.'),
      shelved('Pork cup', { energyKcal: 90, sodiumMg: 10 }, 'PORK.'),
      shelved('Rice cup', { energyKcal: 90, sodiumMg: 10 }, 'RICE.'),
    ];
    expect(fitsOf(both, foods).rows.map(({ offer }) => offer)).toEqual(['never', 'never', 'never', 'portion']);
  });
});

describe('what fits in a meal and in a day', () => {
  it('[CLT-62] "in a day" is the day’s figure, not the meal’s', () => {
    // 2,000 mg a day, 600 at lunch; a cup of 1,200 mg: half of it at lunch, 1 2/3 cups in a day. 2,500 mg: 24 % at lunch, 3.84 tablespoons; 80 % in a day.
    const foods = [shelved('Salty', { energyKcal: 90, sodiumMg: 1200 }), shelved('Saltier', { energyKcal: 90, sodiumMg: 2500 })];
    const { rows } = fitsOf(recordWith([target('sodium', 2000)]), foods);
    expect(rows.map(({ inMeal, inDay }) => [inMeal, inDay])).toEqual([
      ['1/2 cup (50 g)', '1 2/3 cups (166.7 g)'],
      ['3 1/2 tablespoons (21.9 g)', '3/4 cup (75 g)'],
    ]);
  });

  it('[CLT-62] a meal’s share is for the whole plate, companions counted, and says so', () => {
    const bread = foodWith('Bread', { statement: 'Rice flour.', panel: { energyKcal: 80, sodiumMg: 300 } });
    const plate: Plate = { ...alone, companions: [{ food: bread, portion: { servings: 1 } }] };
    const { tests, rows } = fitsOf(recordWith([target('sodium', 2300)]), [shelved('Salty', { energyKcal: 90, sodiumMg: 780 })], plate);
    expect(tests).toEqual([
      'This whole plate may take at most 690 mg sodium, what the food is eaten with counted (30% of 2,300 mg a day for lunch)',
    ]);
    // (690 − 300) / 780 is half of it.
    expect(rows[0]).toMatchObject({ offer: 'less', inMeal: '1/2 cup (50 g)' });
  });
});

describe('a mineral that was signed and that labels do not print', () => {
  const phosphorus = [target('sodium', 2000), target('phosphorus', 1000)];
  const silent = shelved('Silent', { energyKcal: 90, sodiumMg: 100 });
  const phosphate = shelved('Phosphate', { energyKcal: 90, sodiumMg: 100 }, 'Rice, disodium phosphate.');
  const maybe = shelved('Maybe', { energyKcal: 90, sodiumMg: 100 }, 'Rice. May contain disodium phosphate.');
  const printed = shelved('Printed', { energyKcal: 90, sodiumMg: 100, phosphorusMg: 120 });
  const rich = shelved('Rich', { energyKcal: 90, sodiumMg: 100, phosphorusMg: 400 });
  const salty = shelved('Salty', { energyKcal: 90, sodiumMg: 1200 });

  it('[CLT-63] phosphorus is judged by additives where it is not told, and what could not be told is counted', () => {
    const { rows, notTold } = fitsOf(recordWith(phosphorus), [silent, phosphate, maybe, printed, rich, salty]);
    expect(rows.map(({ name, offer }) => [name, offer])).toEqual([
      ['Silent', 'portion'],
      ['Phosphate', 'never'],
      ['Maybe', 'ask'],
      ['Printed', 'portion'],
      // 300 mg at lunch: three quarters of 400 mg.
      ['Rich', 'less'],
      ['Salty', 'less'],
    ]);
    expect(notTold).toEqual([
      { mineral: 'phosphorus', foods: 4, of: 6, words: 'phosphorus could not be told for 4 of 6 foods; judged by additives' },
    ]);
  });

  it('[CLT-63] a food whose phosphorus is not told says so, and no test of phosphorus says "fits"', () => {
    const judged = judgeWith({ targets: phosphorus })(silent.food);
    expect(judged.notTold).toEqual(['phosphorus']);
    expect(judged.verdict.tests.map(({ testId }) => testId)).not.toContain('phosphorus');
    expect(judged.reasons.find(({ kind }) => kind === 'mineral-not-told')).toEqual({
      kind: 'mineral-not-told',
      testId: 'phosphorus',
      mineral: 'phosphorus',
    });
    const { rows } = fitsOf(recordWith(phosphorus), [silent, printed]);
    expect(rows.map(({ marks }) => marks)).toEqual([['Fits by what the label tells; phosphorus not known.'], []]);
  });

  it('[CLT-63] a known part over the bound is over, though the rest is unknown', () => {
    const cheese = foodWith('Cheese', { statement: 'Rice.', panel: { energyKcal: 90, sodiumMg: 10, phosphorusMg: 350 } });
    const plate: Plate = { ...alone, companions: [{ food: cheese, portion: { servings: 1 } }] };
    expect(judgeWith({ targets: phosphorus, plate })(silent.food)).toMatchObject({
      offer: 'none',
      notTold: [],
      verdict: { verdict: 'over' },
    });
  });

  it('[CLT-63] an untold potassium bars a named potassium salt; a printed one within the bound does not', () => {
    const targets = [target('sodium', 2000), target('potassium', 2000)];
    const salt = 'Rice, potassium chloride.';
    expect(judgeWith({ targets })(shelved('Untold', { energyKcal: 90, sodiumMg: 10 }, salt).food).offer).toBe('never');
    expect(judgeWith({ targets })(shelved('Told', { energyKcal: 90, sodiumMg: 10, potassiumMg: 200 }, salt).food).offer).toBe('portion');
    expect(judgeWith({ targets })(shelved('Plain', { energyKcal: 90, sodiumMg: 10 }).food)).toMatchObject({
      offer: 'portion',
      notTold: ['potassium'],
    });
  });

  it('[CLT-63] sodium that is not told is asked about: only minerals that labels need not print are judged by additives', () => {
    expect(judgeWith({ targets: phosphorus })(shelved('No sodium', { energyKcal: 90 }).food)).toMatchObject({
      offer: 'ask',
      shareOfMeal: 0,
    });
  });
});

describe('foods that are not safe while the immune system is held down', () => {
  const foods = [
    shelved('Turkey breast slices', { energyKcal: 60, sodiumMg: 100 }, 'Turkey, water.', 'sandwich slices'),
    shelved('Alfalfa sprouts', { energyKcal: 10, sodiumMg: 5 }, 'Alfalfa sprouts.', 'produce'),
    shelved('Rice bowl', { energyKcal: 90, sodiumMg: 10 }),
  ];
  const targets = [target('sodium', 2000)];

  it.each([
    ['a transplant', { treatment: { setting: 'transplant', transplantedOn: '2026-01-10' } }],
    ['a medicine that suppresses it', { medicines: ['tacrolimus'] }],
  ] satisfies readonly (readonly [string, Parameters<typeof clientWith>[0]])[])(
    '[CLT-64] %s: heated cold cuts carry their line, raw sprouts are never offered',
    (_title, more) => {
      const { rows } = fitsOf(recordWith(targets, more), foods);
      expect(rows.map(({ offer, marks }) => [offer, marks])).toEqual([
        ['portion', ['Eat it only heated until it steams.']],
        ['never', []],
        ['portion', []],
      ]);
      expect(rows[1]?.why).toContain('Raw sprouts');
    },
  );

  it('[CLT-64] everybody else has no such line', () => {
    const { rows } = fitsOf(recordWith(targets), foods);
    expect(rows.map(({ offer, marks }) => [offer, marks])).toEqual([
      ['portion', []],
      ['portion', []],
      ['portion', []],
    ]);
  });
});
