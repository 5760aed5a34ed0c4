import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { unwatched } from '#app/watch.ts';
import { largerReference } from '#core/reference/largerReference.ts';
import { matchFood } from '#core/reference/matchFood.ts';
import { nameWords } from '#core/reference/nameWords.ts';
import { referenceTable } from '#core/reference/referenceFood.ts';
import { hasOpenData, hasSr28, openDataFolder, sr28File, statementsFile } from '../../../test/openData.ts';
import { folderFiles } from './folderFiles.ts';
import { readDatasets } from './readDatasets.ts';

const full = hasSr28 ? await readDatasets(await folderFiles(sr28File), sr28File, unwatched) : undefined;

describe.skipIf(full === undefined)(`the whole of SR28 (skipped where there is no ${sr28File})`, () => {
  test('[REF-12] the whole abbreviated file is read, row by row', () => {
    const [table] = full!.value;
    expect(full!.issues).toEqual([]);
    expect(table).toMatchObject({ dataset: 'usda-sr', edition: 'release 28' });
    expect(table!.foods).toHaveLength(8618);
    // SR28 01009, cheddar: 473 mg of phosphorus; 43392, hearts of palm, has no household measure.
    expect(table!.foods.find(({ number }) => number === '01009')!.per100G.phosphorusMg).toBe(473);
    expect(table!.foods.find(({ number }) => number === '43392')!.household).toEqual([]);
  });

  test('[REF-17] where both tables know a name, they agree on its minerals but for a few', () => {
    const larger = largerReference(full!.value);
    const apart: string[] = [];
    let both = 0;
    for (const food of referenceTable.foods)
      for (const name of [food.name, ...food.aliases]) {
        const found = larger.find(nameWords(name))?.food;
        if (found === undefined) continue;
        both += 1;
        const isApart = (['phosphorusMg', 'potassiumMg'] as const).some(key => {
          const [own, other] = [food.per100G[key], found.per100G[key]];
          return own !== null && other !== null && Math.abs(own - other) > Math.max(30, 0.4 * Math.max(own, other));
        });
        if (isApart) apart.push(`${name}: ${found.name}`);
      }
    expect(both).toBeGreaterThan(500);
    expect(apart.length / both, apart.join('\n')).toBeLessThan(0.06);
  });

  test('[REF-14] no baby food, fast food or brand answers to an ingredient of our table', () => {
    const larger = largerReference(full!.value);
    const wrong = /BABYFOOD|INF FORM|FAST FD|FAST FOOD|RESTAURANT|KRAFT|CAMPBELL|KELLOGG|HEINZ|NABISCO|PILLSBURY|CEREALS RTE/;
    const found = referenceTable.foods
      .flatMap(({ name, aliases }) => [name, ...aliases])
      .flatMap(name => larger.find(nameWords(name))?.food.name ?? []);
    expect(found.filter(name => wrong.test(name))).toEqual([]);
  });
});

test.skipIf(!hasOpenData)(
  `[REF-12] branded foods of FoodData Central alone are no composition table (skipped where there is no ${statementsFile})`,
  async () => {
    const folder = join(openDataFolder, 'fdc');
    const read = await readDatasets(await folderFiles(folder), folder, unwatched);
    // The sample of open data holds 1 foundation food and 26 of SR Legacy among 4,986.
    expect(read.value.map(({ dataset, foods }) => [dataset, foods.length])).toEqual([
      ['fdc-foundation', 1],
      ['fdc-sr-legacy', 26],
    ]);
  },
);

test('[REF-13] without an imported table nothing changes', () => {
  expect(matchFood('kohlrabi', '', largerReference([]))).toBeUndefined();
});
