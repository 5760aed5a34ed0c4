import { createReadStream, readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { rowsOfWorkspaceFile } from '#adapters/archive/workspaceFile.ts';
import type { ArchivedRow, Store } from '#app/store.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';
import { type EngineUnderTest, everyRow, label, restoreAll, standingSodium } from './samples.ts';

const fixtures = fileURLToPath(new URL('../migrations/fixtures/', import.meta.url));
const versions = readdirSync(fixtures)
  .flatMap(name => /^workspace-v(\d+)\.sqlite$/.exec(name)?.slice(1) ?? [])
  .map(Number)
  .sort((a, b) => a - b);
/** The last version whose program wrote a workspace file. */
const lastWithFile = 5;
/** The tables that each version knew last. */
const guidesSince = 3;
const referencesSince = 4;
const handoutsSince = 5;
/** What columns hold that a later program added. */
const laterColumns: Readonly<Record<string, Readonly<Record<string, unknown>>>> = { saved_surveys: { version: 1 } };

export function earlierFile(version: number): string {
  return `${fixtures}workspace-v${version}.sqlite`;
}

/** Every row of every table of a workspace of that version, in the form of a workspace file. */
export function earlierRows(version: number): Record<string, Record<string, unknown>[]> {
  const file = new SqliteDatabase(earlierFile(version), { readonly: true });
  try {
    const names = file.prepare<[], { name: string }>("select name from sqlite_schema where type = 'table' order by rowid").all();
    return Object.fromEntries(
      names.map(({ name }) => [name, file.prepare<[], Record<string, unknown>>(`select * from ${name} order by rowid`).all()]),
    );
  } finally {
    file.close();
  }
}

/** What an earlier program kept is there and can be read and written by this one. */
export function earlierContract(engine: EngineUnderTest): void {
  describe('workspaces of earlier programs', () => {
    test('there is one of every version before the newest', () => {
      const migrations = readdirSync(fileURLToPath(new URL('../migrations/', import.meta.url))).filter(name => /^\d{4}-/.test(name));
      expect(versions).toEqual(expect.arrayContaining(migrations.slice(1).map((_, at) => at + 1)));
    });

    for (const version of versions) {
      test(`[STO-10] a database of version ${version} opens, and every row is there as it was`, async () => {
        const store = await engine.openEarlier(version);
        try {
          const { workspace: _, mineral_estimates: estimates = [], ...rows } = earlierRows(version);
          const tables = await everyRow(store);
          for (const [name, given] of Object.entries(rows)) {
            const expected = given.map(row => ({ ...laterColumns[name], ...row }));
            expect(tables[name], name).toHaveLength(expected.length);
            expect(tables[name], name).toEqual(expect.arrayContaining(expected));
          }
          expect(await store.estimates('1')).toHaveLength(estimates.length);
          await isReadable(store, version);
        } finally {
          await store.close();
        }
      });

      // Programs after the fifth version write archives instead.
      if (version > lastWithFile) continue;
      test(`[STO-8] a workspace file of version ${version} is restored whole`, async () => {
        const store = await engine.open();
        try {
          const all: ArchivedRow[] = [];
          for await (const row of rowsOfWorkspaceFile(createReadStream(`${fixtures}workspace-v${version}.json`, { highWaterMark: 1_000 })))
            all.push(row);
          const file = Map.groupBy(all, ({ table }) => table);
          await restoreAll(store, Object.fromEntries([...file].map(([name, rows]) => [name, rows.map(({ row }) => row)])));
          const tables = await everyRow(store);
          for (const [name, rows] of Object.entries(tables))
            expect(rows, name).toEqual(file.get(name)?.map(({ row }) => ({ ...laterColumns[name], ...row })) ?? []);
          expect(Object.keys(tables)).toEqual(expect.arrayContaining([...file.keys()]));
          await isReadable(store, version);
        } finally {
          await store.close();
        }
      });
    }
  });
}

async function isReadable(store: Store, version: number): Promise<void> {
  expect(await store.damagedRows()).toEqual([]);
  expect(await store.counts()).toMatchObject({ foods: 4, labels: 8, demoFoods: 1, plates: 2, photos: 1 });
  expect(await standingSodium(store)).toEqual([
    ['Chickpea slices', 0.1 + 0.2],
    ['Honey ham, sliced', 540],
    ['Lentil soup', undefined],
  ]);
  const [ham] = await store.listFoods({ search: 'ham' });
  expect(ham).toMatchObject({ densityGPerMl: 1.03, gramsPerMeasure: { slice: 14 }, version: 3 });
  const labels = await store.labelsOf(ham!.id);
  expect(labels.map(({ kind, printed }) => [kind, printed.panel.sodiumMg])).toEqual([
    ['read', 540],
    ['correction', 600],
    ['read', 6000],
  ]);
  expect(labels[0]).toMatchObject({ recheckOn: '2027-04-14', printed: { otherColumns: [{ panel: { sodiumMg: 2400 } }] } });
  const photo = await store.getPhoto(labels[2]!.photoIds[0]!);
  expect(photo).toMatchObject({ mime: 'image/png' });
  expect([...photo!.bytes.slice(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
  expect((await store.listImports()).map(({ fileName, undoneAt }) => [fileName, undoneAt !== undefined])).toEqual([
    ['shelf “é”.csv', true],
    ['demo scenario', false],
  ]);

  const plates = await store.plates.list();
  expect(plates.map(({ value, version: seen, isDemo }) => [value.title, seen, isDemo])).toEqual([
    ['my “own” sandwich, toasted', 2, false],
    [expect.any(String), 1, true],
  ]);
  for (const { value } of plates) expect(plateFromJson(value).value).toMatchObject({ id: value.id });
  const [yardstick] = await store.yardsticks.list();
  expect(yardstickFromJson(yardstick?.value).value).toMatchObject({ tests: [{ atMost: 250 }, { absent: true, off: true }] });
  expect(await store.surveys.list()).toMatchObject([{ value: { id: 's1', plateId: 'mine', switchedOn: ['no-phosphate'] }, version: 1 }]);

  const guides = await store.guides.list();
  expect(guides.map(({ value, isDemo }) => [value.id, isDemo])).toEqual(
    version < guidesSince
      ? []
      : [
          ['sandwich-slices', true],
          ['unfinished', false],
        ],
  );
  expect(guides[0]?.published?.labels).toEqual(version < guidesSince ? undefined : [{ foodId: ham!.id, labelId: labels[2]!.id }]);
  expect((await store.referenceTables()).map(({ foods }) => foods[0]?.per100G.phosphorusMg)).toEqual(version < referencesSince ? [] : [46]);
  expect((await store.handouts.list()).map(({ value }) => value.id)).toEqual(
    version < handoutsSince ? [] : ['topic-sandwich', 'unfinished'],
  );

  await store.addLabel(ham!.id, 3, label(520));
  await store.guides.put({ id: 'new' }, null);
  await store.handouts.put({ id: 'new' }, null);
  await store.purgeDemo();
  expect(await standingSodium(store)).toEqual([
    ['Honey ham, sliced', 520],
    ['Lentil soup', undefined],
  ]);
  expect((await store.handouts.list()).map(({ value }) => value.id)).toEqual(version < handoutsSince ? ['new'] : ['new', 'unfinished']);
}
