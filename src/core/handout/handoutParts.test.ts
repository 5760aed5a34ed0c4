/** What each part of a handout says and leaves out, by its bounds: picks, weight, swaps, rows of foods. */
import { describe, expect, it } from 'vitest';
import { foodWith, withAmounts } from '#core/plate/plateFixture.ts';
import { foodBlocks, shoppingBlocks } from './foodSections.ts';
import { callBlocks, fridgeSection } from './fridge.ts';
import type { HandoutDraft, HandoutFood, HandoutInput, HandoutSurvey } from './handout.ts';
import { draftWith, handoutInput, noPhosphate, plate, slices, sodiumTarget, topicWith } from './handoutFixture.ts';
import type { Block } from './handoutPage.ts';
import { lineText } from './line.ts';
import { dayPortion } from './portions.ts';
import { swapBlocks } from './swaps.ts';
import { wordsIn } from './words/inLanguage.ts';

const words = wordsIn.en;
const signed = (targets: readonly unknown[], more = {}) =>
  draftWith({ prescription: { targets, signed: { by: 'A. Writer', on: '2026-11-14' } }, ...more });
const most = (item: string, hi: number) => ({ item, unit: 'mg', range: { lo: 0, hi }, limit: 'at-most' });

const textOf = (blocks: readonly Block[] = []): readonly string[] =>
  blocks.flatMap(block => {
    if (block.kind === 'list') return block.lines.map(lineText);
    if (block.kind === 'foods')
      return block.rows.flatMap(({ name, maker = '', keepTo, told }) => [[name, maker, ...keepTo, ...told].join(' | ')]);
    return block.kind === 'table' ? block.head : [lineText(block.line)];
  });
const rowsOf = (blocks: readonly Block[] = []) => blocks.flatMap(block => (block.kind === 'foods' ? block.rows : []));
const surveyOf = (...args: Parameters<typeof handoutInput>): HandoutSurvey => handoutInput(...args).surveys[0]!;

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
    textOf(swapBlocks(surveyOf(foods), draftWith(), words)).filter(text => text.startsWith('In place'));

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
    const lines = (...ways: HandoutFood['ways'][number][]) =>
      textOf(swapBlocks({ ...survey, foods: [{ ...one!, ways }] }, draftWith(), words)).slice(1);
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
    expect(textOf(swapBlocks({ ...survey, foods: many }, draftWith(), words)).filter(text => text.includes(': have'))).toHaveLength(5);
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
