import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { compositionPer100G } from '#data/packages/composition.ts';
import { ingredientsIn, makersIn, recipesIn } from '#data/packages/dataFiles.ts';
import { type Figures, type Ingredients, writtenFigures } from '#data/packages/ingredient.ts';
import { printedPanel } from '#data/packages/panel.ts';
import { isRecipe, type Recipe } from '#data/packages/recipe.ts';
import { recipesFromJson } from '#data/packages/recipesFromJson.ts';

const demo = new URL('../data/demo/', import.meta.url);
const ingredients = ingredientsIn(new URL('ingredients.json', demo));
const makers = makersIn(new URL('makers.json', demo));
const world = { category: 'breads', ingredients, makers };
const serving = { household: '1 slice', grams: 30 };
const plain = { id: 'plain', serving, items: [{ grams: 60, of: 'enriched flour' }, { of: 'water' }] };
const sold = { maker: 'gribley', itemNumber: 1, referenceAmount: 'bread', readOn: '2026-10-14', readAt: 'Tollen Foods' };

const read = (foods: readonly object[], more: object = {}) => recipesFromJson({ category: 'breads', ...more, foods }, world);
const placesOf = (foods: readonly object[], more: object = {}) => read(foods, more).issues.map(({ place }) => place.heading);

describe('[PKG-1] a file of recipes is refused with the place of each fault', () => {
  it.each<[string, object, string, string]>([
    ['a key that nobody reads', { ...plain, yeildG: 90 }, 'foods[0]', 'Unrecognized key: "yeildG"'],
    ['grams in words', { ...plain, items: [{ grams: '60', of: 'sugar' }] }, 'foods[0].items[0].grams', 'grams'],
    ['grams below nothing', { ...plain, items: [{ grams: -1, of: 'sugar' }, { of: 'water' }] }, 'foods[0].items[0].grams', '>=0'],
    ['a group without parts', { ...plain, items: [{ kind: 'group', name: 'leavening' }] }, 'foods[0].items[0].parts', 'array'],
    ['a kind of line that is none', { ...plain, items: [{ kind: 'heap', of: 'sugar' }] }, 'foods[0].items[0].kind', "'group'"],
    ['no serving', { ...plain, serving: undefined }, 'foods[0].serving', 'object'],
    ['a day that is none', { ...plain, sold: { ...sold, readOn: '2026-13-01' } }, 'foods[0].sold.readOn', 'a day'],
    ['a state that is none', { ...plain, sold: { ...sold, state: 'frozen' } }, 'foods[0].sold.state', 'as-prepared'],
  ])('%s', (_, food, place, expected) => {
    const { foods, issues } = read([food]);
    expect(foods).toEqual([]);
    expect(issues.map(({ place: at }) => at.heading)).toEqual([place]);
    expect(issues[0]!.expected).toContain(expected);
  });

  const items = (...lines: readonly object[]) => ({ ...plain, items: lines });
  it.each<[string, object, readonly string[]]>([
    ['an ingredient that is not there', items({ grams: 60, of: 'constructor' }, { of: 'water' }), ['foods[0].items[0].of']],
    [
      'an ingredient of a group that is not there',
      items(
        { of: 'water' },
        {
          kind: 'group',
          name: 'leavening',
          parts: [
            { grams: 1, of: 'salt' },
            { grams: 1, of: 'chalk' },
          ],
        },
      ),
      ['foods[0].items[1].parts[1].of'],
    ],
    ['a maker that is not there', { ...plain, sold: { ...sold, maker: 'nobody' } }, ['foods[0].sold.maker']],
    ['99 g', items({ grams: 99, of: 'sugar' }), ['foods[0].items']],
    ['101 g and a line for the rest', items({ grams: 101, of: 'sugar' }, { of: 'water' }), ['foods[0].items']],
    ['two lines for the rest', items({ of: 'sugar' }, { of: 'water' }), ['foods[0].items']],
    ['0 g', items({ grams: 0, of: 'salt' }, { grams: 100, of: 'sugar' }), ['foods[0].items[0].grams']],
    ['grams a version without versions', items({ grams: [1, 2], of: 'salt' }, { of: 'sugar' }), ['foods[0].items[0].grams']],
    ['a box that is not there', { id: 'carton', serving, boxes: ['plain', 'fancy'] }, ['foods[0].boxes[0]', 'foods[0].boxes[1]']],
    ['items and boxes', { ...plain, boxes: ['plain', 'plain'] }, ['foods[0]']],
    ['neither items nor boxes', { id: 'air', serving }, ['foods[0]']],
  ])('%s', (_, food, places) => {
    expect(placesOf([food])).toEqual(places);
  });

  it('another category, an id twice and two unknown ingredients are four faults', () => {
    const again = items({ grams: 1, of: 'chalk' }, { grams: 1, of: 'sand' }, { of: 'water' });
    expect(placesOf([plain, again], { category: 'cakes' })).toEqual([
      'category',
      'foods[1].id',
      'foods[1].items[0].of',
      'foods[1].items[1].of',
    ]);
  });

  it('a file on disk is named too: recipes, ingredients and makers', () => {
    const folder = mkdtempSync(join(tmpdir(), 'recipes-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    const file = (name: string, value: unknown): URL => {
      writeFileSync(join(folder, name), JSON.stringify(value));
      return pathToFileURL(join(folder, name));
    };
    const faulty = { category: 'breads', foods: [{ ...plain, items: [{ grams: 100, of: 'chalk' }] }] };
    expect(() => recipesIn(file('faulty.json', faulty), world)).toThrow(
      /faulty\.json has faults\nfoods\[0\]\.items\[0\]\.of: found "chalk", expected the name of an ingredient$/,
    );
    writeFileSync(join(folder, 'torn.json'), '{"category": ');
    expect(() => recipesIn(pathToFileURL(join(folder, 'torn.json')), world)).toThrow(/torn\.json is not JSON$/);
    const salt = { printed: 'salt', source: { kind: 'additive', id: 'no-such-salt' } };
    const bread = { printed: 'bread', source: { kind: 'sr28', ndb: '123' } };
    expect(() => ingredientsIn(file('pantry.json', { salt, bread }))).toThrow(
      /pantry\.json has faults\nsalt\.source\.id: .*\nbread\.source\.ndb: /,
    );
    const gribley = makers.gribley!;
    const shouting = { ...gribley, style: { ...gribley.style, letters: 'huge' } };
    expect(() => makersIn(file('makers.json', { gribley: shouting }))).toThrow(
      /makers\.json has faults\ngribley\.style\.letters: found "huge"/,
    );
  });
});

describe('[PKG-2] versions', () => {
  const cola = {
    id: 'cola',
    serving,
    items: [
      { of: 'water' },
      { grams: [10, 9.5], of: 'sugar', as: 'cane sugar' },
      { grams: [0, 0.5], of: 'salt' },
      { kind: 'group', name: 'leavening', parts: [{ grams: [1, 0], of: 'baking soda' }] },
    ],
  };

  it('a food is as many foods as there are versions, each with its own grams and rest', () => {
    const { foods, issues } = read([cola], { versions: ['first', 'second'] });
    expect(issues).toEqual([]);
    const gramsOf = ({ items }: Recipe) =>
      items.map(item => ('parts' in item ? [item.name, ...item.parts.map(({ grams }) => grams)] : [item.words, item.grams]));
    expect(foods.filter(isRecipe).map(food => [food.id, gramsOf(food)])).toEqual([
      [
        'cola-first',
        [
          ['water', 89],
          ['cane sugar', 10],
          ['leavening', 1],
        ],
      ],
      [
        'cola-second',
        [
          ['water', 90],
          ['cane sugar', 9.5],
          ['salt', 0.5],
        ],
      ],
    ]);
  });

  it('a list of grams has one number a version, not all of them 0', () => {
    expect(placesOf([cola], { versions: ['a', 'b', 'c'] })).toEqual(
      [1, 2].map(at => `foods[0].items[${at}].grams`).concat('foods[0].items[3].parts[0].grams'),
    );
    const never = { ...cola, items: [{ of: 'water' }, { grams: [0, 0], of: 'salt' }] };
    expect(placesOf([never], { versions: ['a', 'b'] })).toEqual(['foods[0].items[1].grams']);
  });
});

describe('[PKG-3] what an ingredient does not tell', () => {
  const unknownIron =
    (names: readonly string[]) =>
    (ingredient: Ingredients[string]): Figures => {
      const { ironMg, ...figures } = writtenFigures(ingredient);
      return names.includes(ingredient.printed) ? figures : { ...figures, ...(ironMg === undefined ? {} : { ironMg }) };
    };
  const food = (grams: number) => read([{ ...plain, items: [{ grams, of: 'salt' }, { of: 'water' }] }]).foods[0]!;
  const style = { percents: 'none', lessThan: '<' } as const;

  it('is unknown in the food and off its panel, unless it weighs 1 g or less', () => {
    const salty = compositionPer100G(food(2), unknownIron(['salt']));
    expect(salty.ironMg).toBeUndefined();
    expect(printedPanel(salty, 100, style).figures).not.toHaveProperty('ironMg');
    expect(printedPanel(salty, 100, style, true).notSignificantSourceOf).not.toContain('iron');
    expect(compositionPer100G(food(1), unknownIron(['salt'])).ironMg).toBe(0);
  });

  it('is unknown in a carton when one of its foods lacks it', () => {
    const carton = { ...food(2), boxes: [food(2), food(1)].filter(isRecipe), items: undefined };
    const { items: _, ...pack } = carton;
    expect(compositionPer100G(pack).ironMg).toBe(0);
    expect(compositionPer100G(pack, unknownIron(['salt'])).ironMg).toBeUndefined();
    expect(compositionPer100G(pack).waterG).toBeCloseTo(98.5, 6);
  });
});

it('[PKG-4] the core imports nothing of it, its tests apart', () => {
  const core = fileURLToPath(new URL('../src/core', import.meta.url));
  const importing = readdirSync(core, { recursive: true, encoding: 'utf8' })
    .filter(name => name.endsWith('.ts') && !name.endsWith('.test.ts'))
    .filter(name => /data\/(packages|demo)\//.test(readFileSync(join(core, name), 'utf8')));
  expect(importing).toEqual([]);
});
