import { type PantryItem, type PantryName, pantry } from './pantry.ts';

export const kinds = [
  'bread',
  'cracker or cookie',
  'breakfast cereal or bar',
  'processed cheese',
  'cheese dish',
  'deli meat or sausage',
  'injected poultry or fish',
  'frozen meal',
  'soup',
  'sauce or dressing',
  'canned bean or vegetable',
  'plant drink or slice',
  'dairy dessert or yogurt',
  'soft drink',
  'snack',
  'baking mix or pudding',
] as const;

export type Kind = (typeof kinds)[number];

/** What goes in, the grams in 100 g of it in the first recipe, in the second (the same when left out), and the words where they are not the pantry's own. One item has no grams: it makes up the 100. */
export type BaseItem = readonly [of: PantryName, first?: number, second?: number, words?: string];

/** Items under a heading that weighs what they weigh: "leavening (…)". Its truth is the sum of its parts. */
export type BaseGroup = readonly [heading: string, parts: readonly BaseItem[]];

/** Two recipes that differ in their proportions, and mostly in an additive that one of them has not. */
export interface BaseRecipe {
  readonly id: string;
  readonly serving: readonly [household: string, grams: number];
  /** Grams that come out of 100 g that go in; the difference is water. 100 when left out. */
  readonly yieldG?: number;
  readonly items: readonly (BaseItem | BaseGroup)[];
}

export interface Line {
  readonly grams: number;
  readonly item: PantryItem;
  readonly words: string;
}

export interface Group {
  readonly heading: string;
  readonly parts: readonly Line[];
}

/** A food as its maker knows it: grams in 100 g of everything that goes in. */
export interface Recipe {
  readonly id: string;
  readonly kind: Kind;
  readonly household: string;
  readonly servingG: number;
  readonly yieldG: number;
  readonly items: readonly (Line | Group)[];
}

/** @throws RangeError when not exactly one item is without grams, or when the others leave less than nothing for it. */
export function twoRecipes(kind: Kind, base: BaseRecipe): readonly [Recipe, Recipe] {
  return [recipeOf(kind, base, 'first'), recipeOf(kind, base, 'second')];
}

export function partsOf(item: Line | Group): readonly Line[] {
  return 'parts' in item ? item.parts : [item];
}

export function gramsOf(item: Line | Group): number {
  return partsOf(item).reduce((sum, { grams }) => sum + grams, 0);
}

function recipeOf(kind: Kind, base: BaseRecipe, which: 'first' | 'second'): Recipe {
  const flat = base.items.flatMap(item => (isGroup(item) ? item[1] : [item]));
  const gramsIn = ([, first, second]: BaseItem) => (which === 'first' ? first : (second ?? first));
  const given = flat.map(gramsIn).filter(grams => grams !== undefined);
  const rest = 100 - given.reduce((sum, grams) => sum + grams, 0);
  if (given.length !== flat.length - 1) throw new RangeError(`${base.id}: one item and no more makes up the 100 g`);
  if (rest <= 0) throw new RangeError(`${base.id}: ${-rest} g too much`);
  const line = (item: BaseItem): Line => ({
    grams: gramsIn(item) ?? rest,
    item: pantry[item[0]],
    words: item[3] ?? pantry[item[0]].words,
  });
  const lines = (items: readonly BaseItem[]) => items.map(line).filter(({ grams }) => grams > 0);
  return {
    id: `${base.id}-${which}`,
    kind,
    household: base.serving[0],
    servingG: base.serving[1],
    yieldG: base.yieldG ?? 100,
    items: base.items.flatMap((item): readonly (Line | Group)[] => {
      if (!isGroup(item)) return lines([item]);
      const parts = lines(item[1]);
      return parts.length === 0 ? [] : [{ heading: item[0], parts }];
    }),
  };
}

function isGroup(item: BaseItem | BaseGroup): item is BaseGroup {
  return Array.isArray(item[1]);
}
