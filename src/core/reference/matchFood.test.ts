import { expect, test } from 'vitest';
import { additiveTable } from '#core/additive/additiveTable.ts';
import { matchFood } from './matchFood.ts';
import { changing, tailStarts } from './modifiers.ts';
import { nameWords } from './nameWords.ts';
import { namesNoFood } from './noFood.ts';
import { referenceTable } from './referenceFood.ts';
import { speller } from './spelling.ts';

const idOf = (name: string, heading?: string) => matchFood(name, heading)?.food.id;

test('[REF-4] no two foods answer to one name', () => {
  const owner = new Map<string, string>();
  const shared: string[] = [];
  for (const food of referenceTable.foods)
    for (const name of [food.name, ...food.aliases]) {
      const key = nameWords(name).join(' ');
      if (key === '' || (owner.get(key) ?? food.id) !== food.id) shared.push(`${name}: ${owner.get(key)}, ${food.id}`);
      owner.set(key, food.id);
    }
  expect(shared).toEqual([]);
});

test('[REF-4] every name of the table leads to its food', () => {
  const lost = referenceTable.foods.flatMap(food => [food.name, ...food.aliases].filter(name => idOf(name) !== food.id));
  expect(lost).toEqual([]);
});

test.each([
  ['whole milk', 'whole-milk', 'exact', 1],
  ['SKIM MILK POWDER', 'nonfat-dry-milk', 'alias', 0.95],
  ['Powdered skim milk (organic)', 'nonfat-dry-milk', 'alias', 0.95],
  ['tomatoes, diced', 'canned-tomatoes', 'alias', 0.9],
  ['Organic Dehydrated Onions', 'dried-onions', 'alias', 0.98],
  ['broccoli spears', 'broccoli', 'alias', 0.95],
  ['zucchini slices', 'zucchini', 'head-noun', 0.85],
  ['purple carrots', 'carrots', 'alias', 0.95],
  ['golden zucchini', 'zucchini', 'head-noun', 0.8],
  ['grilled eggplant', 'eggplant', 'head-noun', 0.6],
  ['Testville plums', 'plums', 'head-noun', 0.5],
  ['chicken breast with rib meat and skin', 'chicken-breast', 'head-noun', 0.75],
  ['paste, tomato', 'tomato-paste', 'alias', 0.9],
  ['100% plums', 'plums', 'alias', 0.98],
  ['golden zucchini slices', 'zucchini', 'head-noun', 0.75],
  ['grilled golden eggplant slices', 'eggplant', 'head-noun', 0.55],
  ['apples in juice', 'apples', 'head-noun', 0.75],
  ['zucchini slices in water', 'zucchini', 'head-noun', 0.64],
  ['Testville Nordhang plums', 'plums', 'head-noun', 0.5],
  ['Testville grilled eggplant', 'eggplant', 'head-noun', 0.5],
  ['Testville plums in water', 'plums', 'head-noun', 0.38],
  ['zuchini', 'zucchini', 'spelling', 0.85],
  ['zuchini slices', 'zucchini', 'spelling', 0.72],
  ['tomatoe paste', 'tomato-paste', 'spelling', 0.85],
] as const)('[REF-5] "%s" is %s, as %s, at %d', (name, id, how, confidence) => {
  const match = matchFood(name);
  expect(match).toMatchObject({ food: { id }, how });
  expect(match!.confidence).toBeCloseTo(confidence, 9);
});

test('[REF-6] a word that makes another food is never left out', () => {
  const ownWords = new Map(referenceTable.foods.map(({ id, name, aliases }) => [id, new Set([name, ...aliases].flatMap(nameWords))]));
  const dropped: string[] = [];
  for (const { id, name } of referenceTable.foods) {
    // "Gluten free" tells of no other food, and behind "in" stands what goes with one.
    if (id === 'wheat-gluten' || nameWords(name).some(word => tailStarts.has(word))) continue;
    for (const word of changing)
      for (const changed of [`${name} ${word}`, `${word} ${name}`]) {
        const food = matchFood(changed)?.food;
        if (food !== undefined && nameWords(word).some(form => !ownWords.get(food.id)!.has(form)))
          dropped.push(`${changed} > ${food.name}`);
      }
  }
  expect(dropped).toEqual([]);
});

test.each([
  'onion oil',
  'beet powder',
  'sweet potato powder',
  'lemon extract',
  'rice milk',
  'hemp milk',
  'vegan butter',
  'custard apple',
  'cultured dextrose',
  'deyhdrated garlic bulb',
  'driedunsweetened quince',
  // A first word that nobody knows is passed over, but not one with a figure, a slip, or another food's word grown into it.
  'x2 plums',
  'tomatto plums',
  'skimmy plums',
  'sunmalt plums',
  // Many foods are milks, and only a first word is a place.
  'Zorbal milk',
  'plums Testville',
  'organic',
])('[REF-6] "%s" is no food of the table', name => {
  expect(matchFood(name)).toBeUndefined();
});

test('[REF-6] "tomato powder" is tomato powder, not tomato', () => {
  expect(idOf('tomato powder')).toBe('tomato-powder');
  expect(idOf('roasted tomato powder')).toBe('tomato-powder');
});

/** What the table of additives and the table of foods both hold: kitchen salts, flour with leavening, starch. */
const both = /salt|baking (?:soda|powder)|soda|tart[ae]r|starch|flour/;

test('[REF-7] no additive of the table of additives matches a food', () => {
  const names = additiveTable.filter(({ kind }) => kind === 'additive').flatMap(({ name, spellings }) => [name, ...spellings]);
  expect(names.filter(name => !both.test(name) && matchFood(name) !== undefined)).toEqual([]);
  expect(names.length).toBeGreaterThan(500);
});

test.each([
  'Natural flavors',
  'thiamine mononitrate',
  'Red 40',
  'Yellow 5 Lake',
  'cheese culture',
  'enzymes',
  'citric acid',
  'soy lecithin',
  'beef flavor',
  'annatto (color)',
  'L. acidophilus',
])('[REF-7] "%s" matches nothing and is told as no food', name => {
  expect(matchFood(name)).toBeUndefined();
  expect(namesNoFood(name)).toBe(true);
});

test('[REF-7] an additive that only goes with a food does not hide it', () => {
  expect(idOf('apples with calcium ascorbate')).toBe('apples');
  expect(namesNoFood('spices')).toBe(false);
});

test('[REF-8] one slip in a long word is mended', () => {
  expect(matchFood('tomatoe paste')).toMatchObject({ food: { id: 'tomato-paste' }, how: 'spelling' });
  expect(matchFood('chedar cheese')).toMatchObject({ food: { id: 'cheddar-cheese' }, how: 'spelling' });
  expect(matchFood('modififed corn starch')).toMatchObject({ food: { id: 'modified-corn-starch' }, how: 'spelling' });
  expect(idOf('rlce')).toBeUndefined();
});

test('[REF-8] the first letter must be right, and only one word may fit', () => {
  const mend = speller(['butter', 'batter', 'pepper']);
  expect(mend('peper')).toBeUndefined();
  expect(mend('pepperr')).toBe('pepper');
  expect(mend('peppre')).toBe('pepper');
  expect(mend('bepper')).toBeUndefined();
  expect(mend('bitter')).toBeUndefined();
  expect(mend('bttter')).toBeUndefined();
  expect(mend('buter')).toBeUndefined();
});

test('[REF-8] six letters at least, of the word and of what it stands for', () => {
  const mend = speller(['apple', 'apples', 'papaya']);
  expect(mend('applee')).toBe('apples');
  expect(speller(['apple'])('applee')).toBeUndefined();
  expect(mend('appls')).toBeUndefined();
  expect(mend('papay')).toBeUndefined();
  expect(mend('papayaa')).toBe('papaya');
  expect(mend('paapya')).toBe('papaya');
  expect(mend('papyaa')).toBe('papaya');
  expect(mend('ppaaya')).toBe('papaya');
  expect(mend('paaapy')).toBeUndefined();
});

test('[REF-9] a part is read with the word of its heading', () => {
  expect(idOf('soybean')).toBe('soybeans');
  expect(idOf('soybean', 'vegetable oil')).toBe('soybean-oil');
  expect(idOf('soybean', 'partially hydrogenated vegetable oils')).toBe('hydrogenated-soybean-oil');
  expect(idOf('corn', 'modified food starch')).toBe('modified-corn-starch');
  expect(idOf('apple', 'fruit juice concentrates')).toBe('apple-juice-concentrate');
  expect(idOf('apple', 'juices from concentrate')).toBe('apple-juice');
  expect(idOf('wheat flour', 'enriched flour')).toBe('wheat-flour');
  expect(idOf('niacin', 'enriched flour')).toBeUndefined();
  expect(idOf('soybean', 'vegetable shortening')).toBe('soybean-oil');
  expect(idOf('soybean', 'margarine')).toBe('soybean-oil');
  expect(idOf('soybean oil', 'vegetable oil')).toBe('soybean-oil');
  expect(idOf('apple', 'fruit')).toBe('apples');
  expect(idOf('apple', 'from juice concentrate')).toBe('apples');
});

/** 21 CFR 101.4(b)(3), (4), (6), (7), (10), (11), (12), from memory: one name for the fluid and the dry form. */
test.each([
  ['skim milk', 'nonfat-dry-milk'],
  ['milk', 'dry-whole-milk'],
  ['buttermilk', 'buttermilk-powder'],
  ['whey', 'liquid-whey'],
  ['eggs', 'dried-whole-egg'],
  ['egg whites', 'dried-egg-white'],
  ['egg yolks', 'dried-egg-yolk'],
])('[REF-10] "%s" may be %s', (name, id) => {
  expect(matchFood(name)!.alternatives[0]!.id).toBe(id);
});

test('[REF-10] peppers are vegetables, pepper is a spice', () => {
  expect(idOf('Peppers')).toBe('bell-peppers');
  expect(idOf('Pepper')).toBe('black-pepper');
});

test('[REF-10] alternatives are other foods, five at most, first those that the trade calls the same, then those of the same last word', () => {
  for (const food of referenceTable.foods) {
    const { alternatives } = matchFood(food.name)!;
    const ids = alternatives.map(({ id }) => id);
    expect(ids.length, food.id).toBeLessThanOrEqual(5);
    expect(ids, food.id).not.toContain(food.id);
    expect(new Set(ids).size).toBe(ids.length);
    const same = (food.mayBe ?? []).slice(0, 5);
    expect(ids.slice(0, same.length), food.id).toEqual(same);
    const last = nameWords(food.name).at(-1);
    for (const other of alternatives.slice(same.length)) expect(nameWords(other.name).at(-1), food.id).toBe(last);
  }
  expect(matchFood('plums')!.alternatives).toEqual([]);
});

test('[REF-5] words in another order tell nothing where two foods are made of them', () => {
  expect(idOf('milk chocolate')).toBe('milk-chocolate');
  expect(idOf('chocolate milk')).toBe('chocolate-milk');
  expect(idOf('milk, organic chocolate')).toBe('milk-chocolate');
  expect(idOf('tomato concentrated puree')).toBeUndefined();
});

test('[REF-4] names are compared in the singular, with words that mean the same made one', () => {
  const words = 'chiles, bay leaves, halves, cherries, pies, tomatoes, radishes, peaches, boxes, plums, gas, asparagus, swiss';
  expect(nameWords(words)).toEqual('chili bay leaf half cherry pie tomato radish peach box plum gas asparagus swiss'.split(' '));
  expect(nameWords('Dry roasted peanuts, non-fat, fat free, made from gluten-free Grade AA & "fair trade" almonds')).toEqual(
    'roasted peanut nonfat nonfat from and almond'.split(' '),
  );
});

test('[REF-7] a color is a color word and a number, in this order', () => {
  expect(['Red 40', 'Blue 1', 'Green 3', 'Yellow 5'].every(namesNoFood)).toBe(true);
  expect(['Red', 'Red beans', '40 red', 'Purple 40'].some(namesNoFood)).toBe(false);
});
