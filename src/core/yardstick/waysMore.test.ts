/** Ways in one by one: which companions and mixes are offered, in which order, and what no portion changes. */
import { describe, expect, test } from 'vitest';
import type { PrintedLabel } from '#core/label/label.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Companion, Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { judgePlate } from './judgePlate.ts';
import type { WayIn, WayInKind } from './wayIn.ts';
import { largestShareThatFits, noPortionChanges, waysIn } from './waysIn.ts';
import type { Test, Yardstick } from './yardstick.ts';

const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;
const source = { kind: 'clinic', text: 'own' } as const;

/** Sodium no more than energy on the plate. */
const sodiumToEnergy: Test = {
  id: 'sodium-to-energy',
  measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' },
  basis: 'on-plate',
  atMost: 0,
  source,
};
const sodiumUpTo = (atMost: number, more: Partial<Test> = {}): Test => ({
  id: 'sodium',
  measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
  basis: 'on-plate',
  atMost,
  source,
  ...more,
});
const noPhosphate: Test = {
  id: 'no-phosphate',
  measure: { kind: 'additive', class: 'phosphate' },
  basis: 'as-eaten',
  absent: true,
  source,
};

function yardstickOf(...tests: Test[]): Yardstick {
  return { id: 'own', title: 'own', purpose: '', tests, classScales: [], settings: 'any', cautions: [] };
}

const slices = (energyKcal: number, sodiumMg: number, printed: Partial<PrintedLabel> = {}): PlateFood =>
  foodWith('Slices', { serving: { household: '4 slices', grams: 56 }, panel: { energyKcal, sodiumMg }, ...printed });

const bread = (energyKcal: number, sodiumMg: number, name = 'Bread'): Companion => ({
  food: foodWith(name, { serving: { household: '2 slices', grams: 64 }, panel: { energyKcal, sodiumMg } }),
  portion: { measure: 'slice', count: 2 },
});

const plateWith = (...companions: Companion[]): Plate => ({
  id: 'sandwich',
  title: 'a sandwich',
  portion: { measure: 'slice', count: 4 },
  companions,
});

function offered(food: PlateFood, plate: Plate, tests: readonly Test[], shelf: { foods?: PlateFood[]; plates?: Plate[] } = {}) {
  return waysIn({ food, plate, yardstick: yardstickOf(...tests), shelf: { foods: [], plates: [], ...shelf } }).ways;
}

const actionsOf = (ways: readonly WayIn[], kind: WayInKind) => ways.filter(way => way.kind === kind).map(({ action }) => action);

describe('companions', () => {
  test('[YST-34] each without salt, and all of them together', () => {
    const salted = (name: string, energyKcal: number) => ({
      ...bread(energyKcal, 100, name),
      withoutSalt: bread(energyKcal, 0, `${name} without salt`).food,
    });
    const ways = offered(slices(80, 200), plateWith(salted('Bread', 100), bread(10, 0, 'Leaf'), salted('Spread', 90)), [sodiumToEnergy]);
    const changed = ways.filter(({ kind }) => kind === 'companion-without-salt');
    // 280 kcal: 200 mg and 100 of one of them are 300, without either 200.
    expect(changed.map(({ plate }) => plate.companions.map(({ food }) => food.name))).toEqual([
      ['Bread without salt', 'Leaf', 'Spread without salt'],
    ]);
    expect(changed[0]).toMatchObject({ action: 'Bread without salt and Spread without salt for the companion', change: 0 });
    const milder = offered(slices(80, 170), plateWith(salted('Bread', 100), bread(10, 0, 'Leaf'), salted('Spread', 90)), [sodiumToEnergy]);
    expect(actionsOf(milder, 'companion-without-salt')).toEqual([
      'Bread without salt for the companion',
      'Spread without salt for the companion',
      'Bread without salt and Spread without salt for the companion',
    ]);
  });

  test('[YST-33] three of a kind, nearest in energy first, one of unknown energy not before them', () => {
    const plates = [260, 200, 300, 220, 240].map(kcal => plateWith(bread(kcal, 0, `Bread of ${kcal}`)));
    const ways = offered(slices(80, 230), plateWith(bread(130, 0)), [sodiumToEnergy], { plates });
    expect(actionsOf(ways, 'other-companion')).toEqual([200, 220, 240].map(kcal => `with 2 slices of Bread of ${kcal} instead of Bread`));
    expect(actionsOf(ways, 'added-companion')).toEqual([200, 220, 240].map(kcal => `with 2 slices of Bread of ${kcal} as well`));
    const unknown = {
      ...bread(200, 0, 'Leaf'),
      food: withAmounts(bread(200, 0, 'Leaf').food, { energyKcal: { kind: 'unknown', reason: 'not-printed' } }),
    };
    const bySodium = offered(slices(80, 230), plateWith(bread(130, 100)), [sodiumUpTo(300)], {
      plates: [plateWith(unknown), plateWith(bread(170, 0, 'Roll')), plateWith(bread(100, 0, 'Wrap'))],
    });
    expect(actionsOf(bySodium, 'other-companion')).toEqual(
      ['Wrap', 'Roll', 'Leaf'].map(name => `with 2 slices of ${name} instead of Bread`),
    );
  });

  test('[YST-33] one of several is exchanged, the others stay; a food on its own gets one beside it', () => {
    const shelf = { plates: [plateWith(bread(200, 0, 'Roll'))] };
    const ways = offered(slices(80, 300), plateWith(bread(60, 0), bread(70, 50, 'Spread')), [sodiumToEnergy], shelf);
    const exchanged = ways
      .filter(({ kind }) => kind === 'other-companion')
      .map(({ plate }) => plate.companions.map(({ food }) => food.name));
    // 80, 60 and 200 kcal for 300 mg; 80, 200 and 70 kcal for 350 mg.
    expect(exchanged).toEqual([
      ['Bread', 'Roll'],
      ['Roll', 'Spread'],
    ]);
    expect(actionsOf(offered(slices(80, 200), alone, [sodiumToEnergy], shelf), 'added-companion')).toEqual([
      'with 2 slices of Roll beside it',
    ]);
  });

  test('[YST-33] a plate for several categories lends to each of them; one without a category lends to none', () => {
    const shelf = (categories?: string[]) => ({
      plates: [{ ...plateWith(bread(260, 0, 'Roll')), ...(categories === undefined ? {} : { categories }) }],
    });
    const on = { ...plateWith(bread(130, 0)), categories: ['soups', 'cold cuts'] };
    const count = (categories?: string[]) =>
      actionsOf(offered(slices(80, 230), on, [sodiumToEnergy], shelf(categories)), 'other-companion').length;
    expect([count(['cheeses', 'cold cuts']), count(['cheeses']), count()]).toEqual([1, 0, 0]);
  });

  // 80 kcal and 240 mg: 160 too much. Each gram of bread, 128 kcal in 64 g, makes room for 2 mg: 80 g.
  test('[YST-35] more of a companion by scale, up to twice as much, told as a share of what was there', () => {
    const weighed = (grams: number): Plate => plateWith({ ...bread(130, 2), portion: { grams } });
    const [way] = offered(slices(80, 240), weighed(64), [sodiumToEnergy]).filter(({ kind }) => kind === 'more-of-companion');
    // 128 kcal are left of a serving: 160 / 128 of 64 g.
    expect(way).toMatchObject({ plate: { companions: [{ portion: { grams: 80 } }] }, change: expect.closeTo(0.25, 9) });
    expect(way?.action).toBe('80 g of Bread instead of 64 g, which raises sodium and energy');
    expect(actionsOf(offered(slices(80, 240), weighed(40), [sodiumToEnergy]), 'more-of-companion')).toHaveLength(1);
    expect(actionsOf(offered(slices(80, 240), weighed(39), [sodiumToEnergy]), 'more-of-companion')).toEqual([]);
    // Beside another that makes room for 32, half as much more will do: 128 of 160.
    const withLeaf = plateWith({ ...bread(130, 2), portion: { grams: 32 } }, bread(32, 0, 'Leaf'));
    const both = offered(slices(80, 240), withLeaf, [sodiumToEnergy]).filter(({ kind }) => kind === 'more-of-companion');
    expect(both[0]?.plate.companions.map(({ portion }) => portion)).toEqual([{ grams: 64 }, { measure: 'slice', count: 2 }]);
  });
});

describe('mixes', () => {
  const unsalted = (printed: Partial<PrintedLabel> = {}) =>
    foodWith('Slices, unsalted', {
      serving: { household: '4 slices', grams: 56 },
      panel: { energyKcal: 80, sodiumMg: 0 },
      unsaltedVersionOf: 'Slices',
      ...printed,
    });
  const mixes = (food: PlateFood, version: PlateFood, tests: readonly Test[], plate: Plate = alone) =>
    actionsOf(offered(food, plate, tests, { foods: [version] }), 'half-and-half');

  test('[YST-32] half and half where exactly half is enough, and where more would be', () => {
    const half = 'half and half: 2 slices mixed with 2 slices of Slices, unsalted';
    expect(mixes(slices(80, 400), unsalted(), [sodiumUpTo(200)])).toEqual([half]);
    // 3 of 4 slices, 42 of 56 g are 300 mg.
    expect(mixes(slices(80, 400), unsalted(), [sodiumUpTo(300)]).sort()).toEqual(
      ['3 slices mixed with 1 slice of Slices, unsalted', '42 g mixed with 14 g of Slices, unsalted', half].sort(),
    );
    // Less than half: 1 slice, and 27 g of 56.
    expect(mixes(slices(80, 400), unsalted(), [sodiumUpTo(196)]).sort()).toEqual(
      ['1 slice mixed with 3 slices of Slices, unsalted', '27 g mixed with 29 g of Slices, unsalted'].sort(),
    );
    // A quarter is the least: 1 slice, 14 g; below it nothing.
    expect(mixes(slices(80, 400), unsalted(), [sodiumUpTo(100)])).toHaveLength(2);
    expect(mixes(slices(80, 400), unsalted(), [sodiumUpTo(99)])).toEqual([]);
  });

  test('[YST-32] three slices cannot be halved; their grams can', () => {
    const three = (food: PlateFood): Partial<PrintedLabel> => ({ ...food.label.printed, serving: { household: '3 slices', grams: 56 } });
    const food = foodWith('Slices', three(slices(80, 400)));
    expect(mixes(food, foodWith('Slices, unsalted', three(unsalted())), [sodiumUpTo(200)]).sort()).toEqual(
      ['1 slice mixed with 2 slices of Slices, unsalted', 'half and half: 28 g mixed with 28 g of Slices, unsalted'].sort(),
    );
  });

  // At least 16 g of protein: 20 s + 10 (1 − s) gives s of 0.6 or more; at most 300 mg sodium 0.75 or less.
  test('[YST-32] half is not enough where a minimum asks for more of the salted food', () => {
    const protein: Test = { id: 'protein', measure: { kind: 'nutrient', nutrient: 'proteinG' }, basis: 'as-eaten', atLeast: 16, source };
    const rich = slices(80, 400, { panel: { energyKcal: 80, sodiumMg: 400, proteinG: 20 } });
    const version = unsalted({ panel: { energyKcal: 80, sodiumMg: 0, proteinG: 10 } });
    expect(mixes(rich, version, [sodiumUpTo(300), protein]).sort()).toEqual([
      '3 slices mixed with 1 slice of Slices, unsalted',
      '42 g mixed with 14 g of Slices, unsalted',
    ]);
    expect(mixes(rich, version, [sodiumUpTo(200), protein])).toEqual([]);
  });

  test('[YST-32] drinks are mixed by milliliters; a version in another measure is mixed by what both labels have', () => {
    const drink = foodWith('Slices', { serving: { milliliters: 240 }, panel: { energyKcal: 80, sodiumMg: 400 } });
    const mild = unsalted({ serving: { milliliters: 240 } });
    expect(mixes(drink, mild, [sodiumUpTo(200)])).toEqual(['half and half: 120 mL mixed with 120 mL of Slices, unsalted']);
    expect(mixes(slices(80, 400), unsalted({ serving: { household: '1 bowl', grams: 56 } }), [sodiumUpTo(200)])).toEqual([
      'half and half: 28 g mixed with 28 g of Slices, unsalted',
    ]);
    // A label without any serving in common cannot be mixed.
    expect(mixes(slices(80, 400), unsalted({ serving: { household: '1 bowl' } }), [sodiumUpTo(200)])).toEqual([]);
  });
});

describe('what no portion changes', () => {
  const plate = plateWith(bread(160, 40));
  const share = (food: PlateFood, tests: readonly Test[], on: Plate = plate) =>
    largestShareThatFits({ food, plate: on, yardstick: yardstickOf(...tests) });

  test('[YST-39] something named, a figure of the label, a ratio of the food by itself', () => {
    // 120 to spare for 240: half.
    const plain = slices(80, 320, { statement: 'TURKEY.' });
    const phosphate = slices(80, 320, { statement: 'TURKEY, SODIUM PHOSPHATES.' });
    expect(share(plain, [sodiumToEnergy, noPhosphate])).toBeCloseTo(0.5, 12);
    expect(share(phosphate, [sodiumToEnergy, noPhosphate])).toBe(0);
    expect(share(slices(80, 320), [sodiumToEnergy, noPhosphate])).toBe(0);
    expect(share(plain, [sodiumToEnergy, sodiumUpTo(320, { basis: 'per-serving' })])).toBeCloseTo(0.5, 12);
    expect(share(plain, [sodiumToEnergy, sodiumUpTo(319, { basis: 'per-serving' })])).toBe(0);
    const ratio = (atMost: number): Test => ({
      id: 'ratio',
      measure: { kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' },
      basis: 'as-eaten',
      atMost,
      source,
    });
    expect(share(plain, [ratio(4)])).toBe(1);
    expect(share(plain, [ratio(3.9)])).toBe(0);
    expect(share(slices(80, 100), [sodiumToEnergy])).toBe(1);
  });

  test('[YST-39] the first such outcome is told, one that a portion changes is not', () => {
    const tests = [sodiumToEnergy, noPhosphate, sodiumUpTo(300, { id: 'label', basis: 'per-serving' })];
    const told = (food: PlateFood, on: Plate = plate, all = tests) =>
      noPortionChanges(all, on, judgePlate({ food, plate: on, yardstick: yardstickOf(...all) }))?.testId;
    expect(told(slices(80, 320, { statement: 'TURKEY, SODIUM PHOSPHATES.' }))).toBe('no-phosphate');
    expect(told(slices(80, 320, { statement: 'TURKEY.' }))).toBe('label');
    expect(told(slices(80, 290, { statement: 'TURKEY.' }))).toBeUndefined();
    // Alone, sodium against energy is the same in half of the food; 50 mg more than energy, or a number, is not.
    expect(told(slices(80, 290, { statement: 'TURKEY.' }), alone)).toBe('sodium-to-energy');
    expect(told(slices(80, 290), plate, [{ ...sodiumToEnergy, basis: 'as-eaten' }])).toBe('sodium-to-energy');
    expect(told(slices(80, 290), alone, [{ ...sodiumToEnergy, atMost: 50 }])).toBeUndefined();
    expect(told(slices(80, 290), alone, [sodiumUpTo(0)])).toBeUndefined();
  });

  test('[YST-37] each reason that there is no way in', () => {
    const none = (food: PlateFood, on: Plate, tests: readonly Test[], shelf: { foods?: PlateFood[]; plates?: Plate[] } = {}) =>
      waysIn({ food, plate: on, yardstick: yardstickOf(...tests), shelf: { foods: [], plates: [], ...shelf } }).none;
    const salty = plateWith(bread(10, 900));
    expect(none(slices(80, 900), salty, [sodiumUpTo(100)])).toBe(
      'No way in: no portion of it fits, there is no other companion on your plates, more of the companion does not do, and no unsalted version of it is on the shelf.',
    );
    const version = foodWith('Other', { unsaltedVersionOf: 'Slices', panel: { energyKcal: 80, sodiumMg: 800 } });
    expect(none(slices(80, 900), salty, [sodiumUpTo(100)], { foods: [version], plates: [plateWith(bread(20, 700, 'Roll'))] })).toBe(
      'No way in: no portion of it fits, no companion on your plates makes room for it, more of the companion does not do, and mixing it with its unsalted version does not do.',
    );
    const strange = { ...alone, portion: { measure: 'scoop', count: 1 } };
    expect(none(slices(80, 900), strange, [noPhosphate])).toContain('cannot be told');
  });
});

describe('a way in, told', () => {
  test('[YST-30] energy, sodium and what the tests look at; what is not known or estimated says so', () => {
    const potassium: Test = {
      id: 'k',
      measure: { kind: 'nutrient', nutrient: 'potassiumMg' },
      basis: 'on-plate',
      atMost: 200,
      useEstimates: true,
      source,
    };
    const food = withAmounts(slices(80, 320), { potassiumMg: { kind: 'known', range: { lo: 200, hi: 400 }, source: 'estimated' } });
    const [first] = offered(food, alone, [potassium]);
    expect(first?.what).toBe('2 slices instead of 1 serving: 40 kcal, 160 mg sodium, estimated 100 – 200 mg potassium on the plate.');
    const noEnergy = foodWith('Slices', { serving: { household: '4 slices', grams: 56 }, panel: { sodiumMg: 320 } });
    expect(offered(noEnergy, alone, [sodiumUpTo(170)])[0]?.what).toBe(
      '29 g instead of 1 serving (56 g): energy unknown, 166 mg sodium on the plate.',
    );
    const beside = offered(noEnergy, plateWith(bread(160, 0)), [sodiumUpTo(160)]);
    expect(beside[0]?.what).toBe('2 slices instead of 4 slices: at least 160 kcal, 160 mg sodium on the plate; a close call.');
  });
});
