import { folderFiles } from '#adapters/datasets/folderFiles.ts';
import { readDatasets } from '#adapters/datasets/readDatasets.ts';
import { unwatched } from '#app/watch.ts';
import { type LargerReference, largerReference } from '#core/reference/largerReference.ts';
import { matchFood } from '#core/reference/matchFood.ts';
import { namesNoFood } from '#core/reference/noFood.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import type { Ingredient } from '#core/statement/statement.ts';
import { hasOpenData, hasSr28, openDataFolder, realStatements, sr28File } from '../test/openData.ts';
import { best, figure } from './measure.ts';

/** How many of the first five ingredients without parts have a composition in the table. */
export async function benchReferenceMatch(): Promise<void> {
  if (!hasOpenData) {
    process.stdout.write(`reference foods: skipped, no open data in ${openDataFolder}\n`);
    return;
  }
  const names = measured();
  const matchAll = () => {
    for (const { name, heading } of names) matchFood(name, heading);
  };
  figure('names matched a second, one core', names.length / best(matchAll, 5), 'at least 100,000');
  if (!hasSr28) return;
  const begun = performance.now();
  const { value: tables } = await readDatasets(await folderFiles(sr28File), sr28File, unwatched);
  figure('SR28, abbreviated file, read, milliseconds', performance.now() - begun, '');
  figure('  made ready for lookup, milliseconds', 1000 * best(() => largerReference(tables), 5), '');
  process.stdout.write('  the same statements with it behind our own table:\n');
  const larger = largerReference(tables);
  measured(larger);
  const matchWithLarger = () => {
    for (const { name, heading } of names) matchFood(name, heading, larger);
  };
  figure('names matched a second, one core', names.length / best(matchWithLarger, 5), '');
}

/** Prints the shares; gives every name without parts. */
function measured(larger?: LargerReference): readonly Leaf[] {
  const names: Leaf[] = [];
  const share = { all: 0, matched: 0, allWeight: 0, matchedWeight: 0, foods: 0, foodsWeight: 0, sure: 0 };
  for (const text of realStatements()) {
    const leaves = parseStatement(text).value.ingredients.flatMap(ingredient => leavesOf(ingredient, ''));
    names.push(...leaves);
    for (const [at, { name, heading }] of leaves.slice(0, 5).entries()) {
      // Half of what is left for each rank: a stand-in for mass, which no statement tells.
      const weight = 1 / 2 ** at;
      const match = matchFood(name, heading, larger);
      share.all += 1;
      share.allWeight += weight;
      if (match !== undefined || !namesNoFood(name)) {
        share.foods += 1;
        share.foodsWeight += weight;
      }
      if (match === undefined) continue;
      share.matched += 1;
      share.matchedWeight += weight;
      if (match.confidence >= 0.85) share.sure += weight;
    }
  }
  const percent = (part: number, whole: number): number => (100 * part) / whole;
  figure('first five ingredients with a reference food, %', percent(share.matched, share.all), 'by count');
  figure('  weighted by rank (1, 1/2, 1/4 ...), %', percent(share.matchedWeight, share.allWeight), 'at least 85');
  figure('  weighted, at a confidence of 0.85 or more, %', percent(share.sure, share.allWeight), '');
  figure('  without additives, vitamins, flavors, cultures: by count, %', percent(share.matched, share.foods), '');
  figure('  the same, weighted, %', percent(share.matchedWeight, share.foodsWeight), '');
  return names;
}

interface Leaf {
  readonly name: string;
  readonly heading: string;
}

function leavesOf({ name, parts }: Ingredient, heading: string): Leaf[] {
  return parts.length === 0 ? [{ name, heading }] : parts.flatMap(part => leavesOf(part, name));
}
