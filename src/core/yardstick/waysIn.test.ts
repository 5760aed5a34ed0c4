import { describe, expect, it } from 'vitest';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Companion, Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { builtInYardsticks } from './builtInYardsticks.ts';
import type { Shelf, WayIn, WayInKind } from './wayIn.ts';
import { largestShareThatFits, waysIn } from './waysIn.ts';
import type { Test, Yardstick } from './yardstick.ts';

const yardstick = builtInYardsticks.find(({ id }) => id === 'low-in-sodium-as-eaten')!;
const alone = builtInPlates.find(({ id }) => id === 'on-its-own')!;
const emptyShelf: Shelf = { foods: [], plates: [] };

const slices = (energyKcal: number, sodiumMg: number, more = {}): PlateFood =>
  foodWith('Slices', { serving: { household: '4 slices', grams: 56 }, panel: { energyKcal, sodiumMg }, ...more });

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

const find = (food: PlateFood, plate: Plate, shelf: Shelf = emptyShelf) => waysIn({ food, plate, yardstick, shelf });
const ofKind = (ways: readonly WayIn[], kind: WayInKind) => ways.filter(way => way.kind === kind);

describe('a smaller portion', () => {
  // 80 kcal and 320 mg beside 160 kcal and 40 mg: 120 to spare for 240 too much, so half of it fits.
  const plate = plateWith(bread(160, 40));

  it('[YST-31] is a closed form: half of 80 kcal and 320 mg fits beside 160 kcal and 40 mg', () => {
    expect(largestShareThatFits({ food: slices(80, 320), plate, yardstick })).toBeCloseTo(0.5, 12);
    const ways = ofKind(find(slices(80, 320), plate).ways, 'smaller-portion');
    expect(ways.map(way => way.plate.portion)).toEqual([{ measure: 'slice', count: 2 }, { grams: 28 }]);
    expect(ways[0]).toMatchObject({
      what: expect.stringContaining('2 slices instead of 4 slices: 200 kcal, 200 mg sodium on the plate'),
      verdict: { verdict: 'fits' },
    });
    expect(ways[0]?.totals.sodiumMg?.judged).toEqual({ lo: 200, hi: 200 });
  });

  it('[YST-31] is in whole slices and whole grams, rounded down', () => {
    // 120 to spare for 230: 0.5217 of 4 slices (56 g).
    const ways = ofKind(find(slices(80, 310), plate).ways, 'smaller-portion');
    expect(ways.map(way => way.plate.portion)).toEqual([{ grams: 29 }, { measure: 'slice', count: 2 }]);
  });

  it('[YST-31] [YST-37] is never under a quarter of the portion, and then says why there is none', () => {
    // 120 to spare for 520: 0.23.
    const { ways, none } = find(slices(80, 600), plate);
    expect(ofKind(ways, 'smaller-portion')).toEqual([]);
    expect(none).toContain('only a portion under a quarter of this one would fit');
  });

  it('[YST-31] is none where every portion has more sodium than energy', () => {
    expect(find(slices(80, 320), alone)).toEqual({ ways: [], none: expect.stringContaining('no portion of it fits') });
    expect(largestShareThatFits({ food: slices(80, 320), plate: alone, yardstick })).toBe(0);
  });

  it('[YST-31] keeps a minimum that the yardstick also has', () => {
    const protein: Test = {
      id: 'protein',
      measure: { kind: 'nutrient', nutrient: 'proteinG' },
      basis: 'as-eaten',
      atLeast: 8,
      source: { kind: 'clinic', text: 'own' },
    };
    const both: Yardstick = { ...yardstick, tests: [...yardstick.tests, protein] };
    const food = slices(80, 320, { panel: { energyKcal: 80, sodiumMg: 320, proteinG: 14 } });
    expect(ofKind(waysIn({ food, plate, yardstick: both, shelf: emptyShelf }).ways, 'smaller-portion')).toEqual([]);
    const rich = slices(80, 320, { panel: { energyKcal: 80, sodiumMg: 320, proteinG: 16 } });
    expect(waysIn({ food: rich, plate, yardstick: both, shelf: emptyShelf }).ways[0]?.plate.portion).toEqual({
      measure: 'slice',
      count: 2,
    });
  });

  it('[YST-31] stays under a strict bound', () => {
    const strict: Yardstick = {
      ...yardstick,
      tests: [
        {
          id: 's',
          measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
          basis: 'as-eaten',
          below: 160,
          source: { kind: 'clinic', text: 'own' },
        },
      ],
    };
    const { ways } = waysIn({ food: slices(80, 320), plate, yardstick: strict, shelf: emptyShelf });
    expect(ways.map(way => way.plate.portion)).toEqual([{ grams: 27 }, { measure: 'slice', count: 1 }]);
  });
});

describe('a mix with an unsalted version', () => {
  const salted = slices(80, 400);
  const unsalted = foodWith('Slices, unsalted', {
    serving: { household: '4 slices', grams: 56 },
    panel: { energyKcal: 80, sodiumMg: 40 },
    unsaltedVersionOf: 'Slices',
  });
  // 160 kcal and 20 mg leave 140: 80·s + … : 320 s − 40 (1 − s) ≤ 140 gives s = 0.5.
  const plate = plateWith(bread(160, 20));

  it('[YST-32] is a closed form share of the salted food, half and half where that is enough', () => {
    const ways = ofKind(find(salted, plate, { foods: [unsalted], plates: [] }).ways, 'half-and-half');
    expect(ways).toHaveLength(1);
    expect(ways[0]).toMatchObject({
      plate: { portion: { measure: 'slice', count: 2 } },
      mixedWith: { portion: { measure: 'slice', count: 2 } },
      what: 'half and half: 2 slices mixed with 2 slices of Slices, unsalted: 240 kcal, 240 mg sodium on the plate; a close call.',
    });
  });

  it('[YST-32] is in whole slices and whole grams', () => {
    // 340 s − 40 ≤ 170: s = 0.6176… of 4 slices or 56 g.
    const ways = ofKind(find(slices(80, 380), plateWith(bread(180, 10)), { foods: [unsalted], plates: [] }).ways, 'half-and-half');
    expect(ways.map(way => way.plate.portion)).toEqual([{ grams: 34 }, { measure: 'slice', count: 2 }]);
    expect(ways[0]?.mixedWith?.portion).toEqual({ grams: 22 });
  });

  it('[YST-32] both foods count as eaten', () => {
    const asEaten: Yardstick = {
      ...yardstick,
      tests: [
        {
          id: 's',
          measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
          basis: 'as-eaten',
          atMost: 220,
          source: { kind: 'clinic', text: 'own' },
        },
      ],
    };
    const ways = ofKind(
      waysIn({ food: salted, plate, yardstick: asEaten, shelf: { foods: [unsalted], plates: [] } }).ways,
      'half-and-half',
    );
    expect(ways[0]?.verdict.tests[0]?.judged).toEqual({ lo: 220, hi: 220 });
  });

  it('[YST-32] is not offered when the unsalted version brings a phosphate that must not be named', () => {
    const strict: Yardstick = {
      ...yardstick,
      tests: [
        ...yardstick.tests,
        {
          id: 'p',
          measure: { kind: 'additive', class: 'phosphate' },
          basis: 'as-eaten',
          absent: true,
          source: { kind: 'clinic', text: 'own' },
        },
      ],
    };
    const plain = slices(80, 400, { statement: 'TURKEY, SALT.' });
    const version = (statement: string) => foodWith('Other', { ...unsalted.label.printed, statement });
    const offers = (statement: string) =>
      ofKind(waysIn({ food: plain, plate, yardstick: strict, shelf: { foods: [version(statement)], plates: [] } }).ways, 'half-and-half')
        .length;
    expect(offers('TURKEY.')).toBe(1);
    expect(offers('TURKEY, SODIUM PHOSPHATES.')).toBe(0);
  });
});

describe('companions', () => {
  it('[YST-34] cooked without salt changes nothing but the salt, and comes first', () => {
    const salted = { ...bread(160, 200), withoutSalt: bread(160, 0, 'Unsalted bread').food };
    const [first] = find(slices(80, 200), plateWith(salted)).ways;
    expect(first).toMatchObject({
      kind: 'companion-without-salt',
      what: 'Unsalted bread for the companion: 240 kcal, 200 mg sodium on the plate.',
    });
  });

  it('[YST-33] another companion or a second one comes from the plates of the user', () => {
    const shelf = {
      foods: [],
      plates: [plateWith(bread(260, 10, 'Rich bread')), plateWith(bread(100, 90, 'Salty bread')), ...builtInPlates],
    };
    const { ways } = find(slices(80, 330), plateWith(bread(160, 60)), shelf);
    expect(ofKind(ways, 'other-companion').map(way => way.plate.companions.map(({ food }) => food.name))).toEqual([['Rich bread']]);
    expect(ofKind(ways, 'added-companion').map(way => way.plate.companions.map(({ food }) => food.name))).toEqual([
      ['Bread', 'Dry pasta, cooked without salt'],
      ['Bread', 'Rich bread'],
    ]);
    expect(ofKind(ways, 'other-companion')[0]?.what).toBe(
      'with 2 slices of Rich bread instead of Bread: 340 kcal, 340 mg sodium on the plate; a close call.',
    );
  });

  it('[YST-33] where a plate says what is eaten this way, companions come only from plates for the same', () => {
    const forSlices = (companion: Companion) => ({ ...plateWith(companion), categories: ['sandwich slices'] });
    const shelf = { foods: [], plates: [forSlices(bread(260, 10, 'Rich bread')), ...builtInPlates] };
    const { ways } = find(slices(80, 330), forSlices(bread(160, 60)), shelf);
    expect(ofKind(ways, 'added-companion').map(way => way.plate.companions.map(({ food }) => food.name))).toEqual([
      ['Bread', 'Rich bread'],
    ]);
  });

  it('[YST-33] a food on its own gets a first companion', () => {
    const { ways } = find(slices(70, 150), alone, { foods: [], plates: builtInPlates });
    expect(ways).toMatchObject([{ kind: 'added-companion', what: expect.stringContaining('270 kcal, 150 mg sodium') }]);
  });

  it('[YST-35] more of the companion is last and shows that sodium and energy rise', () => {
    // Each slice leaves 60: 240 too much need 4 slices; the plate had 2, which is at most doubled.
    const { ways } = find(slices(80, 320), plateWith(bread(160, 40)));
    const last = ways.at(-1);
    expect(last).toMatchObject({ kind: 'more-of-companion', plate: { companions: [{ portion: { measure: 'slice', count: 4 } }] } });
    expect(last?.what).toBe(
      '4 slices of Bread instead of 2 slices, which raises sodium and energy: 400 kcal, 400 mg sodium on the plate; a close call.',
    );
    expect(ways.findIndex(({ kind }) => kind === 'more-of-companion')).toBe(ways.length - 1);
    expect(ofKind(find(slices(80, 330), plateWith(bread(160, 40))).ways, 'more-of-companion')).toEqual([]);
  });

  it('[YST-36] the smallest change is first', () => {
    const shelf = { foods: [], plates: builtInPlates };
    const { ways } = find(slices(80, 240), plateWith(bread(160, 40)), shelf);
    expect(ways.map(({ kind }) => kind)).toEqual([
      'smaller-portion',
      'smaller-portion',
      'other-companion',
      'added-companion',
      'more-of-companion',
    ]);
    const changes = ways.slice(0, -1).map(({ change }) => change);
    expect(changes).toEqual([...changes].sort((a, b) => a - b));
  });
});

describe('no way in', () => {
  it('[YST-37] says what stands against it', () => {
    expect(find(slices(80, 900), alone).none).toBe(
      'No way in: no portion of it fits, there is no other companion on your plates, and no unsalted version of it is on the shelf.',
    );
    expect(find(slices(200, 100), alone).none).toBe('It fits as it is.');
    expect(find(withAmounts(slices(80, 100), { sodiumMg: { kind: 'unknown', reason: 'not-printed' } }), alone).none).toContain(
      'cannot be told',
    );
  });

  it('[YST-37] an unknown part is the reason where it is one', () => {
    const potassium: Yardstick = {
      ...yardstick,
      tests: [
        {
          id: 'k',
          measure: { kind: 'nutrient', nutrient: 'potassiumMg' },
          basis: 'on-plate',
          atMost: 200,
          source: { kind: 'clinic', text: 'own' },
        },
      ],
    };
    const food = slices(80, 100, { panel: { potassiumMg: 360 } });
    const { ways, none } = waysIn({ food, plate: plateWith(bread(160, 40)), yardstick: potassium, shelf: emptyShelf });
    expect(ways).toEqual([]);
    expect(none).toContain('an amount is unknown, so no portion of it can be worked out');
  });

  it('[YST-37] a named additive and a claim on the label stay whatever is eaten with it', () => {
    const named = slices(80, 100, { statement: 'TURKEY, SODIUM PHOSPHATES.' });
    const noPhosphate = builtInYardsticks.find(({ id }) => id === 'no-phosphate-additives')!;
    expect(waysIn({ food: named, plate: alone, yardstick: noPhosphate, shelf: emptyShelf }).none).toMatch(
      /^No way in: no portion or companion changes this: /,
    );
    const claim = builtInYardsticks.find(({ id }) => id === 'low-sodium-us')!;
    const salty = slices(80, 400, { referenceAmount: 'deli-meat' });
    expect(waysIn({ food: salty, plate: alone, yardstick: claim, shelf: emptyShelf }).none).toMatch(/no portion or companion/);
  });
});
