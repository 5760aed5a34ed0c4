import { breathe } from './watch.ts';

/** Items that are sorted, or merged, before others have their turn. */
const atOnce = 2_000;

/** Sorts as `toSorted` does, in steps: short runs first, then two and two together, so that a long list holds nobody up. */
export async function sortedInSteps<Item>(items: readonly Item[], compare: (a: Item, b: Item) => number): Promise<readonly Item[]> {
  let runs: (readonly Item[])[] = [];
  for (let from = 0; from < items.length; from += atOnce) {
    if (from > 0) await breathe();
    runs.push(items.slice(from, from + atOnce).sort(compare));
  }
  while (runs.length > 1) {
    const merged: (readonly Item[])[] = [];
    for (let at = 0; at < runs.length; at += 2) {
      const [left, right] = [runs[at]!, runs[at + 1]];
      merged.push(right === undefined ? left : await mergedInSteps(left, right, compare));
    }
    runs = merged;
  }
  return runs[0] ?? [];
}

async function mergedInSteps<Item>(left: readonly Item[], right: readonly Item[], compare: (a: Item, b: Item) => number): Promise<Item[]> {
  const merged: Item[] = [];
  for (let [fromLeft, fromRight] = [0, 0]; fromLeft < left.length || fromRight < right.length; ) {
    if (merged.length % atOnce === 0) await breathe();
    const isLeft = fromRight >= right.length || (fromLeft < left.length && compare(left[fromLeft]!, right[fromRight]!) <= 0);
    merged.push(isLeft ? left[fromLeft++]! : right[fromRight++]!);
  }
  return merged;
}
