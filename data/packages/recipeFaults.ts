import type { z } from 'zod';
import type { Ingredients } from './ingredient.ts';
import type { Makers } from './maker.ts';
import type { FoodEntry, ItemEntry, LineEntry, RecipeFile } from './recipeFile.ts';

/** What recipes may name. */
export interface RecipeWorld {
  /** The category that the file must be of. */
  readonly category: string;
  readonly ingredients: Ingredients;
  readonly makers?: Makers;
}

type Path = readonly (string | number)[];
type Report = (path: Path, expected: string) => void;

/** What a file of recipes says that does not fit together, each at its place. */
export function reportRecipeFaults(file: RecipeFile, world: RecipeWorld, context: z.RefinementCtx<RecipeFile>): void {
  const report: Report = (path, expected) => context.addIssue({ code: 'custom', path: [...path], message: expected });
  if (file.category !== world.category) report(['category'], world.category);
  const ids = file.foods.map(({ id }) => id);
  for (const [at, food] of file.foods.entries()) {
    const place = ['foods', at];
    if (ids.indexOf(food.id) !== at) report([...place, 'id'], 'an id that no other food of the file has');
    reportFood(food, file, report, place);
    if (food.sold !== undefined && !Object.hasOwn(world.makers ?? {}, food.sold.maker))
      report([...place, 'sold', 'maker'], 'a key of the makers');
    for (const { line, path } of placedLines(food.items ?? [], [...place, 'items'])) {
      if (!Object.hasOwn(world.ingredients, line.of)) report([...path, 'of'], 'the name of an ingredient');
      reportGrams(line, file.versions, report, path);
    }
  }
}

function reportFood({ items, boxes, yieldG }: FoodEntry, { foods, versions }: RecipeFile, report: Report, place: Path): void {
  if ((items === undefined) === (boxes === undefined)) report(place, 'either items or boxes');
  if (items !== undefined) for (const expected of new Set(restFaults(items, versions))) report([...place, 'items'], expected);
  if (boxes === undefined) return;
  if (versions !== undefined || yieldG !== undefined) report([...place, 'boxes'], 'boxes in a file without versions, and without yieldG');
  for (const [at, box] of boxes.entries())
    if (foods.find(({ id }) => id === box)?.items === undefined) report([...place, 'boxes', at], 'the id of a food of the file with items');
}

/** What is wrong with the sum of the grams, in any version. */
function restFaults(items: readonly ItemEntry[], versions: readonly string[] = ['']): readonly string[] {
  const lines = linesIn(items);
  const open = lines.filter(({ grams }) => grams === undefined).length;
  if (open > 1) return ['at most one line without grams'];
  return versions.flatMap((_, version) => {
    const sum = lines.reduce((grams, line) => grams + (gramsIn(line, version) ?? 0), 0);
    if (open === 1) return sum < 100 ? [] : ['less than 100 g in all, so that something is left for the line without grams'];
    return Math.abs(sum - 100) < 5e-4 ? [] : ['100 g in all, or one line without grams'];
  });
}

function reportGrams({ grams }: LineEntry, versions: readonly string[] | undefined, report: Report, path: Path): void {
  const place = [...path, 'grams'];
  if (Array.isArray(grams)) {
    if (grams.length !== versions?.length)
      report(place, versions === undefined ? 'one number' : `${versions.length} numbers, one a version`);
    else if (grams.every(one => one === 0)) report(place, 'grams above 0 in one version');
  } else if (grams === 0) report(place, 'grams above 0');
}

/** Grams of a line in a version, by its place; undefined where it makes up the 100. */
export function gramsIn({ grams }: LineEntry, version: number): number | undefined {
  return Array.isArray(grams) ? grams[version] : grams;
}

/** All lines, those of groups in their places. */
export function linesIn(items: readonly ItemEntry[]): readonly LineEntry[] {
  return placedLines(items, []).map(({ line }) => line);
}

function placedLines(items: readonly ItemEntry[], place: Path): readonly { readonly line: LineEntry; readonly path: Path }[] {
  return items.flatMap((item, at) =>
    item.kind === 'group'
      ? item.parts.map((line, part) => ({ line, path: [...place, at, 'parts', part] }))
      : [{ line: item, path: [...place, at] }],
  );
}
