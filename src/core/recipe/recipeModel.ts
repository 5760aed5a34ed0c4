import type { Column, LinearModel, Row, Term } from '#core/optimize/linearModel.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { type Traced, traced } from './content.ts';
import { ceilingOf, type FoodKind, isPhosphate, phosphateCeilings } from './foodKind.ts';
import type { PrintedServingFacts } from './printedServing.ts';
import type { RecipeNode, RecipeTree } from './recipeTree.ts';
import { mostWaterLost } from './waterLost.ts';

const fleshGroups: ReadonlySet<string> = new Set(['meat', 'poultry', 'fish']);

/** What a row of the model stands for, so that a conflict or a limit can be told in words. */
export type RowMeaning =
  | { readonly kind: 'printed'; readonly nutrient: Traced; readonly side: 'most' | 'least' }
  | { readonly kind: 'order'; readonly first: string; readonly second: string }
  | { readonly kind: 'threshold'; readonly name: string; readonly percent: number }
  | { readonly kind: 'declared'; readonly name: string; readonly percent: number }
  | { readonly kind: 'ceiling'; readonly name: string; readonly source: string }
  | { readonly kind: 'mass' }
  | { readonly kind: 'moisture' }
  | { readonly kind: 'tie'; readonly name: string };

export interface RecipeModel {
  readonly model: LinearModel;
  readonly meanings: readonly RowMeaning[];
  /** Grams of each leaf in a serving are columns 0 to n − 1; the water that left is column n. */
  readonly leaves: number;
  /** The column of an elastic row's excess, by row; its cost in the search for the least relaxation. */
  readonly excess: ReadonlyMap<number, { readonly at: number; readonly cost: number }>;
  /** Terms of a nutrient's least and most over the leaves. */
  readonly least: (nutrient: Traced, of?: (leaf: number) => boolean) => readonly Term[];
  readonly most: (nutrient: Traced, of?: (leaf: number) => boolean) => readonly Term[];
}

/**
 * The recipe of one serving as a linear model: what goes in less the water that leaves is the serving; every level stands
 * in descending order (21 CFR 101.4(a)); thresholds, printed percentages and legal ceilings bound shares; and each printed
 * figure lies in its range over the spread of what the ingredients hold. Rows of the label are elastic: their excess is
 * zero unless the label contradicts itself.
 */
export function recipeModel(tree: RecipeTree, kind: FoodKind, facts: PrintedServingFacts): RecipeModel {
  const { servingG, printed } = facts;
  const { leaves, nodes } = tree;
  const columns: Column[] = leaves.map(({ name }) => ({ name, lo: 0, hi: Number.POSITIVE_INFINITY }));
  const lost = columns.push({ name: 'water that left', lo: 0, hi: mostWaterLost(facts) }) - 1;
  const rows: Row[] = [];
  const meanings: RowMeaning[] = [];
  const excess = new Map<number, { at: number; cost: number }>();

  const row = (meaning: RowMeaning, terms: readonly Term[], lo: number, hi: number): void => {
    rows.push({ name: JSON.stringify(meaning), lo, hi, terms });
    meanings.push(meaning);
  };
  /** `size` is what counts as one unit of breaking it. */
  const elastic = (meaning: RowMeaning, terms: readonly Term[], lo: number, hi: number, size: number): void => {
    const at = columns.push({ name: 'excess', lo: 0, hi: Number.POSITIVE_INFINITY }) - 1;
    excess.set(rows.length, { at, cost: 1 / Math.max(size, 1e-6) });
    row(meaning, [...terms, { at, coefficient: Number.isFinite(hi) ? -1 : 1 }], lo, hi);
  };
  const mass = (at: readonly number[], coefficient: number): Term[] => at.map(leaf => ({ at: leaf, coefficient }));
  const all = leaves.map((_, at) => at);
  const serving = (servingG.lo + servingG.hi) / 2;

  row({ kind: 'mass' }, [...mass(all, 1), { at: lost, coefficient: -1 }], servingG.lo, servingG.hi);
  row(
    { kind: 'moisture' },
    [...leaves.map(({ content }, at) => ({ at, coefficient: content.water.hi })), { at: lost, coefficient: -1 }],
    0,
    Number.POSITIVE_INFINITY,
  );

  const level = (siblings: readonly RecipeNode[]): void => {
    let before: RecipeNode | undefined;
    for (const node of siblings) {
      if (node.isComponent) before = undefined;
      const isOrdered = node.atMostPercent === undefined && !node.isOpen && !node.isComponent;
      if (isOrdered && before !== undefined) {
        row(
          { kind: 'order', first: before.name, second: node.name },
          [...mass(before.leaves, 1), ...mass(node.leaves, -1)],
          0,
          Number.POSITIVE_INFINITY,
        );
      }
      if (isOrdered) before = node;
      if (node.atMostPercent !== undefined) {
        const share = node.atMostPercent / 100;
        const terms = all.map(at => ({ at, coefficient: (node.leaves.includes(at) ? 1 : 0) - share }));
        elastic({ kind: 'threshold', name: node.name, percent: node.atMostPercent }, terms, Number.NEGATIVE_INFINITY, 0, share * serving);
        // What stands before the clause weighs at least what it lets through: 2 % is the least of the ordered ones only
        // where the maker puts every small one behind it, which no rule asks. So nothing more is known.
      }
      if (node.declaredPercent !== undefined) {
        const [low, high] = [(node.declaredPercent * 0.9) / 100, (node.declaredPercent * 1.1 + 0.5) / 100];
        const share = (limit: number) => all.map(at => ({ at, coefficient: (node.leaves.includes(at) ? 1 : 0) - limit }));
        elastic(
          { kind: 'declared', name: node.name, percent: node.declaredPercent },
          share(high),
          Number.NEGATIVE_INFINITY,
          0,
          high * serving,
        );
        elastic(
          { kind: 'declared', name: node.name, percent: node.declaredPercent },
          share(low),
          0,
          Number.POSITIVE_INFINITY,
          low * serving,
        );
      }
      level(node.parts);
    }
  };
  level(nodes);

  const phosphates = all.filter(at => isPhosphate(leaves[at]!));
  const ceiling = (name: string, at: readonly number[], grams: number, source: string): void => {
    const terms = [
      ...all.map(leaf => ({ at: leaf, coefficient: (at.includes(leaf) ? 1 : 0) - grams / 100 })),
      { at: lost, coefficient: grams / 100 },
    ];
    row({ kind: 'ceiling', name, source }, terms, Number.NEGATIVE_INFINITY, 0);
  };
  const { grams: most, source } = phosphateCeilings[kind];
  // What fortifies with calcium is held by the calcium on the panel; where that is not printed, by a ceiling high enough for it.
  const fortifies = (at: number): boolean => leaves[at]!.content.per1G.calciumMg.lo > 0;
  const fortifying = phosphates.filter(fortifies);
  const held = phosphates.filter(at => !fortifies(at));
  if (held.length > 0) ceiling('phosphate additives', held, most, source);
  if (fortifying.length > 0) ceiling('calcium phosphates', fortifying, 4 * most, 'own decision: four times that of other phosphates');
  // In a meal the meat carries them: half a percent of what was pumped to at most 1.4 times its mass.
  const meats = all.filter(at => fleshGroups.has(leaves[at]!.group));
  const inMeat = phosphates.filter(at => /sodium|potassium/.test(leaves[at]!.additive?.id ?? ''));
  if (meats.length > 0 && inMeat.length > 0 && !leaves.some(({ group, name }) => group === 'dairy' && /cheese/i.test(name))) {
    row(
      { kind: 'ceiling', name: 'phosphates in meat', source: phosphateCeilings.meat.source },
      [...mass(inMeat, 1), ...mass(meats, -0.007)],
      Number.NEGATIVE_INFINITY,
      0,
    );
  }
  for (const at of all) {
    const own = ceilingOf(leaves[at]!, kind);
    if (own !== undefined) ceiling(leaves[at]!.name, [at], own.grams, own.source);
  }

  const tied = new Map<number, Partial<Record<Traced, number>>>();
  for (const [at, { name, content }] of leaves.entries()) {
    const { perProtein = {}, potassiumPerCarbohydrate, per1G } = content;
    if (perProtein.phosphorusMg === undefined && perProtein.potassiumMg === undefined && potassiumPerCarbohydrate === undefined) continue;
    const protein = columns.push({ name: `protein of ${name}`, lo: 0, hi: Number.POSITIVE_INFINITY }) - 1;
    const between = (of: number, per: number, { lo, hi }: Interval): void => {
      row(
        { kind: 'tie', name },
        [
          { at: of, coefficient: 1 },
          { at: per, coefficient: -lo },
        ],
        0,
        Number.POSITIVE_INFINITY,
      );
      row(
        { kind: 'tie', name },
        [
          { at: of, coefficient: 1 },
          { at: per, coefficient: -hi },
        ],
        Number.NEGATIVE_INFINITY,
        0,
      );
    };
    between(protein, at, per1G.proteinG);
    const own: Partial<Record<Traced, number>> = { proteinG: protein };
    for (const mineral of ['phosphorusMg', 'potassiumMg'] as const) {
      const ratio = perProtein[mineral];
      if (ratio === undefined) continue;
      const column = columns.push({ name: `${mineral} of ${name}`, lo: 0, hi: Number.POSITIVE_INFINITY }) - 1;
      between(column, at, per1G[mineral]);
      between(column, protein, ratio);
      own[mineral] = column;
    }
    if (potassiumPerCarbohydrate !== undefined) {
      const carbohydrate = columns.push({ name: `carbohydrate of ${name}`, lo: 0, hi: Number.POSITIVE_INFINITY }) - 1;
      const column = own.potassiumMg ?? columns.push({ name: `potassiumMg of ${name}`, lo: 0, hi: Number.POSITIVE_INFINITY }) - 1;
      between(carbohydrate, at, per1G.carbohydrateG);
      if (own.potassiumMg === undefined) between(column, at, per1G.potassiumMg);
      between(column, carbohydrate, potassiumPerCarbohydrate);
      own.carbohydrateG = carbohydrate;
      own.potassiumMg = column;
    }
    tied.set(at, own);
  }

  const end = (nutrient: Traced, side: 'lo' | 'hi', of: (leaf: number) => boolean = () => true): readonly Term[] =>
    all.filter(of).flatMap(at => {
      const own = tied.get(at)?.[nutrient];
      if (own !== undefined) return [{ at: own, coefficient: 1 }];
      const coefficient = leaves[at]!.content.per1G[nutrient][side];
      return coefficient === 0 ? [] : [{ at, coefficient }];
    });
  for (const nutrient of traced) {
    const range = printed[nutrient];
    if (range === undefined) continue;
    const size = Math.max((range.lo + Math.min(range.hi, range.lo * 2 + 1)) / 2, serving / 200);
    if (Number.isFinite(range.hi))
      elastic({ kind: 'printed', nutrient, side: 'most' }, end(nutrient, 'lo'), Number.NEGATIVE_INFINITY, range.hi, size);
    if (range.lo > 0) elastic({ kind: 'printed', nutrient, side: 'least' }, end(nutrient, 'hi'), range.lo, Number.POSITIVE_INFINITY, size);
  }
  return {
    model: { columns, rows },
    meanings,
    leaves: leaves.length,
    excess,
    least: (nutrient, of) => end(nutrient, 'lo', of),
    most: (nutrient, of) => end(nutrient, 'hi', of),
  };
}
