/** What each part of a handout says and leaves out, by its bounds: picks, weight, swaps, rows of foods, rules, steps, grades. */
import { describe, expect, it } from 'vitest';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import type { Test, Yardstick } from '#core/yardstick/yardstick.ts';
import { buildHandout } from './buildHandout.ts';
import { foodBlocks, shoppingBlocks } from './foodSections.ts';
import { callBlocks, fridgeSection } from './fridge.ts';
import { gradeOf } from './gradeOf.ts';
import type { HandoutDraft, HandoutFood, HandoutInput, HandoutSurvey } from './handout.ts';
import { draftWith, handoutInput, noPhosphate, plate, slices, sodiumTarget, topicWith } from './handoutFixture.ts';
import type { Block, HandoutPage, SectionId } from './handoutPage.ts';
import { labelSteps, lookFor } from './labelSteps.ts';
import { authorLine, foodRun, type joined, line, lineText, programLine } from './line.ts';
import { dayPortion } from './portions.ts';
import { swapBlocks } from './swaps.ts';
import { looksAtSodium, topicRules } from './topicRule.ts';
import { wordsIn } from './words/inLanguage.ts';

const words = wordsIn.en;
const source = { kind: 'clinic', text: 'own clinic' } as const;
const signed = (targets: readonly unknown[], more = {}) =>
  draftWith({ prescription: { targets, signed: { by: 'A. Writer', on: '2026-11-14' } }, ...more });
const most = (item: string, hi: number) => ({ item, unit: 'mg', range: { lo: 0, hi }, limit: 'at-most' });

const section = ({ value }: { readonly value: HandoutPage }, id: SectionId) => value.sections.find(one => one.id === id);
const textOf = (blocks: readonly Block[] = []): readonly string[] =>
  blocks.flatMap(block => {
    if (block.kind === 'list') return block.lines.map(lineText);
    if (block.kind === 'foods')
      return block.rows.flatMap(({ name, maker = '', keepTo, told }) => [[name, maker, ...keepTo, ...told].join(' | ')]);
    return block.kind === 'table' ? block.head : [lineText(block.line)];
  });
const rowsOf = (blocks: readonly Block[] = []) => blocks.flatMap(block => (block.kind === 'foods' ? block.rows : []));
const surveyOf = (...args: Parameters<typeof handoutInput>): HandoutSurvey => handoutInput(...args).surveys[0]!;

function yardstickOf(...tests: Partial<Test>[]): Yardstick {
  const whole = tests.map(
    (test, at): Test => ({ id: `t${at}`, measure: { kind: 'nutrient', nutrient: 'sodiumMg' }, basis: 'on-plate', source, ...test }),
  );
  return { id: 'own', title: 'own', purpose: '', tests: whole, classScales: [], settings: 'any', cautions: [] };
}

describe('best picks of the fridge page', () => {
  const picks = (input: HandoutInput) => rowsOf(fridgeSection(input.draft, input.surveys, words).blocks).map(({ name }) => name);

  it('[HND-8] at most four, the most to spare first, then by id', () => {
    const foods = [slices('E', 500), slices('D', 100), slices('C', 300), slices('B', 100), slices('A', 200)];
    expect(picks(handoutInput(foods))).toEqual(['B', 'D', 'A', 'C']);
  });

  it('[HND-8] two beside a table of two columns', () => {
    const draft = signed([sodiumTarget, most('potassium', 4000)]);
    const foods = ['A', 'B', 'C'].map(name => slices(name, 100, { panel: { energyKcal: 80, sodiumMg: 100, potassiumMg: 10 } }));
    const bread = { ...plate, companions: [] };
    expect(picks(handoutInput(foods, draft, undefined, bread))).toEqual(['A', 'B']);
    expect(picks(handoutInput(foods, signed([sodiumTarget]), undefined, bread))).toEqual(['A', 'B', 'C']);
  });

  it('[HND-8] category by category in turn', () => {
    const draft = draftWith({ categories: ['slices', 'soups'].map(category => ({ category, plateId: 'p', meal: 'lunch' })) });
    const [first, second] = handoutInput([slices('A', 100), slices('B', 200)], draft).surveys as [HandoutSurvey, HandoutSurvey];
    const other = surveyOf([slices('Y', 300), slices('Z', 400)], draft);
    expect(second.category.category).toBe('soups');
    expect(picks({ draft, surveys: [first, { ...other, category: second.category }] })).toEqual(['A', 'Y', 'B', 'Z']);
  });

  it('[HND-8] no close call, no estimate, no long name; seventy letters with the maker still stand', () => {
    // 570 mg and 20 of the bread are 590; rounding of both makes it up to 597.5, under 600; 575 mg, no US print, are up to 580, and 602.5 with the bread.
    expect(picks(handoutInput([slices('Near', 570), slices('Close', 575)]))).toEqual(['Near']);
    const long = (letters: number, maker: string) => slices('x'.repeat(letters), 100, { maker });
    expect(picks(handoutInput([long(60, 'y'.repeat(10))]))).toHaveLength(1);
    expect(picks(handoutInput([long(60, 'y'.repeat(11))]))).toHaveLength(0);
    expect(picks(handoutInput([long(71, '')]))).toHaveLength(0);
    const [row] = rowsOf(
      fridgeSection(draftWith(), [surveyOf([slices('Ham', 100, { maker: 'Maker' }), slices('Turkey', 200)])], words).blocks,
    );
    expect(row?.keepTo).toEqual(['4 slices (56 g), Maker']);
  });

  it('[HND-24] foods whose label tells all come first; what is told of one takes a line of its own', () => {
    const survey = surveyOf([slices('A', 100), slices('B', 200), slices('C', 300), slices('D', 400)]);
    const untold = (names: readonly string[]): HandoutSurvey => ({
      ...survey,
      foods: survey.foods.map((one): HandoutFood => (names.includes(one.food.name) ? { ...one, notTold: ['phosphorus'] } : one)),
    });
    expect(picks({ draft: draftWith(), surveys: [untold(['A'])] })).toEqual(['B', 'C', 'D']);
    expect(picks({ draft: draftWith(), surveys: [untold(['A', 'B', 'C'])] })).toEqual(['D', 'A', 'B']);
  });

  it('[HND-5] what to look for, and what is avoided while it is short', () => {
    const noPotassium = { ...noPhosphate, item: 'potassiumAdditives' };
    const look = (targets: readonly unknown[], avoidedFoods: readonly string[] = []) => {
      const draft = signed(targets, { avoidedFoods });
      return textOf(fridgeSection(draft, [], words).blocks).filter(text => /^“|^Not for you|^On the label/.test(text));
    };
    expect(look([sodiumTarget, noPhosphate, noPotassium], ['garlic', 'onion'])).toEqual([
      'On the label',
      lineText(words.fridgeLook.sodium),
      lineText(words.fridgeLook.phosphate),
      lineText(words.fridgeLook.potassium),
      'Not for you: garlic, onion.',
    ]);
    expect(look([sodiumTarget])).toEqual(['On the label', lineText(words.fridgeLook.sodium)]);
    expect(look([])).toEqual([]);
    expect(look([], ['k'.repeat(70)])).toHaveLength(2);
    expect(look([], ['k'.repeat(71)])).toEqual([]);
  });
});

describe('when to call', () => {
  const lines = (more: Record<string, unknown>, weightGain?: HandoutDraft['weightGain']) =>
    textOf(callBlocks({ ...draftWith(more), ...(weightGain === undefined ? {} : { weightGain }) }, words));

  // 2.26 kg are 4.98 lb (0.45359237 kg each): down to 2.2 kg, 4.9 lb.
  it('[HND-9] the client’s own gain of weight, rounded down', () => {
    expect(lines({}, { kg: 2.26, within: '2-days' }).at(-1)).toBe('You gain 2.2 kg (4.9 lb) or more in 2 days.');
    expect(lines({}, { kg: 3, within: 'between-treatments' }).at(-1)).toBe(
      'You gain more than 3 kg (6.6 lb) from one treatment to the next.',
    );
  });

  it('[HND-9] without one: a general word for hemodialysis, 2 kg in 2 days on a page for peritoneal dialysis', () => {
    const general = lineText(words.weightGainNotKnown);
    expect(lines({})).toContain(general);
    expect(lines({ setting: 'peritoneal-dialysis' }).join()).not.toMatch(/kg/);
    expect(lines({ setting: 'transplant' })).not.toContain(general);
    const topic = (setting: string) => textOf(callBlocks({ ...topicWith('low-sodium-us'), setting: setting as 'transplant' }, words));
    expect(topic('peritoneal-dialysis').at(-1)).toBe('You gain 2 kg (4.4 lb) or more in 2 days.');
    expect(topic('transplant').join()).not.toMatch(/kg/);
  });

  it('[HND-9] the author’s number first, and a heading where it is asked for', () => {
    const draft = draftWith({ callUs: 'Call 1.' });
    expect(textOf(callBlocks(draft, words)).slice(0, 2)).toEqual(['When to call', 'Call 1.']);
    expect(textOf(callBlocks(draft, words, false))[0]).toBe('Call 1.');
    expect(textOf(callBlocks(draftWith(), words))[1]).toMatch(/911/);
  });
});

describe('swaps', () => {
  const loaf = (name: string, sodiumMg: number, energyKcal = 80, more = {}) =>
    foodWith(name, {
      statement: `${name} grain.`,
      serving: { household: '4 slices', grams: 50 },
      panel: { energyKcal, sodiumMg },
      ...more,
    });
  const told = (foods: Parameters<typeof handoutInput>[0]) =>
    textOf(swapBlocks(surveyOf(foods), words)).filter(text => text.startsWith('In place'));

  it('[HND-6] the nearest in kind, then in energy, then by name; each is the better one twice', () => {
    const foods = [
      ...['Rye one', 'Rye two', 'Rye three'].map(name => loaf(name, 900)),
      loaf('Rye far', 100, 300),
      loaf('Rye near', 100, 90),
    ];
    expect(told(foods).map(text => text.split('. ')[0])).toEqual([
      'In place of Rye one, pick Rye near',
      'In place of Rye three, pick Rye near',
      'In place of Rye two, pick Rye far',
    ]);
    // Energy that is not known is farther than any.
    const unknown = withAmounts(loaf('Rye dark', 100), { energyKcal: { kind: 'unknown', reason: 'not-printed' } });
    expect(told([loaf('Rye one', 900), unknown, loaf('Rye far', 100, 300)])).toHaveLength(1);
    expect(told([loaf('Rye one', 900), unknown, loaf('Rye far', 100, 300)])[0]).toContain('pick Rye far');
    expect(told([loaf('Rye one', 900), loaf('Rye b', 100), loaf('Rye a', 100)])[0]).toContain('pick Rye a');
  });

  it('[HND-6] six of a category', () => {
    const salty = Array.from({ length: 8 }, (_, at) => loaf(`Rye ${'abcdefgh'[at]}`, 900));
    const mild = Array.from({ length: 4 }, (_, at) => loaf(`Rye mild ${'abcd'[at]}`, 100));
    expect(told([...salty, ...mild])).toHaveLength(6);
  });

  it('[HND-6] what is saved is told by two figures, where it is something', () => {
    const saved = (from: number | string, to: number | string) => {
      const food = (name: string, sodiumMg: number | string) => slices(name, undefined, { panel: { energyKcal: 80, sodiumMg } });
      return told([food('Rye one', from), food('Rye two', to)])[0]?.match(/You save .*?\./)?.[0];
    };
    expect(saved(900, 100)).toBe('You save 800 mg of sodium.');
    // 40 % of 2300 mg is a range, and so is 4 %.
    expect(saved('40%', 100)).toBeUndefined();
    expect(saved(900, '4%')).toBeUndefined();
  });

  it('[HND-6] less of it, a mix or another companion, in measures of a kitchen; five of them', () => {
    const survey = surveyOf([slices('Ham', 900)]);
    const [one] = survey.foods;
    const way = (kind: string, more: object) => ({ ...one!.ways[0], kind, ...more }) as HandoutFood['ways'][number];
    const lines = (...ways: HandoutFood['ways'][number][]) => textOf(swapBlocks({ ...survey, foods: [{ ...one!, ways }] }, words)).slice(1);
    const measured = { ...plate, portion: { measure: 'slice', count: 2 } };
    const weighed = { ...plate, portion: { grams: 28 } };
    const mixedWith = { food: slices('Mild ham', 50), portion: { measure: 'slice', count: 2 } };
    expect(lines(way('smaller-portion', { plate: weighed }), way('smaller-portion', { plate: measured }))).toEqual([
      'Ham: have 2 slices, not 4 slices.',
    ]);
    expect(lines(way('half-and-half', { plate: measured, mixedWith }))).toEqual(['Ham: mix 2 slices with 2 slices of Mild ham.']);
    expect(lines(way('half-and-half', { plate: weighed, mixedWith }))).toEqual([]);
    expect(lines(way('other-companion', { plate }))).toEqual(['Ham: eat it with Bread.']);
    expect(lines(way('companion-without-salt', { plate: { ...plate, companions: [...plate.companions, ...plate.companions] } }))).toEqual([
      'Ham: eat it with Bread + Bread.',
    ]);
    expect(lines(way('more-of-companion', { plate }), way('added-companion', { plate }))).toEqual([]);
    const many = Array.from({ length: 6 }, (_, at) => ({
      ...one!,
      food: slices(`Ham ${at}`, 900),
      ways: [way('smaller-portion', { plate: measured })],
    }));
    expect(textOf(swapBlocks({ ...survey, foods: many }, words)).filter(text => text.includes(': have'))).toHaveLength(5);
  });
});

describe('foods that fit', () => {
  const blocks = (foods: Parameters<typeof handoutInput>[0], draft = draftWith()) => foodBlocks(surveyOf(foods, draft), draft, words);

  it('[HND-1] by name, numbers as numbers, each with what to keep to and what is told of it', () => {
    const said = textOf(blocks([slices('Loaf 10', 100), slices('Loaf 9', 575, { maker: 'Maker' }), slices('loaf 2', 1)]));
    expect(said).toEqual([
      'slices',
      'Checked for lunch. The whole plate may have less than 600 mg of sodium. The portion counts what you eat with it: Bread (1 serving).',
      'loaf 2 |  | For a meal: 4 slices (56 g), 1 mg sodium | Most in a day: 8 slices (112 g)',
      // Rounding may bring it over: 575 mg are up to 580, and 20 of the bread up to 22.5.
      'Loaf 9 | Maker | For a meal: 4 slices (56 g), 575 mg sodium | Most in a day: 8 slices (112 g) | Close to the limit: check the package',
      'Loaf 10 |  | For a meal: 4 slices (56 g), 100 mg sodium | Most in a day: 8 slices (112 g)',
    ]);
  });

  it('[HND-1] the category by its title, the meal by the category or the first one', () => {
    const draft = draftWith({ categories: [{ category: 'slices', title: 'Cold cuts', plateId: 'p' }] });
    expect(textOf(blocks([slices('Ham', 100)], draft)).slice(0, 2)).toEqual([
      'Cold cuts',
      expect.stringMatching(/^Checked for breakfast\. /),
    ]);
  });

  it('[HND-7] aisles that the author did not order stand by name after the others', () => {
    const draft = draftWith({
      aisleOrder: ['Deli'],
      categories: [{ category: 'slices', plateId: 'p', meal: 'lunch', aisle: 'Frozen', foodAisles: { a: 'Zoo', b: 'Deli', c: 'Bakery' } }],
    });
    const foods = ['a', 'b', 'c', 'd'].map(id => ({ ...slices(id, 100), id }));
    expect(textOf(shoppingBlocks([surveyOf(foods, draft)], draft, words))).toEqual(['Deli', 'b', 'Bakery', 'c', 'Frozen', 'd', 'Zoo', 'a']);
  });

  // A day of 500 mg: one portion of 400 with 20 of the bread fits, two do not; the smaller of both is not under the meal's.
  it('[HND-2] a portion that fits a meal fits a day once; one that does not has none', () => {
    const day = surveyOf([], signed([{ ...sodiumTarget, range: { lo: 0, hi: 500 } }])).dayYardstick!;
    expect(dayPortion(slices('Ham', 400), plate, day)).toEqual({ measure: 'slice', count: 4 });
    expect(dayPortion(slices('Ham', 230), plate, day)).toEqual({ measure: 'slice', count: 7 });
    expect(dayPortion(slices('Ham', 490), plate, day)).toBeUndefined();
    expect(dayPortion(slices('Ham', 230), { ...plate, portion: { measure: 'scoop', count: 1 } }, day)).toBeUndefined();
  });
});

describe('the rule of a topic', () => {
  const rules = (tests: Partial<Test>[], on = plate) =>
    topicRules([surveyOf([], topicWith('x'), yardstickOf(...tests), on)], words).map(lineText);
  const alone = { ...plate, companions: [] };
  const sodiumToEnergy = { measure: { kind: 'difference', nutrient: 'sodiumMg', minus: 'energyKcal' } } as const;

  it('[HND-3] each kind in words', () => {
    expect(
      rules(
        [
          { atMost: 140, basis: 'per-serving' },
          { below: 5, basis: 'as-eaten' },
        ],
        alone,
      ),
    ).toEqual(['Sodium: up to 140 mg in one serving.', 'Sodium: less than 5 mg in the portion you eat.']);
    expect(
      rules(
        [
          { measure: { kind: 'additive', class: 'phosphate' }, absent: true },
          { measure: { kind: 'ingredient', kin: 'garlic' }, absent: true },
        ],
        alone,
      ),
    ).toEqual(['No phosphate additive is named on the label.', 'No garlic is named on the label.']);
    expect(rules([{ ...sodiumToEnergy, atMost: 0 }], alone)).toEqual([lineText(words.sodiumToEnergy)]);
    for (const other of [
      { ...sodiumToEnergy, atMost: 50 },
      { ...sodiumToEnergy, atMost: 0, basis: 'as-eaten' as const },
      { atLeast: 5 },
      { measure: { kind: 'nutrient', nutrient: 'proteinG' } as const, atMost: 5 },
      { measure: { kind: 'ratio', nutrient: 'sodiumMg', per: 'energyKcal' } as const, atMost: 0 },
    ])
      expect(rules([other], alone)[0]).toMatch(/^The rule we used: /);
  });

  it('[HND-3] what companions leave room for, in whole mg, where it is one at least', () => {
    const room = (energyKcal: number, sodiumMg: number) =>
      rules([{ ...sodiumToEnergy, atMost: 0 }], {
        ...plate,
        companions: [{ food: foodWith('Roll', { panel: { energyKcal, sodiumMg } }), portion: { servings: 1.01 } }],
      })[1];
    // 1.01 × (160 − 20) is 141.4.
    expect(room(160, 20)).toBe('With Roll (1.01 servings), the food may have as many mg of sodium as calories, and 141 mg more.');
    expect(room(20, 20)).toBeUndefined();
    expect(rules([{ atMost: 140 }])).toHaveLength(1);
    expect(topicRules([], words)).toEqual([]);
  });

  it('[HND-5] the steps of a label follow the rule', () => {
    const steps = (tests: Partial<Test>[], parts?: readonly string[]) => {
      const draft = { ...topicWith('x'), ...(parts === undefined ? {} : { parts: parts as ('fridge' | 'numbers' | 'labels')[] }) };
      const survey = surveyOf([], draft, yardstickOf(...tests));
      return { said: labelSteps(draft, [survey], words).map(lineText), look: lookFor(draft, [survey]), sodium: looksAtSodium(survey) };
    };
    const phosphate = { measure: { kind: 'additive', class: 'phosphate' }, absent: true } as const;
    const garlic = { measure: { kind: 'ingredient', kin: 'garlic' }, absent: true } as const;
    const both = steps([{ atMost: 140 }, phosphate, garlic]);
    expect(both.look).toEqual({ sodium: true, phosphate: true, potassium: false, avoided: ['garlic'] });
    expect(both.said).toEqual([
      lineText(words.steps.serving),
      lineText(words.steps.sodiumOfTopic),
      lineText(words.steps.percent),
      lineText(words.steps.ingredients),
      lineText(words.steps.phosphate),
      'Look for what you do not eat: garlic.',
      lineText(words.steps.noneNamed),
      lineText(words.steps.again),
    ]);
    expect(steps([phosphate])).toMatchObject({ look: { sodium: false, phosphate: true }, sodium: false });
    expect(steps([phosphate]).said).not.toContain(lineText(words.noSodiumNumber));
    expect(steps([{ atMost: 140 }]).said).toHaveLength(4);
    // The rule itself, where it stands nowhere else.
    expect(steps([{ atMost: 140 }], ['labels']).said[1]).toBe('Sodium: up to 140 mg in all that you eat with it.');
    for (const part of ['fridge', 'numbers']) expect(steps([{ atMost: 140 }], [part]).said[1]).toBe(lineText(words.steps.sodiumOfTopic));
    expect(labelSteps(topicWith('x'), [], words).map(lineText)).toContain(lineText(words.noSodiumNumber));
    expect(lookFor(signed([noPhosphate]), [])).toEqual({ sodium: false, phosphate: true, potassium: false, avoided: [] });
  });
});

describe('the page', () => {
  it('[HND-9] the parts that were picked, with title, notes and who wrote it', () => {
    const ids = (parts?: readonly string[], foods = [slices('Ham', 100), slices('Salt', 900), slices('Silent', undefined)]) =>
      buildHandout(handoutInput(foods, draftWith({ notes: ['Hello.'], ...(parts === undefined ? {} : { parts }) }))).value.sections.map(
        ({ id }) => id,
      );
    expect(ids()).toEqual(['fridge', 'notes', 'numbers', 'foods', 'ask', 'labels', 'swaps', 'shopping', 'cautions']);
    expect(ids([])).toEqual(['notes', 'call', 'cautions']);
    for (const part of ['numbers', 'labels', 'swaps', 'shopping']) expect(ids([part])).toEqual(['notes', part, 'call', 'cautions']);
    expect(ids(['foods'])).toEqual(['notes', 'foods', 'ask', 'call', 'cautions']);
    const built = (more: object) => buildHandout(handoutInput([], draftWith(more))).value;
    expect(lineText(built({}).title)).toBe('Food that fits with hemodialysis');
    expect(built({ title: 'My title' }).title).toEqual(authorLine('My title'));
    expect(built({ author: { name: 'B. Writer' } }).about.map(lineText)[1]).toBe('From B. Writer');
    expect(built({}).about.map(lineText)[1]).toBe('From A. Writer, RDN');
  });

  it('[HND-3] the part of numbers says what there is and what there is not', () => {
    const numbers = (targets: readonly unknown[]) => textOf(section(buildHandout(handoutInput([], signed(targets))), 'numbers')?.blocks);
    const has = (targets: readonly unknown[]) => {
      const said = numbers(targets);
      return [words.noNumbers, words.sharesOfDay, words.noSodiumNumber, words.fluidCounts].map(one => said.includes(lineText(one)));
    };
    expect(has([])).toEqual([true, false, true, false]);
    expect(has([sodiumTarget])).toEqual([false, true, false, false]);
    expect(has([noPhosphate])).toEqual([false, false, true, false]);
    expect(has([{ item: 'fluid', unit: 'mL', range: { lo: 0, hi: 1000 }, limit: 'at-most' }])).toEqual([false, false, true, true]);
    const topic = buildHandout(handoutInput([], topicWith('own'), yardstickOf({ atMost: 140 })));
    expect(section(topic, 'numbers')?.title).toBe('The rule on this page');
    expect(section(buildHandout(handoutInput([])), 'numbers')?.title).toBe('Your numbers');
    const signer = draftWith({
      prescription: { targets: [sodiumTarget], signed: { by: 'B. Writer', credentials: 'RDN', on: '2026-11-14' } },
    });
    expect(textOf(section(buildHandout(handoutInput([], signer)), 'numbers')?.blocks)[0]).toContain('by B. Writer, RDN.');
  });

  it('[HND-9] cautions tell from when to when labels were read, and to read again where no steps say so', () => {
    const cautions = (foods: Parameters<typeof handoutInput>[0], more = {}) =>
      textOf(section(buildHandout(handoutInput(foods, draftWith(more))), 'cautions')?.blocks);
    const read = (name: string, readOn: string) => slices(name, 100, { readOn });
    expect(cautions([read('A', '2026-11-03'), read('B', '2026-11-01'), read('C', '2026-11-02')])).toContain(
      'We read these labels from November 1, 2026 to November 3, 2026.',
    );
    expect(cautions([read('A', '2026-11-03')]).at(-1)).toBe('We read these labels on November 3, 2026.');
    expect(cautions([]).join()).not.toContain('We read these labels');
    expect(cautions([], { parts: [] }).at(-1)).toBe(lineText(words.steps.again));
    expect(cautions([])).toContain(lineText(words.clientCaution));
    expect(textOf(section(buildHandout(handoutInput([], topicWith('own'), yardstickOf({ atMost: 1 }))), 'cautions')?.blocks)).not.toContain(
      lineText(words.clientCaution),
    );
  });

  it('[HND-13] a food that was left out stands nowhere; one that is not there is told', () => {
    const draft = draftWith({ categories: [{ category: 'slices', plateId: 'p', meal: 'lunch', leftOut: ['ham', 'gone'] }] });
    const built = buildHandout(handoutInput([slices('Ham', 100), slices('Loaf', 100)], draft));
    expect(JSON.stringify(built.value)).not.toContain('Ham');
    expect(built.issues).toMatchObject([{ code: 'handout-food-not-found', place: { heading: 'categories[0].leftOut[1]' }, found: 'gone' }]);
  });
});

describe('grades', () => {
  const pageOf = (...lines: Parameters<typeof joined>[0]): HandoutPage => ({
    ...buildHandout(handoutInput([])).value,
    sections: [{ id: 'notes', title: '', blocks: lines.map(one => ({ kind: 'text', line: one })) }],
  });

  // Kincaid: 0.39 × words / sentences + 11.8 × syllables / words − 15.59.
  it('[HND-11] by hand: "Eat the ham." is 3 words and syllables, "Potassium." 1 word of 4', () => {
    const graded = gradeOf(pageOf(programLine('Eat the ham.'), authorLine('Potassium.')))!;
    expect(graded.program).toEqual({ withFoodNames: -2.6, withoutFoodNames: -2.6, sentences: 1, words: 3 });
    // 0.39 + 47.2 − 15.59.
    expect(graded.author).toEqual({ withFoodNames: 32, withoutFoodNames: 32, sentences: 1, words: 1 });
    expect(graded.hardest.program).toEqual([]);
    expect(graded.hardest.author).toEqual([{ text: 'Potassium.', grade: 32, words: 1, why: ['long words'], longWords: ['potassium'] }]);
    expect(graded.all).toMatchObject({ sentences: 2, words: 4 });
    expect(gradeOf({ ...pageOf(), language: 'es' })).toBeUndefined();
    expect(gradeOf(pageOf())!.all).toEqual({ sentences: 0, words: 0 });
  });

  it('[HND-11] a sentence that stands there for many foods counts once without their names', () => {
    const about = (name: string, mg: number) => line`Eat ${foodRun(name)}. It has ${String(mg)} mg.`;
    const { program } = gradeOf(pageOf(about('Ham', 100), about('Banana', 1200), about('Fish', 5)))!;
    expect(program).toMatchObject({ sentences: 6, words: 18 });
    // "Eat." and "It has # mg." once each: 5 words, 5 syllables.
    expect(program.withoutFoodNames).toBe(-2.8);
    // With names 18 words; banana has 3 syllables: 20.
    expect(program.withFoodNames).toBe(-1.3);
  });

  it('[HND-11] more than fifteen words make a long sentence; the hardest ten are told, hardest first', () => {
    const long = (words: number) => `${'go '.repeat(words - 1)}potassium.`;
    const why = (text: string) => gradeOf(pageOf(programLine(text)))!.hardest.program[0]?.why;
    expect(why('Potassium additives everywhere today go go.')).toEqual(['long words']);
    expect(why(`${'walking '.repeat(15)}on.`)).toEqual(['long sentence', 'long words']);
    expect(why(`${'walking '.repeat(14)}on.`)).toEqual(['long words']);
    expect(why(`${long(45)}`)).toEqual(['long sentence']);
    const many = Array.from({ length: 12 }, (_, at) => programLine(`${'potassium '.repeat(at + 1)}today.`));
    const hardest = gradeOf(pageOf(...many))!.hardest.program;
    expect(hardest).toHaveLength(10);
    expect(hardest.map(({ grade }) => grade)).toEqual([...hardest.map(({ grade }) => grade)].sort((a, b) => b - a));
  });
});
