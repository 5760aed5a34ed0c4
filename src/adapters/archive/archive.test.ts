import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { afterAll, afterEach, beforeEach, describe, expect, test } from 'vitest';
import { composition, everyRow, fault, label, plate, standingSodium } from '#adapters/storage/contract/samples.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import type { Store } from '#app/store.ts';
import { unwatched, type Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { archiveRows, lookAtArchive } from './archiveRows.ts';
import { threadArchives } from './threadArchives.ts';

const folder = mkdtempSync(join(tmpdir(), 'platewright-archive-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The smallest whole pictures: what begins as one and holds more. */
const png = new Uint8Array(
  Buffer.from('iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg==', 'base64'),
);

let stores: Store[] = [];
let places = 0;
async function opened() {
  const place = join(folder, `store-${++places}`);
  const store = await openSqliteStore(place);
  stores.push(store);
  return { store, archives: threadArchives(store, { engine: 'sqlite', folder: place }, '1.2.3', () => new Date('2026-06-15T12:00:00Z')) };
}
afterEach(async () => {
  for (const store of stores) await store.close();
  stores = [];
});

/** Many foods take more than one piece of a file; where that is not asked, a few do. */
async function fill(store: Store, many = 40): Promise<void> {
  const { food, label: first } = await store.addFood(
    { name: 'Ham “sliced”\n', gramsPerMeasure: { slice: 14 }, gtin: '00012345678905' },
    label(6000),
  );
  await store.addLabel(
    food.id,
    1,
    label(600, { kind: 'correction', correctsLabelId: first.id, reason: 'misread', recheckOn: '2027-01-01' }),
  );
  await store.addPhoto(first.id, { mime: 'image/png', bytes: png });
  await store.addPhoto(first.id, { mime: 'image/jpeg', bytes: new Uint8Array() });
  await store.applyImport({
    fileName: 'own.csv',
    labels: Array.from({ length: many }, (_, at) => ({ begins: { name: `Soup ${at}` }, label: label(at) })),
  });
  await store.plates.put(plate, null);
  await store.guides.put({ id: 'g', title: 'Unfinished' }, null);
  await store.putReferences([composition('release 28')]);
}

let from: Awaited<ReturnType<typeof opened>>;
let path = '';
beforeEach(async () => {
  from = await opened();
  path = join(folder, `archive-${places}.zip`);
});

describe('an archive', () => {
  test('[ARC-1] holds every row and picture, and gives them back as they were', async () => {
    await fill(from.store, 1_200);
    const look = await from.archives.write(path, undefined, unwatched);
    expect(look).toMatchObject({
      kind: 'archive',
      madeAt: '2026-06-15T12:00:00.000Z',
      version: '1.2.3',
      damaged: 0,
      rows: { foods: 1_201, labels: 1_202, photos: 2, plates: 1, guides: 1, reference_tables: 1, imports: 1, import_labels: 1_200 },
    });
    expect(look.bytes).toBe(statSync(path).size);
    expect(statSync(path).mode & 0o777).toBe(0o600);
    const to = await opened();
    const { added } = await to.archives.restore(path, 'empty', unwatched);
    expect(added).toMatchObject({ foods: 1_201, labels: 1_202, photos: 2 });
    expect(await everyRow(to.store)).toEqual(await everyRow(from.store));
    // The order of labels goes on.
    await to.store.addFood({ name: 'Later' }, label(1));
  });

  test('[ARC-2] is a ZIP file that another reader opens: rows as lines of JSON, pictures as files, a manifest of digests', async () => {
    await fill(from.store);
    await from.archives.write(path, { format: 2, wraps: [], rows: [{ row: 'AA==', body: 'AA==' }], key: 'AA==' }, unwatched);
    const files = unzipSync(readFileSync(path));
    const names = Object.keys(files);
    expect(names).toEqual(expect.arrayContaining(['tables/foods.jsonl', 'clients.json', 'manifest.json']));
    expect(names.filter(name => /^photos\/00000[12]\.(png|jpg)$/.test(name))).toHaveLength(2);
    const isPng = (bytes: Uint8Array | undefined): boolean => bytes !== undefined && Buffer.compare(bytes, png) === 0;
    expect(isPng(files['photos/000001.png']) || isPng(files['photos/000002.png'])).toBe(true);
    const manifest = JSON.parse(Buffer.from(files['manifest.json']!).toString());
    expect(manifest.clients).toEqual({ records: 1, opensWith: 'key' });
    expect(manifest.files.map(({ name }: { name: string }) => name).toSorted()).toEqual(
      Object.keys(files)
        .filter(name => name !== 'manifest.json')
        .toSorted(),
    );
    expect(Buffer.from(files['tables/labels.jsonl']!).toString().trim().split('\n')).toHaveLength(42);
  });

  test('[ARC-3] is written from one moment: what is kept meanwhile is not in it, and does not wait', async () => {
    await fill(from.store, 1_200);
    let isFirst = true;
    const watch: Watch = {
      step: async () => {
        if (isFirst) await from.store.addFood({ name: 'Meanwhile' }, label(5));
        isFirst = false;
      },
    };
    await from.archives.write(path, undefined, watch);
    await from.store.addFood({ name: 'After' }, label(5));
    const to = await opened();
    const { added } = await to.archives.restore(path, 'empty', unwatched);
    expect(added.foods! - added.labels!).toBe(-1);
    expect((await to.store.listFoods({ search: 'After' })).length).toBe(0);
  });

  test('[ARC-4] damaged values go along, are counted, and come back as damaged as they were', async () => {
    await from.store.plates.put(plate, null);
    const { label: first } = await from.store.addFood({ name: 'Ham' }, label(600));
    await from.store.addPhoto(first.id, { mime: 'image/png', bytes: png });
    expect(await from.archives.write(path, undefined, unwatched)).toMatchObject({ damaged: 0, rows: { photos: 1 } });
    await from.store.restoreRows(async function* () {
      yield { table: 'photos', row: { id: 'p', label_id: first.id, mime: 'image/png', sha256: 'a'.repeat(64), bytes: Buffer.from(png) } };
      yield { table: 'handouts', row: { id: 'broken', handout: '{', version: 1, is_demo: 0 } };
    }, 'beside');
    const damaged = join(folder, `damaged-${places}.zip`);
    expect(await from.archives.write(damaged, undefined, unwatched)).toMatchObject({ damaged: 2, rows: { photos: 2 } });
    const to = await opened();
    await to.archives.restore(damaged, 'empty', unwatched);
    expect(await to.store.damagedRows()).toEqual([{ table: 'handouts', id: 'broken', column: 'handout' }]);
    expect(await everyRow(to.store)).toEqual(await everyRow(from.store));
  });

  test('[ARC-5] cut off, changed in one bit, repacked with more, less or other files: refused, and nothing is written', async () => {
    await fill(from.store);
    await from.archives.write(path, undefined, unwatched);
    const whole = readFileSync(path);
    const wrong = join(folder, 'wrong.zip');
    const to = await opened();
    const isRefused = async (what: string): Promise<void> => {
      const works = [() => lookAtArchive(wrong, unwatched), () => to.store.restoreRows(() => archiveRows(wrong), 'empty')];
      for (const work of works) expect(await fault(work()), what).toMatch(/^(archive-not-valid|archive-newer|workspace-file-not-valid)$/);
      expect((await to.store.counts()).foods, what).toBe(0);
    };
    for (let tenth = 0; tenth < 10; tenth += 1) {
      copyFileSync(path, wrong);
      truncateSync(wrong, Math.floor((whole.length * tenth) / 10));
      await isRefused(`cut at ${tenth} tenths`);
    }
    // A bit in a field that nothing is read from (the time of a file, say) changes nothing; any other is noticed.
    let refused = 0;
    for (let at = 3; at < whole.length; at += Math.ceil(whole.length / 40)) {
      const changed = Buffer.from(whole);
      changed[at]! ^= 4;
      writeFileSync(wrong, changed);
      const look = await lookAtArchive(wrong, unwatched).catch(error => error);
      if (look instanceof Fault) refused += 1;
      else expect(look, `bit at ${at}`).toEqual(await lookAtArchive(path, unwatched));
    }
    expect(refused).toBeGreaterThan(30);
    const files = unzipSync(whole);
    const manifest = JSON.parse(Buffer.from(files['manifest.json']!).toString());
    const packed = (given: Record<string, Uint8Array>): void => writeFileSync(wrong, zipSync(given, { level: 1 }));
    packed({ ...files, 'more.txt': strToU8('more') });
    await isRefused('a file more');
    const fewer = Object.fromEntries(Object.entries(files).filter(([name]) => !name.startsWith('photos/000001')));
    packed(fewer);
    await isRefused('a file less');
    packed({ ...files, 'manifest.json': strToU8(JSON.stringify({ ...manifest, platewrightArchive: 2 })) });
    expect(await fault(to.archives.look(wrong, unwatched))).toBe('archive-newer');
    packed({ ...files, 'manifest.json': strToU8(JSON.stringify({ ...manifest, rows: { ...manifest.rows, foods: 1 } })) });
    expect(await fault(to.archives.look(wrong, unwatched))).toBe('archive-not-valid');
    packed({ ...files, 'tables/foods.jsonl': strToU8('{}\n') });
    await isRefused('rows that the manifest does not know');
    packed({ '../outside': strToU8('x'), ...files });
    await isRefused('a name that leads outside');
    packed({ 'manifest.json': strToU8('[') });
    await isRefused('a manifest that is none');
    packed({ 'word/document.xml': strToU8('<a/>') });
    await isRefused('another kind of ZIP file');
    writeFileSync(wrong, 'no ZIP file');
    await isRefused('no ZIP file');
    expect(await fault(to.archives.restore(wrong, 'empty', unwatched))).toBe('workspace-file-not-valid');
    expect(await fault(to.archives.look(join(folder, 'nowhere.zip'), unwatched))).toBe('file-not-found');
    expect(await fault(to.archives.look(folder, unwatched))).toBe('file-not-readable');
  });

  test('[ARC-6] cancelled while it is written or restored: no file is left, and nothing is written', async () => {
    await fill(from.store);
    const [first] = await from.store.standingLabels();
    // Large enough that the word to stop comes in between two of them.
    for (let at = 0; at < 20; at += 1) await from.store.addPhoto(first!.label.id, { mime: 'image/jpeg', bytes: new Uint8Array(2_000_000) });
    const cancelled: Watch = { step: () => Promise.reject(new Fault('work-cancelled', 'stopped')) };
    const before = readdirSync(folder);
    expect(await fault(from.archives.write(path, undefined, cancelled))).toBe('work-cancelled');
    expect(readdirSync(folder)).toEqual(before);
    await from.archives.write(path, undefined, unwatched);
    const to = await opened();
    expect(await fault(to.archives.restore(path, 'empty', cancelled))).toBe('work-cancelled');
    expect((await to.store.counts()).foods).toBe(0);
    await to.archives.restore(path, 'empty', unwatched);
    expect((await to.store.counts()).foods).toBe(41);
  });

  test('[SRV-4] what was not foreseen while it is restored is told without what the database says, which may quote a name', async () => {
    await from.store.addFood({ name: 'Wheat porridge' }, label(5));
    await from.archives.write(path, undefined, unwatched);
    const to = await opened();
    const file = new SqliteDatabase(join(folder, `store-${places}`, 'platewright.sqlite'));
    file.exec(`create trigger quotes before insert on foods begin select json_extract('{}', new.name); end`);
    file.close();
    const told = to.archives.restore(path, 'empty', unwatched);
    await expect(told).rejects.toMatchObject({ code: 'program-fault', message: expect.stringContaining('SQLITE_ERROR') });
    await expect(told).rejects.not.toThrow(/wheat|porridge/i);
  });

  test('[ARC-7] a workspace file of an earlier program is looked at and restored the same way', async () => {
    const file = join(import.meta.dirname, '../storage/migrations/fixtures/workspace-v3.json');
    expect(await from.archives.look(file, unwatched)).toMatchObject({
      kind: 'workspace-file',
      rows: { foods: 4, labels: 8, photos: 1 },
      damaged: 0,
    });
    expect((await from.archives.restore(file, 'empty', unwatched)).added).toMatchObject({ foods: 4, labels: 8 });
  });
});

describe('beside what is here', () => {
  test('[ARC-8] what is new is added, what stands is left as it is, what differs is told', async () => {
    await fill(from.store);
    await from.archives.write(path, undefined, unwatched);
    const to = await opened();
    await to.archives.restore(path, 'empty', unwatched);
    const again = await to.archives.restore(path, 'beside', unwatched);
    expect(again).toMatchObject({ added: {}, leftOut: {} });
    expect(again.same).toBe(41 + 42 + 1 + 2 + 1 + 1 + 1 + 40 + 1);

    // Here: a renamed plate and a newer reading. There: a newer reading too, another food, a food of the same bar code.
    await to.store.plates.put({ ...plate, title: 'renamed here' }, 1);
    const [ham] = await from.store.listFoods({ search: 'ham' });
    await from.store.addLabel(ham!.id, 2, label(900));
    await from.store.addFood({ name: 'New there', gtin: '00000012345670' }, label(77));
    await from.store.addFood({ name: 'Twin there', gtin: '00000000000017' }, label(78));
    await to.store.addFood({ name: 'Twin here', gtin: '00000000000017' }, label(79));
    // One name: without a number on either side it is one food; two numbers are two sizes.
    await from.store.addFood({ name: 'Oat  drink', maker: 'Mill' }, label(80));
    await to.store.addFood({ name: 'oat drink', maker: 'MILL', gtin: '00000000000024' }, label(81));
    await from.store.addFood({ name: 'Broth', gtin: '00000000000031' }, label(82));
    await to.store.addFood({ name: 'Broth', gtin: '00000000000048' }, label(83));
    const second = join(folder, `second-${places}.zip`);
    await from.archives.write(second, undefined, unwatched);
    const result = await to.archives.restore(second, 'beside', unwatched);
    expect(result.added).toEqual({ foods: 2, labels: 3 });
    expect(result.leftOut).toEqual({ differs: 1, 'bar-code-taken': 1, 'name-taken': 1, 'part-left-out': 2 });
    expect(result.examples).toContainEqual({ table: 'foods', id: expect.any(String), reason: 'bar-code-taken', name: 'Twin there' });
    expect((await to.store.plates.get('on-bread'))?.value.title).toBe('renamed here');
    const sodium = new Map((await standingSodium(to.store)).map(([name, mg]) => [name, mg]));
    expect(sodium.get('Ham “sliced”\n')).toBe(900);
    expect(sodium.get('New there')).toBe(77);
    expect(sodium.get('Twin here')).toBe(79);
    expect(sodium.has('Twin there')).toBe(false);
  });

  test('[ARC-9] an older reading never takes the place of a newer one that stands here', async () => {
    const { food } = await from.store.addFood({ name: 'Ham' }, label(600));
    await from.archives.write(path, undefined, unwatched);
    const to = await opened();
    await to.archives.restore(path, 'empty', unwatched);
    await from.store.addLabel(food.id, 1, label(700));
    await new Promise(later => setTimeout(later, 5));
    await to.store.addLabel(food.id, 1, label(500));
    const second = join(folder, `older-${places}.zip`);
    await from.archives.write(second, undefined, unwatched);
    expect(await to.archives.restore(second, 'beside', unwatched)).toMatchObject({ added: {}, leftOut: { 'older-reading': 1 } });
    expect(await standingSodium(to.store)).toEqual([['Ham', 500]]);
  });

  test('[ARC-9] a newer correction, a recheck day taken off and a withdrawal stay as they are here', async () => {
    const { food, label: first } = await from.store.addFood({ name: 'Ham' }, label(600));
    const { label: second } = await from.store.addFood({ name: 'Cheese' }, label(400, { recheckOn: '2027-01-01' }));
    await from.archives.write(path, undefined, unwatched);
    const to = await opened();
    await to.archives.restore(path, 'empty', unwatched);
    await from.store.addLabel(food.id, 1, label(111, { kind: 'correction', correctsLabelId: first.id, reason: 'misread there' }));
    await from.store.withdrawLabel(second.id, 1, 'not there any more');
    await new Promise(later => setTimeout(later, 5));
    await to.store.addLabel(food.id, 1, label(222, { kind: 'correction', correctsLabelId: first.id, reason: 'misread here' }));
    await to.store.setRecheck(second.id, '2027-01-01', null);
    const later = join(folder, `corrected-${places}.zip`);
    await from.archives.write(later, undefined, unwatched);
    const { added, leftOut } = await to.archives.restore(later, 'beside', unwatched);
    expect({ added, leftOut }).toEqual({ added: {}, leftOut: { 'older-reading': 1, differs: 2 } });
    expect(await standingSodium(to.store)).toEqual([
      ['Cheese', 400],
      ['Ham', 222],
    ]);
  });

  test('[ARC-5] an archive never takes the place of a file that stands there', async () => {
    writeFileSync(path, 'my own');
    expect(await fault(from.archives.write(path, undefined, unwatched))).toBe('output-not-written');
    expect(readFileSync(path, 'utf8')).toBe('my own');
  });

  test('[ARC-10] the demo of an archive is not mixed into what is here; into an empty workspace it comes along', async () => {
    await from.store.applyImport({ fileName: 'demo.csv', isDemo: true, labels: [{ begins: { name: 'Demo soup' }, label: label(700) }] });
    await from.store.addFood({ name: 'Own' }, label(5));
    await from.archives.write(path, undefined, unwatched);
    const to = await opened();
    await to.store.applyImport({ fileName: 'demo.csv', isDemo: true, labels: [{ begins: { name: 'Demo soup' }, label: label(700) }] });
    const { added, leftOut } = await to.archives.restore(path, 'beside', unwatched);
    expect(added).toMatchObject({ foods: 1, labels: 1 });
    expect(leftOut).toMatchObject({ demo: expect.any(Number) });
    expect(await standingSodium(to.store)).toEqual([
      ['Demo soup', 700],
      ['Own', 5],
    ]);
    const empty = await opened();
    await empty.store.applyImport({ fileName: 'demo.csv', isDemo: true, labels: [{ begins: { name: 'Other demo' }, label: label(1) }] });
    await empty.archives.restore(path, 'empty', unwatched);
    expect(await everyRow(empty.store)).toEqual(await everyRow(from.store));
  });
});
