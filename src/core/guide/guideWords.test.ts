/** The words and the order of a guide, piece by piece and at their bounds. */
import { describe, expect, it } from 'vitest';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { judgePlate } from '#core/yardstick/judgePlate.ts';
import type { Test, Yardstick } from '#core/yardstick/yardstick.ts';
import { additiveWords } from './additiveWords.ts';
import { marginBarOf, marginWords, smallestMargin } from './againstBound.ts';
import { arranged } from './arrange.ts';
import { buildGuide } from './buildGuide.ts';
import { dayAfter, dayText } from './day.ts';
import { portionFigures, portionWords, totalFigure } from './figures.ts';
import { draftWith, guideInput, slices } from './guideFixture.ts';
import { guideRule, lineWords } from './guideRule.ts';
import { feedXml, sitemapXml } from './html/feedXml.ts';
import { wrapText } from './html/wrapText.ts';
import { countedReasons, leftOutReason } from './leftOut.ts';

const source = { kind: 'clinic', text: 'own clinic' } as const;
const plate: Plate = { id: 'p', title: 'on its own', portion: { servings: 1 }, companions: [] };
const onBread: Plate = {
  ...plate,
  companions: [{ food: foodWith('Bread', { panel: { energyKcal: 160, sodiumMg: 20 } }), portion: { servings: 1 } }],
};
const sodiumToEnergy = { measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' } } as const;

function yardstickOf(...tests: Partial<Test>[]): Yardstick {
  const whole = tests.map(
    (test, at): Test => ({ id: `t${at}`, measure: { kind: 'nutrient', nutrient: 'sodiumMg' }, basis: 'on-plate', source, ...test }),
  );
  return { id: 'own', title: 'own', purpose: '', tests: whole, classScales: [], settings: 'any', cautions: [] };
}

function judged(food: PlateFood, tests: Partial<Test>[], on = plate) {
  const yardstick = yardstickOf(...tests);
  return { yardstick, tests: yardstick.tests, surveyed: { food, verdict: judgePlate({ food, plate: on, yardstick }) } };
}

describe('the distance to a bound', () => {
  const words = (food: PlateFood, ...tests: Partial<Test>[]) => {
    const { tests: all, surveyed } = judged(food, tests);
    return [marginWords(all, surveyed.verdict), smallestMargin(all, surveyed.verdict)];
  };

  it('[GDE-2] one bound alone needs no name, several do; the smallest margin counts', () => {
    const ham = slices('Ham', 80, 150);
    expect(words(ham, { atMost: 200 })).toEqual([['50 mg to spare'], 50]);
    expect(words(ham, { atMost: 127.5 })).toEqual([['22.5 mg over'], -22.5]);
    expect(words(ham, { atMost: 200 }, { atMost: 140 })).toEqual([['at most 200 mg: 50 mg to spare', 'at most 140 mg: 10 mg over'], -10]);
    expect(words(ham, { measure: { kind: 'nutrient', nutrient: 'potassiumMg' }, atMost: 200 })).toEqual([
      ['potassium is unknown (not on the label)'],
      undefined,
    ]);
    expect(words(ham, { measure: { kind: 'additive', class: 'phosphate' }, absent: true })).toEqual([[], undefined]);
  });

  // 200 mg on a plate of 60 + 160 kcal: 220 mg are allowed, 200 / 220.
  it('[GDE-2] a bar is a share of what the plate allows', () => {
    const bar = (food: PlateFood, test: Partial<Test>, on = onBread) => {
      const { tests, surveyed } = judged(food, [test], on);
      return marginBarOf(tests, surveyed, on);
    };
    const ham = slices('Ham', 60, 180);
    const toEnergy = bar(ham, { ...sodiumToEnergy, atMost: 0 });
    expect(toEnergy).toMatchObject({ value: expect.closeTo(200 / 220, 9), estimated: false });
    expect(bar(ham, { ...sodiumToEnergy, atMost: 30 })?.value).toBeCloseTo(200 / 250, 9);
    // 180 mg are 175 to 185 mg, 20 of the bread 17.5 to 22.5.
    expect(bar(ham, { atMost: 400 })).toEqual({ value: 0.5, lo: 192.5 / 400, hi: 207.5 / 400, estimated: false });
    expect(bar(ham, { below: 400 })?.value).toBe(0.5);
    expect(bar(ham, { atLeast: 400 })).toBeUndefined();
    expect(bar(ham, { atMost: 0 })).toBeUndefined();
    expect(bar(ham, { ...sodiumToEnergy, atMost: 0, basis: 'as-eaten' })).toBeUndefined();
    expect(bar(foodWith('Ham', {}), { atMost: 400 })).toBeUndefined();
    const estimated = withAmounts(slices('Ham', 60, 180), {
      potassiumMg: { kind: 'known', range: { lo: 100, hi: 200 }, source: 'estimated' },
    });
    const potassium = { measure: { kind: 'nutrient', nutrient: 'potassiumMg' }, atMost: 400, useEstimates: true } as const;
    expect(bar(estimated, potassium, plate)).toEqual({ value: 0.5, lo: 0.25, hi: 0.5, estimated: true });
  });
});

describe('order', () => {
  const variety = (foodId: string, name: string, more: { maker?: string; aisle?: string; verdict?: 'fits' | 'nearly' } = {}) => {
    const page = buildGuide(guideInput([slices(name, 80, 100)])).value;
    const { maker, aisle, verdict = 'fits' } = more;
    return {
      ...page.sections[0]!.entries[0]!.varieties[0]!,
      foodId,
      name,
      verdict,
      ...(maker === undefined ? {} : { maker }),
      places: aisle === undefined ? [] : [{ shop: 'Shop', aisle, paysAuthor: false }],
    };
  };
  const order = (
    arrangement: 'shelf' | 'maker' | 'margin',
    foods: readonly [ReturnType<typeof variety>, number?][],
    aisles: string[] = [],
  ) =>
    arranged(
      foods.map(([one, margin]) => ({ variety: one, margin })),
      { arrangement, aisles },
    ).map(({ title, entries }) => [
      title,
      ...entries.map(entry => [entry.title, entry.maker ?? '', ...entry.varieties.map(({ foodId }) => foodId)].join(' ')),
    ]);

  it('[GDE-3] by name with numbers as numbers, then by maker, then by id; aisles by the author, by name, unknown last', () => {
    expect(
      order('shelf', [
        [variety('c', 'Ham 10')],
        [variety('b', 'Ham 9', { maker: 'Zed' })],
        [variety('a', 'Ham 10')],
        [variety('d', 'Ham 9', { maker: 'Alder' })],
      ]),
    ).toEqual([['All foods', 'Ham 9 Alder d', 'Ham 9 Zed b', 'Ham 10  a', 'Ham 10  c']]);
    const at = (id: string, aisle?: string) => [variety(id, id, aisle === undefined ? {} : { aisle })] as [ReturnType<typeof variety>];
    expect(order('shelf', [at('a'), at('b', 'Zoo'), at('c', 'Deli'), at('d', 'Bakery')], ['Deli']).map(([title]) => title)).toEqual([
      'Deli',
      'Bakery',
      'Zoo',
      'Aisle not noted',
    ]);
    expect(order('shelf', [])).toEqual([]);
  });

  it('[GDE-3] by maker, foods without one last; by what is to spare, the unknown last, then by name', () => {
    expect(
      order('maker', [[variety('a', 'Ant')], [variety('b', 'Bee', { maker: 'Zed' })], [variety('c', 'Cow', { maker: 'Alder' })]]),
    ).toEqual([['By maker', 'Cow Alder c', 'Bee Zed b', 'Ant  a']]);
    expect(
      order('margin', [
        [variety('a', 'Ant')],
        [variety('b', 'Bee'), 5],
        [variety('c', 'Cow'), 20],
        [variety('d', 'Ape'), 5],
        [variety('e', 'Elk')],
      ]),
    ).toEqual([['Most to spare first', 'Cow  c', 'Ape  d', 'Bee  b', 'Ant  a', 'Elk  e']]);
  });

  it('[GDE-4] one maker’s varieties are one entry by name, with the best margin among them; another verdict is another entry', () => {
    const zed = (id: string, name: string, more = {}) => variety(id, name, { maker: 'Zed', ...more });
    expect(
      order('margin', [
        [zed('b', 'Bee'), 1],
        [variety('c', 'Cow'), 10],
        [zed('a', 'Ant'), 20],
        [zed('n', 'Near', { verdict: 'nearly' }), 5],
      ]),
    ).toEqual([['Most to spare first', 'Zed  a b', 'Cow  c', 'Near Zed n']]);
    expect(order('shelf', [[zed('b', 'Ham')], [zed('a', 'Ham')]])).toEqual([['All foods', 'Zed  a b']]);
  });
});

describe('why a food is left out', () => {
  const reason = (food: PlateFood, ...tests: Partial<Test>[]) => {
    const { tests: all, surveyed } = judged(food, tests);
    return leftOutReason(all, surveyed.verdict);
  };
  const phosphate = { measure: { kind: 'additive', class: 'phosphate' }, absent: true } as const;

  it('[GDE-1] in words that many foods share', () => {
    expect(reason(slices('Ham', 80, 900), { atMost: 200 })).toBe('does not keep the rule: sodium at most 200 mg on the plate');
    expect(reason(slices('Ham', 80, 900), { ...sodiumToEnergy, atMost: 0 })).toBe(
      'does not keep the rule: sodium in mg no more than energy in kcal on the plate',
    );
    expect(reason(slices('Ham', 80, Number.NaN), { atMost: 200 })).toBe(
      'can’t be told, a figure is not known: sodium at most 200 mg on the plate',
    );
    expect(reason(slices('Ham', 80, 1, { statement: 'HAM, SODIUM PHOSPHATES.' }), phosphate)).toBe('the label names a phosphate additive');
    expect(reason(slices('Ham', 80, 1, { statement: 'FLOUR, BAKING POWDER.' }), phosphate)).toBe(
      'can’t be told whether it holds a phosphate additive',
    );
    expect(
      reason(slices('Ham', 80, 1, { statement: 'ALMONDS.' }), { measure: { kind: 'ingredient', kin: 'tree-nut' }, absent: true }),
    ).toBe('the label names tree nut');
    expect(reason(slices('Ham', 80, 1))).toBe('Nothing is judged until a bound is switched on.');
  });

  it('[GDE-1] the most frequent first, then by words', () => {
    expect(countedReasons(['b', 'a', 'c', 'c'])).toEqual([
      { reason: 'c', count: 2 },
      { reason: 'a', count: 1 },
      { reason: 'b', count: 1 },
    ]);
  });
});

describe('days, figures and lines', () => {
  it('[GDE-8] days in words and days on', () => {
    expect(['2026-01-01', '2026-10-14', '2026-12-31', '2026-02-30', 'soon'].map(dayText)).toEqual([
      'January 1, 2026',
      'October 14, 2026',
      'December 31, 2026',
      '2026-02-30',
      'soon',
    ]);
    expect([dayAfter('2026-10-14', 180), dayAfter('2026-12-31', 1), dayAfter('2028-02-28', 1)]).toEqual([
      '2027-04-12',
      '2027-01-01',
      '2028-02-29',
    ]);
  });

  it('[GDE-5] figures of a portion and of a plate', () => {
    const food = slices('Ham', 80, 100, { panel: { potassiumMg: '2%', proteinG: '10%' } });
    expect(portionFigures(food, { servings: 0.5 }).map(({ text, cell }) => [text, cell])).toEqual([
      ['40 kcal', '40'],
      ['50 mg sodium', '50'],
      ['23 – 71 mg potassium', '23–71'],
      ['phosphorus: not on the label', ''],
      ['at least 2.2 g protein', '2.2 or more'],
    ]);
    const missing = [
      { of: 'Bread', reason: 'no-label' },
      { of: 'Leaf', reason: 'not-printed' },
    ] as const;
    const zero = { lo: 0, hi: 0 };
    expect(totalFigure('sodiumMg', { judged: zero, range: zero, estimated: false, missing })).toEqual({
      nutrient: 'sodiumMg',
      text: 'sodium unknown (Bread: no label has been read, Leaf: not on the label)',
      cell: '',
    });
    expect(totalFigure('sodiumMg', { judged: { lo: 5, hi: 9 }, range: zero, estimated: true, missing: [] }).text).toBe(
      'estimated 5 – 9 mg sodium',
    );
    expect(portionWords(food, { servings: 0.5 })).toBe('2 slices (28 g)');
    expect(portionWords(food, { grams: 28 })).toBe('28 g');
    expect(portionWords(foodWith('Tea', { serving: { milliliters: 240 } }), { servings: 1 })).toBe('1 serving (240 mL)');
    expect(portionWords(foodWith('Tea', { serving: { milliliters: 240 } }), { milliliters: 24 })).toBe('24 mL');
    expect(portionWords(foodWith('Bare', {}), { servings: 1 })).toBe('1 serving');
    const eu = foodWith('EU ham', { market: 'eu', basis: 'per-100-g', serving: { household: '4 slices', grams: 50 } });
    expect(portionWords(eu, { servings: 1 })).toBe('4 slices (50 g)');
  });

  it('[GDE-5] additives by class, each once, with how sure the label is', () => {
    expect(additiveWords(slices('x', 1, 1, { statement: 'HAM, SALT, SODIUM PHOSPATE. MAY CONTAIN POTASSIUM CHLORIDE.' }).label)).toEqual([
      'Phosphate additives: sodium phosphates (misspelled on the label).',
      'Potassium additives: potassium chloride (may be in it).',
      expect.stringMatching(/^Sodium additives: salt, sodium phosphates \(misspelled on the label\)\.$/),
    ]);
    expect(additiveWords(slices('x', 1, 1, { statement: 'HAM, SALT, SALT.' }).label)).toEqual([
      'Sodium additives: salt.',
      'Phosphate and potassium additives: none named on the label.',
    ]);
    expect(additiveWords(slices('x', 1, 1, { statement: 'FLOUR, BAKING POWDER.' }).label)[0]).toMatch(
      /^Phosphate additives: .*baking powder.* \(possible\)\.$/i,
    );
    expect(
      additiveWords(slices('x', 1, 1, { statement: 'HAM, SALT, SODIUM PHOSPHATES, POTASSIUM CHLORIDE.' }).label).join(' '),
    ).not.toContain('none named');
  });

  it.each([
    [0, 140, 'at most 140 mg of sodium'],
    [0, 0, 'at most 0 mg of sodium'],
    [0, -20, 'no sodium at all'],
    [1, 140, 'as many mg of sodium as it has kcal, and 140 mg more'],
    [1, -20.25, 'as many mg of sodium as it has kcal, less 20.3 mg'],
    [1, 0, 'as many mg of sodium as it has kcal, no more'],
    [2, 10, '2 mg of sodium for each of its kcal, and 10 mg more'],
    [0.333, 0, '0.33 mg of sodium for each of its kcal, no more'],
  ])('[GDE-23] slope %d and offset %d: %s', (slope, offset, words) => {
    expect(lineWords({ slope, offset, slack: 0 })).toBe(words);
  });

  it('[GDE-2] a rule for a food on its own, for a setting, and without a line', () => {
    const { yardstick, surveyed } = judged(slices('Ham', 80, 50), [{ ...sodiumToEnergy, atMost: 0 }]);
    const rule = guideRule({ plate, yardstick, setting: 'hemodialysis', foods: [] }, [], surveyed);
    expect(rule).toMatchObject({
      plate: '1 serving; plate: on its own',
      allowance: 'A portion may hold as many mg of sodium as it has kcal, no more.',
    });
    expect(rule.setting).toBeDefined();
    expect(rule.example?.rows).toHaveLength(1);
    const silent = guideRule({ plate, yardstick: yardstickOf({ atLeast: 5 }), foods: [] }, []);
    for (const key of ['line', 'allowance', 'example', 'setting']) expect(silent).not.toHaveProperty(key);
  });

  it('[GDE-23] text in lines', () => {
    expect(wrapText('one two three', 7, 9)).toEqual(['one two', 'three']);
    expect(wrapText('one two three', 6, 9)).toEqual(['one', 'two', 'three']);
    expect(wrapText('abcdefgh ij', 3, 9)).toEqual(['abc', 'def', 'gh', 'ij']);
    expect(wrapText('one two three', 5, 2)).toEqual(['one', 'two…']);
    expect(wrapText('abcde fghij', 5, 1)).toEqual(['abcd…']);
    expect(wrapText('one two', 3, 2)).toEqual(['one', 'two']);
    expect(wrapText('', 5, 2)).toEqual([]);
  });
});

describe('what changed', () => {
  const page = (id: string, publishedOn: string, corrections: readonly { on: string; text: string }[] = []) => ({
    ...buildGuide(guideInput([], draftWith({ publishedOn, corrections }))).value,
    id,
    title: `Guide ${id}`,
  });
  const pages = [
    page('a', '2026-11-01', [
      { on: '2026-11-05', text: 'First.' },
      { on: '2026-11-20', text: 'Second.' },
    ]),
    page('b', '2026-11-20'),
  ];
  const all = (text: string, tag: string) => [...text.matchAll(new RegExp(`<${tag}>(.*?)</${tag}>`, 'g'))].map(([, inside]) => inside);

  it('[GDE-17] the feed has the newest first, each with a name that stays', () => {
    const feed = feedXml(pages, 'https://guides.example:8080/kidney/');
    expect(all(feed, 'updated')).toEqual(['20', '20', '20', '05', '01'].map(day => `2026-11-${day}T00:00:00Z`));
    expect(all(feed, 'id')).toEqual([
      'tag:guides.example,2026-11-01:guides',
      'tag:guides.example,2026-11-01:guides/a/correction-2',
      'tag:guides.example,2026-11-20:guides/b',
      'tag:guides.example,2026-11-01:guides/a/correction-1',
      'tag:guides.example,2026-11-01:guides/a',
    ]);
    expect(all(feed, 'title').slice(1)).toEqual(['Corrected: Guide a', 'Guide b', 'Corrected: Guide a', 'Guide a']);
    expect(feed).toContain('href="https://guides.example:8080/kidney/guides/a.html"');
    expect(all(feedXml([]), 'updated')).toEqual(['1970-01-01T00:00:00Z']);
    expect(feedXml(pages)).toContain('<id>tag:guides.invalid,2026-11-01:guides</id>');
  });

  it('[GDE-17] the sitemap has each page with the day of its last change', () => {
    const map = sitemapXml(pages, 'https://guides.example/');
    expect(all(map, 'loc')).toEqual(['index.html', 'guides/a.html', 'guides/b.html'].map(path => `https://guides.example/${path}`));
    expect(all(map, 'lastmod')).toEqual(['2026-11-20', '2026-11-20', '2026-11-20']);
    expect(all(sitemapXml([], 'https://guides.example/'), 'loc')).toEqual([]);
    expect(all(sitemapXml([page('c', '2026-11-03'), page('d', '2026-11-02')], 'x'), 'lastmod')).toEqual([
      '2026-11-03',
      '2026-11-03',
      '2026-11-02',
    ]);
  });
});
