import { groupOf } from './describedGroups.ts';
import { type DescribedName, describedName } from './describedNames.ts';
import type { DescribedFood, LargerTable } from './largerTable.ts';
import { empty, pieces } from './modifiers.ts';
import type { ReferenceFood, ReferenceNutrient } from './referenceFood.ts';
import { referenceNutrients } from './referenceFood.ts';

/** Imported tables, ready to be asked for the food of a name. */
export interface LargerReference {
  /** The food that the words of a name (see `nameWords`) mean, and how sure that is. */
  readonly find: (words: readonly string[]) => { readonly food: ReferenceFood; readonly confidence: number } | undefined;
  /** Names that lead to a food. */
  readonly names: number;
}

/** Below the alias of our own table: nobody looked at what the name was derived from. */
const wholeName = 0.8;
const withoutPieces = 0.65;

/** Rows of one name whose water is further apart than this, in grams in 100 g, are not one food. */
const waterApartG = 20;
/** And so are rows whose mineral is further apart than threefold and this, in milligrams in 100 g. */
const mineralApartMg = 100;

interface Row {
  readonly food: DescribedFood;
  readonly name: DescribedName;
}

/**
 * Makes imported tables ready for lookup. Rows that share a name are one food: the plainest gives the figures, all give the
 * spread. A name whose rows differ in group, water or minerals leads to none. Rules REF-14 to REF-17.
 */
export function largerReference(tables: readonly LargerTable[]): LargerReference {
  const inOrder = new Map<string, ReferenceFood | null>();
  const byHead = new Map<string, ReferenceFood | null>();
  for (const table of tables) {
    const own = namesOf(table);
    const heads = new Map<string, ReferenceFood | null>();
    for (const { words, head, food } of own) {
      const bag = bagOf(words, head);
      heads.set(bag, heads.has(bag) ? null : food);
    }
    // A table that stands before another answers for the names that both know.
    for (const { words, food } of own) setNew(inOrder, words.join(' '), food);
    for (const [bag, food] of heads) setNew(byHead, bag, food);
  }
  const lookUp = (words: readonly string[]): ReferenceFood | undefined => {
    if (words.length === 0) return undefined;
    const key = words.join(' ');
    return (inOrder.has(key) ? inOrder.get(key) : byHead.get(bagOf(words, words.at(-1)!))) ?? undefined;
  };
  return {
    names: [...inOrder.values()].filter(food => food !== null).length,
    find(words) {
      const telling = words.filter(word => !empty.has(word) && word !== '100%' && !/^[\d.]+$/.test(word));
      // "Wild" says nothing of salmon and much of rice: the whole name comes first.
      const whole = lookUp(words) ?? lookUp(telling);
      if (whole !== undefined) return { food: whole, confidence: wholeName };
      const near = lookUp(telling.filter(word => !pieces.has(word)));
      return near && { food: near, confidence: withoutPieces };
    },
  };
}

interface Named extends Omit<DescribedName, 'leftOut'> {
  /** Null where the rows of the name are too unlike. */
  readonly food: ReferenceFood | null;
}

function namesOf({ foods, dataset }: LargerTable): readonly Named[] {
  const rows = foods.flatMap(food => {
    const name = describedName(food);
    return name === undefined ? [] : [{ food, name }];
  });
  const named = [...Map.groupBy(rows, ({ name }) => name.words.join(' ')).values()].map(own => ({
    ...own[0]!.name,
    food: merge(own, dataset),
  }));
  // "Bamboo shoots, canned, drained solids" under "bamboo shoot".
  const cannedOf = Map.groupBy(
    rows.filter(({ name }) => name.words.includes('canned')),
    ({ name: { words } }) => words.slice(0, words.indexOf('canned')).join(' '),
  );
  return named.map(one => {
    const canned = cannedOf.get(one.words.join(' ')) ?? [];
    // What is another food raw than canned (hearts of palm) is sold canned, and the label does not say so.
    const isOpen = one.food !== null && canned.some(({ food }) => areApart([one.food!, food]));
    return isOpen ? { ...one, food: null } : one;
  });
}

function setNew<Value>(map: Map<string, Value>, key: string, value: Value): void {
  if (!map.has(key)) map.set(key, value);
}

function areApart(foods: readonly Pick<DescribedFood, 'per100G'>[]): boolean {
  return (['phosphorusMg', 'potassiumMg'] as const).some(key => {
    const known = foods.map(({ per100G }) => per100G[key]).filter(value => value !== null);
    const [low, high] = [Math.min(...known), Math.max(...known)];
    return high > 3 * low && high - low > mineralApartMg;
  });
}

function bagOf(words: readonly string[], head: string): string {
  return `${words.toSorted().join(' ')}|${head}`;
}

function merge(rows: readonly Row[], dataset: string): ReferenceFood | null {
  const sorted = rows.toSorted((a, b) => a.name.leftOut - b.name.leftOut || a.food.number.localeCompare(b.food.number, 'en'));
  const first = sorted[0]!.food;
  const kinds = sorted.map(({ food }) => groupOf(food));
  const { group, phosphorusKind } = kinds[0]!;
  if (kinds.some(kind => kind.group !== group) || areApart(sorted.map(({ food }) => food))) return null;
  const spread: Partial<Record<ReferenceNutrient, readonly [number, number]>> = {};
  for (const key of referenceNutrients) {
    const known = sorted.map(({ food }) => food.per100G[key]).filter(value => value !== null);
    if (known.length < 2 || first.per100G[key] === null) continue;
    const [low, high] = [Math.min(...known), Math.max(...known)];
    if (key === 'waterG' && high - low > waterApartG) return null;
    spread[key] = [low, high];
  }
  return {
    id: `${dataset}-${first.number}`,
    name: first.description,
    aliases: [],
    ndb: sorted.map(({ food }) => food.number),
    group,
    phosphorusKind: kinds.every(kind => kind.phosphorusKind === phosphorusKind) ? phosphorusKind : 'unknown',
    per100G: first.per100G,
    spread,
    household: first.household,
  };
}
