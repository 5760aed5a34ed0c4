import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { additiveTable } from '#core/additive/additiveTable.ts';
import { foodWith } from '#core/plate/plateFixture.ts';
import { portionFactor } from '#core/plate/portionFactor.ts';
import { scalePortion } from '#core/plate/scalePortion.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import { largestShareThatFits } from '#core/yardstick/waysIn.ts';
import { buildHandout } from './buildHandout.ts';
import type { HandoutInput, SignedTarget } from './handout.ts';
import { draftWith, handoutInput, noPhosphate, plate, slices, sodiumTarget, topicWith } from './handoutFixture.ts';
import type { HandoutPage, SectionId } from './handoutPage.ts';
import { lineText } from './line.ts';
import { dayPortion, platesInADay } from './portions.ts';

const page = (input: HandoutInput): HandoutPage => buildHandout(input).value;
const lowSodium = builtInYardsticks.find(({ id }) => id === 'low-in-sodium-as-eaten')!;

/** Everything a section says, a line each. */
function said({ sections }: HandoutPage, ...ids: readonly SectionId[]): readonly string[] {
  return sections
    .filter(({ id }) => ids.length === 0 || ids.includes(id))
    .flatMap(({ title, blocks }) => [
      title,
      ...blocks.flatMap(block => {
        if (block.kind === 'list') return block.lines.map(lineText);
        if (block.kind === 'foods') return block.rows.flatMap(({ name, maker = '', keepTo, told }) => [name, maker, ...keepTo, ...told]);
        if (block.kind === 'table') return [...block.head, ...block.rows.flatMap(({ head, cells }) => [lineText(head), ...cells])];
        return [lineText(block.line)];
      }),
    ]);
}

/** Names of the foods that are listed to eat or to buy. */
function listed({ sections }: HandoutPage): readonly string[] {
  return sections.flatMap(({ id, blocks }) =>
    blocks.flatMap(block => {
      if (block.kind === 'foods') return block.rows.map(({ name }) => name);
      const lines = id === 'shopping' && block.kind === 'list' ? block.lines : [];
      return lines.flatMap(({ runs }) => runs.filter(({ kind }) => kind === 'food').map(({ text }) => text));
    }),
  );
}

function withTargets(targets: readonly SignedTarget[], more: Readonly<Record<string, unknown>> = {}) {
  const plain = targets.map(({ range, ...rest }) => (range === undefined ? rest : { ...rest, range }));
  return draftWith({ prescription: { targets: plain, signed: { by: 'A. Writer', on: '2026-11-14' } }, ...more });
}

describe('what is listed', () => {
  it('[HND-1] what fits is listed; what is over is not; what the label does not tell is asked about', () => {
    const built = page(handoutInput([slices('Mild', 100), slices('Salty', 900), slices('Silent', undefined)]));
    expect([...new Set(listed(built))]).toEqual(['Mild']);
    expect(said(built, 'ask')).toContain('Silent: the sodium is not known.');
    expect(said(built, 'foods', 'fridge', 'shopping').join()).not.toMatch(/Salty|Silent/);
  });

  it('[HND-1] law: no food that is over or cannot be told is ever listed as fitting', () => {
    const sodium = fc.option(fc.integer({ min: 0, max: 1500 }), { nil: undefined });
    const statement = fc.constantFrom('Turkey, water.', 'Turkey, sodium phosphates.', 'Turkey. May contain sodium phosphates.', undefined);
    fc.assert(
      fc.property(fc.array(fc.tuple(sodium, statement), { maxLength: 8 }), fc.boolean(), (all, additives) => {
        const foods = all.map(([mg, words], at) => ({
          ...slices(`Food ${at}`, mg),
          ...{
            label: foodWith('x', {
              panel: mg === undefined ? {} : { sodiumMg: mg },
              serving: { household: '4 slices', grams: 56 },
              ...(words === undefined ? {} : { statement: words }),
            }).label,
          },
        }));
        const input = handoutInput(foods, withTargets(additives ? [sodiumTarget, noPhosphate] : [sodiumTarget]));
        const fits = new Set(input.surveys[0]!.foods.filter(({ verdict }) => verdict.verdict === 'fits').map(({ food }) => food.name));
        for (const name of listed(page(input))) expect(fits).toContain(name);
      }),
    );
  });

  it('[HND-2] the portion of a meal and of a day, in whole slices, by hand', () => {
    // Lunch: 30 % of 2000 is 600 mg; 900 mg in a day would be two portions of 400 with bread of 20 each: 840 under 2000, so two.
    const foods = said(page(handoutInput([slices('Mild', 400)])), 'foods');
    expect(foods).toContain('For a meal: 4 slices (56 g), 400 mg sodium');
    expect(foods).toContain('Most in a day: 8 slices (112 g)');
    // A day of 700 mg: (700 - 2 x 20) / 400 = 1.65 portions, 6.6 slices, 6 whole ones; lunch holds 210 mg, so judged at 95 % of the day.
    const small = { ...sodiumTarget, range: { lo: 0, hi: 700 } };
    const meals = [{ name: 'lunch', percent: 95 }];
    const input = handoutInput([slices('Mild', 400)], withTargets([small], { meals }));
    const [survey] = input.surveys;
    expect(dayPortion(slices('Mild', 400), plate, survey!.dayYardstick!)).toEqual({ measure: 'slice', count: 6 });
  });

  it('[HND-2] law: a day’s portion is never above the closed form, fits the day when judged, and is no less than the meal’s', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1200 }),
        fc.integer({ min: 100, max: 4000 }),
        fc.integer({ min: 1, max: 9 }),
        (mg, day, count) => {
          const food = slices('Food', mg, { serving: { household: `${count} slices`, grams: 56 } });
          const target = { ...sodiumTarget, range: { lo: 0, hi: day } };
          const { dayYardstick } = handoutInput([], withTargets([target])).surveys[0]!;
          const portion = dayPortion(food, plate, dayYardstick!);
          const once = judgePlate({ food, plate, yardstick: dayYardstick! }).verdict === 'fits';
          if (portion === undefined) {
            expect(once).toBe(false);
            return;
          }
          const factor = portionFactor(portion, food) as number;
          const most = largestShareThatFits({ food, plate: platesInADay(plate), yardstick: dayYardstick! }) * 2;
          expect(factor).toBeLessThanOrEqual(Math.max(most, 1) + 1e-9);
          expect(factor).toBeGreaterThanOrEqual(1);
          const times = factor > 1 ? 2 : 1;
          const eaten = {
            ...plate,
            portion,
            companions: plate.companions.map(one => ({ ...one, portion: scalePortion(one.portion, times) })),
          };
          expect(judgePlate({ food, plate: eaten, yardstick: dayYardstick! }).verdict).toBe('fits');
        },
      ),
    );
  });
});

describe('numbers', () => {
  it('[HND-3] stand as signed, with unit, for the day and each meal; ends go inward to whole units', () => {
    const targets: SignedTarget[] = [
      sodiumTarget,
      { item: 'protein', unit: 'g', range: { lo: 73.6, hi: 88.9 }, limit: 'within' },
      { item: 'fluid', unit: 'mL', range: { lo: 0, hi: 1200 }, limit: 'at-most' },
      { item: 'energy', unit: 'kcal', range: { lo: 1746.33, hi: Number.POSITIVE_INFINITY }, limit: 'at-least' },
    ];
    const json = targets.map(one => (one.range?.hi === Number.POSITIVE_INFINITY ? { ...one, range: { lo: one.range.lo, hi: null } } : one));
    const draft = draftWith({ prescription: { targets: json, signed: { by: 'A. Writer', on: '2026-11-14' } } });
    const numbers = said(page(handoutInput([], draft)), 'numbers');
    expect(numbers).toContain('Sodium: less than');
    // 25, 30, 35 and 10 % of 2000.
    expect(numbers.slice(numbers.indexOf('Each day'))).toEqual(
      expect.arrayContaining(['2,000 mg', 'Breakfast', '500 mg', 'Lunch', '600 mg', 'Dinner', '700 mg', 'Snack', '200 mg']),
    );
    expect(numbers).toEqual(
      expect.arrayContaining([
        'Protein: 74 to 88 g a day.',
        'Fluid: up to 1,200 mL (5 cups, or 40 fluid ounces) a day.',
        'Calories: at least 1,747 kcal a day.',
      ]),
    );
  });

  it('[HND-3] without a sodium target says so and names no figure for it', () => {
    const built = page(handoutInput([slices('Mild', 100)], withTargets([noPhosphate])));
    for (const part of ['fridge', 'numbers', 'labels'] as const)
      expect(said(built, part)).toContain('You have no number for sodium yet. Ask us how much salt is right for you.');
    expect(said(built, 'labels').join(' ')).not.toMatch(/\d mg/);
  });

  it('[HND-4] potassium and phosphorus have a number in a signed prescription alone', () => {
    const potassium: SignedTarget = { item: 'potassium', unit: 'mg', range: { lo: 0, hi: 2500 }, limit: 'at-most' };
    const signed = said(page(handoutInput([], withTargets([sodiumTarget, potassium])))).join('\n');
    expect(signed).toContain('Potassium: up to\n');
    expect(signed).toMatch(
      /Find “Potassium”\. Your day is up to 2,500 mg\. .*lunch up to 750 mg.* Is it not on the label\? Then it is not known\./,
    );
    for (const setting of ['ckd-not-on-dialysis', 'hemodialysis', 'peritoneal-dialysis', 'transplant'])
      for (const language of ['en', 'es']) {
        const plain = said(page(handoutInput([slices('Mild', 100)], draftWith({ setting, language })))).join('\n');
        const mineral = /(potassium|phosphorus|potasio|fósforo)[^\n]{0,40}\d/i;
        expect(plain).not.toMatch(mineral);
      }
  });

  it('[HND-4] a topic whose yardstick bounds potassium or phosphorus is refused', () => {
    for (const yardstick of builtInYardsticks) {
      const minerals = yardstick.tests.filter(({ measure }) => 'nutrient' in measure && /^(potassium|phosphorus)/.test(measure.nutrient));
      if (minerals.length === 0) continue;
      const draft = topicWith(yardstick.id, { switchedOn: minerals.map(({ id }) => id) });
      expect(() => buildHandout(handoutInput([], draft, yardstick))).toThrow(/bounds potassium or phosphorus/);
    }
    expect(builtInYardsticks.some(({ tests }) => tests.some(({ id }) => /potassium|phosphorus/i.test(id)))).toBe(true);
  });

  it('[HND-3] the rule of a topic, with what the bread leaves room for: 160 kcal less 20 mg', () => {
    const built = page(handoutInput([slices('Mild', 100)], topicWith(lowSodium.id), lowSodium));
    expect(said(built, 'numbers')).toContain(
      'With Bread (1 serving), the food may have as many mg of sodium as calories, and 140 mg more.',
    );
    expect(said(built, 'foods')).toContain('Portion: 4 slices (56 g), 100 mg sodium');
  });
});

describe('labels', () => {
  it('[HND-5] the words to look for are those that the prescription does not want named', () => {
    const steps = (targets: readonly SignedTarget[], more = {}) =>
      said(page(handoutInput([], withTargets(targets, more))), 'labels').join(' ');
    expect(steps([sodiumTarget])).not.toMatch(/phos|potassium/);
    expect(steps([sodiumTarget, noPhosphate])).toMatch(/“phos”/);
    expect(steps([sodiumTarget, noPhosphate])).not.toMatch(/potassium/);
    const noPotassium: SignedTarget = { ...noPhosphate, item: 'potassiumAdditives' };
    expect(steps([sodiumTarget, noPotassium])).toMatch(/“potassium chloride”/);
    expect(steps([sodiumTarget], { avoidedFoods: ['garlic', 'onion'] })).toContain('Look for what you do not eat: garlic, onion.');
    expect(steps([sodiumTarget])).toContain('lunch less than 600 mg');
  });

  it('[HND-5] “phos” and “potassium” find every additive that counts, but for those that hide it', () => {
    const hidden = (isOf: (row: (typeof additiveTable)[number]) => boolean, word: string) =>
      additiveTable.filter(row => isOf(row) && !row.name.toLowerCase().includes(word)).map(({ name }) => name);
    expect(hidden(({ phosphate }) => phosphate === 'inorganic', 'phos')).toEqual([
      'hydroxyapatite',
      'self-rising flour',
      'baking powder, low-sodium',
    ]);
    expect(hidden(({ potassium }) => potassium === 'matters', 'potassium')).toEqual([
      'baking powder, low-sodium',
      'salt substitute / lite salt blend',
    ]);
  });

  it('[HND-5] says “none named on the label”, and that this proves nothing', () => {
    const foods = said(page(handoutInput([slices('Mild', 100)], withTargets([sodiumTarget, noPhosphate]))), 'foods').join(' ');
    expect(foods).toContain('Phosphate additives: none named on the label. That is no proof that there are none.');
  });
});

describe('swaps and shopping', () => {
  it('[HND-6] the fitting food nearest in kind, with what is saved by both labels; no kin, no swap', () => {
    const ham = (name: string, mg: number) => slices(name, mg, { statement: 'Ham, water.' });
    const foods = [
      ham('Honey ham', 900),
      ham('Ham, low sodium', 300),
      slices('Turkey breast', 100),
      slices('Odd loaf', 950, { statement: 'Rye.' }),
    ];
    const swaps = said(page(handoutInput(foods)), 'swaps');
    expect(swaps).toContain('In place of Honey ham, pick Ham, low sodium. You save 600 mg of sodium.');
    expect(swaps.join()).not.toContain('In place of Odd loaf');
    // 600 mg less 20 of the bread, of 900 for 4 slices: 2.57, so 2 whole slices, and strictly under.
    expect(swaps).toContain('Honey ham: have 2 slices, not 4 slices.');
  });

  it('[HND-6] a food with a named additive stays out: no smaller portion of it is offered', () => {
    const named = slices('Phosphate ham', 900, { statement: 'Ham, sodium phosphates.' });
    const swaps = said(page(handoutInput([named, slices('Mild', 100)], withTargets([sodiumTarget, noPhosphate]))), 'swaps').join('\n');
    expect(swaps).not.toMatch(/Phosphate ham: have/);
  });

  it('[HND-6] where nothing is over there is nothing to swap', () => {
    expect(said(page(handoutInput([slices('Mild', 100), slices('Silent', undefined)])), 'swaps')).toEqual([]);
    const alone = said(page(handoutInput([slices('Loaf', 4000)], draftWith())), 'swaps');
    expect(alone).toContain('We found no swap among the foods we checked. Ask us for ideas.');
  });

  it('[HND-7] by aisle in the order of the walk, foods without an aisle last', () => {
    const draft = draftWith({
      aisleOrder: ['Dairy', 'Deli'],
      categories: [{ category: 'slices', plateId: 'p', meal: 'lunch', foodAisles: { a: 'Deli', b: 'Dairy', constructor: 'Deli' } }],
    });
    const foods = ['a', 'b', 'c'].map(id => ({ ...slices(id, 100, { maker: 'Maker' }), id }));
    const built = buildHandout(handoutInput(foods, draft));
    const list = said(built.value, 'shopping').slice(2);
    expect(list).toEqual(['Dairy', 'b, Maker', 'Deli', 'a, Maker', 'Aisle not noted', 'c, Maker']);
    expect(built.issues).toMatchObject([{ code: 'handout-food-not-found', found: 'constructor' }]);
  });
});

describe('honest where there is little', () => {
  it('[HND-13] nothing fits, nothing was read, nothing is bounded', () => {
    expect(said(page(handoutInput([slices('Salty', 900)])), 'foods')).toContain(
      'We found no food here that fits. Ask us what to eat in its place.',
    );
    const empty = buildHandout(handoutInput([]));
    expect(said(empty.value, 'foods')).toContain('We have not checked any food of this kind yet. Ask us before you buy.');
    expect(empty.issues).toMatchObject([{ code: 'handout-category-empty', found: 'slices' }]);
    const unbound = page(handoutInput([slices('Mild', 100)], withTargets([])));
    expect(said(unbound, 'foods').join()).toContain('Your plan has no number that we could check these foods by.');
    expect(listed(unbound)).toEqual([]);
    expect(unbound.sections.some(({ id }) => id === 'ask')).toBe(false);
  });

  it('[HND-9] cautions, deferral and when to call stand in every handout, whatever parts were picked', () => {
    for (const language of ['en', 'es'])
      for (const parts of [[], ['foods'], ['fridge']]) {
        const all = said(page(handoutInput([slices('Mild', 100)], draftWith({ parts, language })))).join('\n');
        expect(all).toMatch(/911/);
        expect(all).toMatch(/take the place of your kidney team|no reemplaza a su equipo/);
      }
  });

  it('[HND-18] the reader’s name stands there only where it was typed', () => {
    const about = (more = {}) => page(handoutInput([], draftWith(more))).about.map(lineText);
    expect(about()[0]).toBe('For adults on hemodialysis');
    expect(about({ reader: 'Ada' })[0]).toBe('For Ada');
  });
});

describe('what must not be turned around', () => {
  const atLeast: SignedTarget[] = [
    { item: 'sodium', unit: 'mg', range: { lo: 2000, hi: Number.POSITIVE_INFINITY }, limit: 'at-least' },
    { item: 'potassium', unit: 'mg', range: { lo: 3000, hi: Number.POSITIVE_INFINITY }, limit: 'at-least' },
  ];

  it('[HND-3] a least amount stands as such, on the fridge too, and nothing says to keep below it', () => {
    const targets = atLeast.map(({ range, ...rest }) => ({ ...rest, range: { lo: range!.lo, hi: null } }));
    const draft = draftWith({ prescription: { targets, signed: { by: 'A. Writer', on: '2026-11-14' } } });
    const built = page(handoutInput([slices('Mild', 100)], draft));
    for (const id of ['numbers', 'fridge'] as const) {
      expect(said(built, id)).toContain('Sodium: at least 2,000 mg a day.');
      expect(said(built, id)).toContain('Potassium: at least 3,000 mg a day.');
    }
    expect(said(built).join(' ')).not.toMatch(/keep to the number above|5% or less is low/);
  });

  it('[HND-3] a single figure for fluid or a mineral is the most, never "about"', () => {
    const one = (item: SignedTarget['item'], unit: SignedTarget['unit'], value: number): SignedTarget => ({
      item,
      unit,
      range: { lo: value, hi: value },
      limit: 'within',
    });
    const built = page(handoutInput([], withTargets([one('fluid', 'mL', 1000), one('protein', 'g', 55.9)])));
    expect(said(built, 'numbers')).toContain('Fluid: up to 1,000 mL (4 cups, or 33 fluid ounces) a day.');
    expect(said(built, 'numbers')).toContain('Protein: about 56 g a day.');
  });

  it('[HND-4] a topic that bounds potassium is refused whatever parts the handout has', () => {
    const yardstick = {
      ...lowSodium,
      tests: [
        {
          id: 'potassium',
          measure: { kind: 'nutrient' as const, nutrient: 'potassiumMg' as const },
          basis: 'on-plate' as const,
          atMost: 200,
          source: { kind: 'own-table' as const, text: 'own' },
        },
      ],
    };
    const draft = { ...topicWith(lowSodium.id), parts: ['foods', 'swaps', 'shopping'] as const };
    expect(() => buildHandout(handoutInput([slices('Mild', 100)], draft, yardstick))).toThrow(/potassium or phosphorus/);
  });

  it('[HND-6] a food with added potassium says so, and is no best pick and no swap', () => {
    const salty = slices('Salty turkey', 900);
    const swapped = slices('Lower sodium turkey', 100, { statement: 'Turkey, water, potassium chloride.' });
    const built = page(handoutInput([salty, swapped]));
    expect(said(built, 'foods')).toContain('Potassium is added to it: ask us first');
    expect(said(built, 'fridge', 'swaps').join(' ')).not.toContain('Lower sodium turkey');
  });

  it('[HND-5] a topic on phosphate additives alone tells of no sodium number', () => {
    const noPhosphates = builtInYardsticks.find(({ id }) => id === 'no-phosphate-additives')!;
    const built = page(handoutInput([slices('Mild', 100)], topicWith(noPhosphates.id), noPhosphates));
    expect(said(built, 'fridge', 'labels').join(' ')).not.toMatch(/keep to the number above|Keep to the rule at the top/);
  });

  it('[HND-13] where the plan bounds no food, every part says the same', () => {
    const energy: SignedTarget = { item: 'energy', unit: 'kcal', range: { lo: 1800, hi: 2100 }, limit: 'within' };
    const built = page(handoutInput([slices('Mild', 100)], withTargets([energy])));
    const words = 'Your plan has no number that we could check these foods by. Ask us about them.';
    for (const id of ['fridge', 'foods', 'shopping'] as const) expect([id, said(built, id).includes(words)]).toEqual([id, true]);
    expect(said(built).join(' ')).not.toContain('We found no food here that fits');
  });
});
