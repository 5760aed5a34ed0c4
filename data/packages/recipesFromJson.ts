import type { Issue } from '#core/errors.ts';
import { checkJson, type JsonIssueCode } from '#core/json/checkJson.ts';
import type { Food, Line, PackageFacts, Recipe, RecipeItem, Sold } from './recipe.ts';
import { gramsIn, linesIn, type RecipeWorld, reportRecipeFaults } from './recipeFaults.ts';
import { type FoodEntry, type LineEntry, recipeFileSchema, type SoldEntry } from './recipeFile.ts';

interface ReadRecipes {
  /** In the order of the file, the versions of a food after one another; none when there are issues. */
  readonly foods: readonly Food[];
  readonly issues: readonly Issue<JsonIssueCode>[];
}

/** Reads a file of recipes and names the place of every fault: `foods[2].items[1].of`. */
export function recipesFromJson(json: unknown, world: RecipeWorld): ReadRecipes {
  const schema = recipeFileSchema.superRefine((file, context) => reportRecipeFaults(file, world, context));
  const checked = checkJson(schema, json);
  if (!checked.ok) return { foods: [], issues: checked.issues };
  const { foods, versions } = checked.value;
  return {
    foods: foods.flatMap((entry): readonly Food[] => {
      if (entry.boxes !== undefined) {
        const boxes = entry.boxes.flatMap(id => foods.filter(box => box.id === id));
        return [{ ...factsOf(entry, entry.id, world), boxes: boxes.map(box => recipeOf(box, world)) }];
      }
      return versions?.map((name, at) => recipeOf(entry, world, { name, at })) ?? [recipeOf(entry, world)];
    }),
    issues: checked.issues,
  };
}

/** One of the versions of a food: its name, and the place of its grams. */
interface Version {
  readonly name: string;
  readonly at: number;
}

function recipeOf(entry: FoodEntry, world: RecipeWorld, version?: Version): Recipe {
  const at = version?.at ?? 0;
  const items = entry.items ?? [];
  const rest = 100 - linesIn(items).reduce((sum, line) => sum + (gramsIn(line, at) ?? 0), 0);
  const linesOf = (entries: readonly LineEntry[]) =>
    entries.map(line => lineOf(line, gramsIn(line, at) ?? rest, world)).filter(({ grams }) => grams > 0);
  return {
    ...factsOf(entry, version === undefined ? entry.id : `${entry.id}-${version.name}`, world),
    yieldG: entry.yieldG ?? 100,
    items: items.flatMap((item): readonly RecipeItem[] => {
      if (item.kind !== 'group') return linesOf([item]);
      const { kind: _, ...group } = item;
      const parts = linesOf(group.parts);
      return parts.length === 0 ? [] : [{ ...group, parts }];
    }),
  };
}

function lineOf({ of, as, note }: LineEntry, grams: number, { ingredients }: RecipeWorld): Line {
  const ingredient = ingredients[of];
  if (ingredient === undefined) throw new RangeError(`no ingredient ${of}`);
  return { grams, of, ingredient, words: as ?? ingredient.printed, ...(note === undefined ? {} : { note }) };
}

function factsOf({ name, items: _, yieldG: __, boxes: ___, sold, ...facts }: FoodEntry, id: string, world: RecipeWorld): PackageFacts {
  return { ...facts, id, name: name ?? id, ...(sold === undefined ? {} : { sold: soldOf(sold, world) }) };
}

function soldOf(sold: SoldEntry, { makers }: RecipeWorld): Sold {
  const maker = makers?.[sold.maker];
  if (maker === undefined) throw new RangeError(`no maker ${sold.maker}`);
  return { ...sold, maker };
}
