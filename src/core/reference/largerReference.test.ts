import { expect, test } from 'vitest';
import { groupOf } from './describedGroups.ts';
import { describedName } from './describedNames.ts';
import { largerReference } from './largerReference.ts';
import { type DescribedFood, type LargerTable, nothingKnown } from './largerTable.ts';
import { matchFood } from './matchFood.ts';
import { nameWords } from './nameWords.ts';
import type { ReferenceFood } from './referenceFood.ts';
import { referenceTable } from './referenceFood.ts';

let last = 0;
function food(description: string, group: string | null, figures: Partial<ReferenceFood['per100G']> = {}): DescribedFood {
  last += 1;
  return { number: String(last).padStart(5, '0'), description, group, per100G: { ...nothingKnown, ...figures }, household: [] };
}
function table(...foods: readonly DescribedFood[]): LargerTable {
  return { dataset: 'usda-sr', source: 'test', edition: 'release 28', foods };
}
const nameOf = (description: string, group: string | null = '1100') => describedName(food(description, group))?.words.join(' ');

// Descriptions as SR28 writes them, long and abbreviated.
test.each([
  ['Broccoli, raw', '1100', 'broccoli'],
  ['Cheese, cheddar', '0100', 'cheese cheddar'],
  ['Fish, carp, raw', '1500', 'carp'],
  ['Beans, kidney, red, mature seeds, raw', '1600', 'bean kidney red'],
  ['Apples, raw, with skin (Includes foods for USDA’s Food Distribution Program)', '0900', 'apple'],
  ['Kohlrabi, cooked, boiled, drained, without salt', '1100', 'kohlrabi cooked'],
  ['Kohlrabi, cooked, boiled, drained, with salt', '1100', 'kohlrabi cooked with salt'],
  ['Fish, carp, cooked, dry heat', '1500', 'carp cooked'],
  ['Pasta, dry, enriched', '2000', 'pasta enriched'],
  ['Milk, dry, whole', '0100', 'milk dried'],
  ['Spices, thyme, dried', '0200', 'thyme dried'],
  ['Thyme, fresh', '0200', 'thyme fresh'],
  ['Hearts of palm, canned', '1100', 'heart palm canned'],
  ['KOHLRABI,CKD,BLD,DRND,WO/SALT', '1100', 'kohlrabi cooked'],
  ['CORN FLR,DEGERMED,UNENR,YEL', '2000', 'corn flour degermed yellow'],
] as const)('[REF-14] "%s" of group %s is called "%s"', (description, group, name) => {
  expect(nameOf(description, group)).toBe(name);
});

test.each([
  ['Babyfood, dinner, chicken noodle, strained', '0300'],
  ['BABYFOOD,DINNER,CHICK NOODLE,STR', null],
  ['Infant formula, liquid concentrate', '0300'],
  ['Fast foods, cheeseburger', '2100'],
  ['Restaurant, family style, macaroni', '3600'],
  ['Macaroni and cheese, frozen entree', '2200'],
  ['Cereals ready-to-eat, granola', '0800'],
  ['Soup, PENNYFOLD, tomato', '0600'],
  ['BRACKWATER Cheese, cheddar', '0100'],
  ['Oil, soybean, salad or cooking, (partially hydrogenated)', '0400'],
  ['Leavening agents, sodium bicarbonate', '1800'],
  ['Goat, raw', '1700'],
  ['Game meat, goat, raw', '1700'],
] as const)('[REF-14] "%s" of group %s answers to no ingredient', (description, group) => {
  expect(nameOf(description, group)).toBeUndefined();
});

test('[REF-14] a name in another order ends in the head of the description', () => {
  const larger = largerReference([table(food('Cheese, muddelton', '0100'), food('Candies, milk mirk', '1900'))]);
  const id = (name: string) => larger.find(nameWords(name))?.food.name;
  expect(id('Muddelton cheese')).toBe('Cheese, muddelton');
  expect(id('cheese muddelton')).toBe('Cheese, muddelton');
  expect(id('mirk milk')).toBeUndefined();
});

test('[REF-15] rows of one name give their spread; the plainest gives the figures', () => {
  const rows = [
    food('Carp, mixed species, wild, raw', '1500', { phosphorusMg: 430, potassiumMg: 300 }),
    food('Carp, raw', '1500', { phosphorusMg: 415, potassiumMg: 333 }),
  ];
  const found = largerReference([table(...rows)]).find(['carp'])!.food;
  expect(found.per100G.phosphorusMg).toBe(415);
  expect(found.spread.phosphorusMg).toEqual([415, 430]);
  expect(found.ndb).toHaveLength(2);
});

test.each([
  ['group', food('Morro, raw', '1100'), food('Morro, raw', '1200')],
  ['water', food('Morro, raw', '1100', { waterG: 90 }), food('Morro, uncooked', '1100', { waterG: 12 })],
  ['potassium', food('Morro, raw', '1100', { potassiumMg: 1806 }), food('Morro, fresh', '1100', { potassiumMg: 177 })],
  // SR28 43392 and 11961: hearts of palm, 1806 mg raw and 177 mg canned; a label that says neither means canned ones.
  ['the canned food', food('Morro, raw', '1100', { potassiumMg: 1806 }), food('Morro, canned', '1100', { potassiumMg: 177 })],
  // SR28 11026 and 11028: bamboo shoots, 533 mg raw and 80 mg canned.
  ['the canned one', food('Morro, raw', '1100', { potassiumMg: 533 }), food('Morro, canned, drained solids', '1100', { potassiumMg: 80 })],
])('[REF-15] rows that differ in %s leave the name to nobody', (_, one, other) => {
  expect(largerReference([table(one)]).find(['morro'])).toBeDefined();
  expect(largerReference([table(one, other)]).find(['morro'])).toBeUndefined();
});

test('[REF-15] of two tables the first answers', () => {
  const [one, other] = [table(food('Carp, raw', '1500')), table(food('Carp, wild', '1500'), food('Snail, raw', '1700'))];
  const larger = largerReference([one, other]);
  expect(larger.find(['carp'])!.food.name).toBe('Carp, raw');
  expect(larger.find(['snail'])!.food.name).toBe('Snail, raw');
});

test('[REF-13] our own table wins at equal or better confidence, whatever was imported', () => {
  const rival = (description: string) => food(description, '1100', { phosphorusMg: 999 });
  const names = referenceTable.foods.flatMap(({ name, aliases }) => [name, ...aliases]);
  const larger = largerReference([table(...names.map(rival))]);
  expect(larger.names).toBeGreaterThan(1000);
  for (const name of names) expect(matchFood(name, '', larger), name).toEqual(matchFood(name));
});

test('[REF-13] where our own has nothing or only a guess, the imported table is asked, below the alias of our own', () => {
  const larger = largerReference([table(food('Fish, carp, raw', '1500'), food('Apples, cooked, boiled', '0900'))]);
  expect(matchFood('wild carp', '', larger)).toMatchObject({ how: 'larger', confidence: 0.8, food: { name: 'Fish, carp, raw' } });
  expect(matchFood('carp fillets', '', larger)).toMatchObject({ how: 'larger', confidence: 0.65 });
  expect(matchFood('cooked apples')).toMatchObject({ confidence: 0.6, food: { id: 'apples' } });
  expect(matchFood('cooked apples', '', larger)).toMatchObject({ how: 'larger', confidence: 0.8, alternatives: [{ id: 'apples' }] });
  expect(matchFood('carp oil', '', larger)).toBeUndefined();
  expect(matchFood('carp flavor', '', larger)).toBeUndefined();
});

test('[REF-13] under a heading that tells what its parts are made into, the bare name is not asked for', () => {
  const larger = largerReference([table(food('Carp, raw', '1500'), food('Oil, morro', '0400'))]);
  expect(matchFood('carp', 'vegetable oil', larger)).toBeUndefined();
  expect(matchFood('morro', 'vegetable oil', larger)).toMatchObject({ food: { name: 'Oil, morro' } });
});

// Kidney facts 6.1: animal 40 to 60 %, plant 20 to 40 %, additives 90 to 100 %; what may hold both is unknown.
test.each([
  ['Cheese, cheddar', '0100', 'animal'],
  ['Cheese, pasteurized process, American', '0100', 'unknown'],
  ['Cheese substitute, mozzarella', '0100', 'unknown'],
  ['CHEESE,PAST PROCESS,AMERICAN', '0100', 'unknown'],
  ['Fish, carp, raw', '1500', 'animal'],
  ['Fish, surimi', '1500', 'unknown'],
  ['Pork, cured, ham', '1000', 'unknown'],
  ['Chicken, enhanced, raw', '0500', 'unknown'],
  ['Broccoli, raw', '1100', 'plant'],
  ['Lentils, raw', '1600', 'plant'],
  ['Bread, white', '1800', 'unknown'],
  ['Carbonated beverage, cola', '1400', 'unknown'],
  ['Soybean, curd cheese', null, 'unknown'],
] as const)('[REF-16] the phosphorus of "%s" of group %s is %s', (description, group, kind) => {
  expect(groupOf(food(description, group, { phosphorusMg: 100 })).phosphorusKind).toBe(kind);
});

test('[REF-16] no phosphorus is of no kind; rows of one name with two kinds are unknown', () => {
  expect(groupOf(food('Oil, canola', '0400', { phosphorusMg: 0 })).phosphorusKind).toBe('none');
  const rows = [food('Turkey, raw', '0500'), food('Turkey, raw, commercially prepared', '0500')];
  expect(largerReference([table(...rows)]).find(['turkey'])!.food.phosphorusKind).toBe('unknown');
});

// REF-15: 20 g of water, or threefold and 100 mg of phosphorus or potassium; at the very bound it is still one food.
test.each([
  ['20 g of water', { waterG: 90 }, { waterG: 70 }, true],
  ['20.1 g of water', { waterG: 90 }, { waterG: 69.9 }, false],
  ['threefold', { potassiumMg: 300 }, { potassiumMg: 100 }, true],
  ['more than threefold and 100 mg', { potassiumMg: 301 }, { potassiumMg: 100 }, false],
  ['100 mg and more than threefold', { phosphorusMg: 110 }, { phosphorusMg: 10 }, true],
  ['101 mg and more than threefold', { phosphorusMg: 111 }, { phosphorusMg: 10 }, false],
  ['200 mg and less than threefold', { phosphorusMg: 500 }, { phosphorusMg: 300 }, true],
  ['a figure that one row has not', { phosphorusMg: 900 }, {}, true],
])('[REF-15] %s apart', (_, one, other, isOneFood) => {
  const larger = largerReference([table(food('Morro, raw', '1100', one), food('Morro, fresh', '1100', other))]);
  expect(larger.find(['morro']) !== undefined).toBe(isOneFood);
  expect(larger.names).toBe(isOneFood ? 1 : 0);
});

test('[REF-15] a spread is told where two rows have the figure and the plainest is one of them', () => {
  const [plain, other] = [
    food('Morro, raw', '1100', { phosphorusMg: 40, sodiumMg: 5, proteinG: null }),
    food('Morro, wild, raw', '1100', { phosphorusMg: 50, potassiumMg: 300, proteinG: 2 }),
  ];
  const third = food('Morro, wild, whole, raw', '1100', { proteinG: 3 });
  const found = largerReference([table(third, other, plain)]).find(['morro'])!.food;
  expect(found.name).toBe('Morro, raw');
  expect(found.spread).toEqual({ phosphorusMg: [40, 50] });
  expect(found.per100G).toMatchObject({ phosphorusMg: 40, sodiumMg: 5, proteinG: null, potassiumMg: null });
  expect(found.ndb).toEqual([plain.number, other.number, third.number]);
  expect(found.phosphorusKind).toBe('plant');
});

test('[REF-15] the plainest is the row of which least was left out, not the one with the fewest parts', () => {
  const [one, other] = [food('Morro kelp, red, fresh, raw', '1100'), food('Morro, kelp, red, raw', '1100')];
  expect(largerReference([table(one, other)]).find(['morro', 'kelp', 'red'])!.food.name).toBe(other.description);
});

test('[REF-14] two names of the same words and head answer to no other order', () => {
  const larger = largerReference([table(food('Cheese, morro kelp', '0100'), food('Cheese, kelp morro', '0100'))]);
  expect(larger.find(['cheese', 'kelp', 'morro'])!.food.name).toBe('Cheese, kelp morro');
  expect(larger.find(['morro', 'kelp', 'cheese'])).toBeUndefined();
});

test('[REF-14] a word twice is no name; an egg is dairy by its group alone', () => {
  expect(nameOf('Cheese, cheddar, mild cheddar', '0100')).toBeUndefined();
  const groups = ['Egg, whole, raw', 'Eggs, dried', 'Eggnog', 'Cheese, egg'].map(description => groupOf(food(description, '0100')).group);
  expect(groups).toEqual(['egg', 'egg', 'dairy', 'dairy']);
  expect(groupOf(food('Egg noodles', '2000')).group).toBe('grain');
  expect(groupOf(food('Egg', null)).group).toBe('other');
});

test('[REF-13] a weak guess of our own stays where no imported table knows better', () => {
  const larger = largerReference([table(food('Carp, raw', '1500'))]);
  expect(matchFood('cooked apples', '', larger)).toEqual(matchFood('cooked apples'));
  expect(larger.find(['organic', 'carp', '100%', '2.5'])).toMatchObject({ confidence: 0.8 });
  expect(larger.find([])).toBeUndefined();
});
