import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { chmodSync, copyFileSync, mkdtempSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import { afterAll, describe, expect, test } from 'vitest';
import { asAnybody, canCloseFolders, closeFolder, openFolder } from '../../../test/closedFolder.ts';
import { earlierFile } from './contract/earlierContract.ts';
import { everyRow } from './contract/samples.ts';
import { sqlite } from './engine.ts';
import { dataFolder, openSqliteStore } from './openStore.ts';
import { storeContract } from './storeContract.ts';

const folders: string[] = [];
function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-store-'));
  folders.push(folder);
  return folder;
}
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});

describe('SQLite', () => {
  let folder = '';
  storeContract({
    open: () => {
      folder = newFolder();
      return openSqliteStore(folder);
    },
    openAgain: () => openSqliteStore(folder),
    openEarlier: version => {
      folder = newFolder();
      copyFileSync(earlierFile(version), join(folder, 'platewright.sqlite'));
      return openSqliteStore(folder);
    },
    bytesType: sqlite.types.bytes,
    sql: async statement => {
      const file = new SqliteDatabase(join(folder, 'platewright.sqlite'));
      try {
        file.exec(statement);
      } finally {
        file.close();
      }
    },
  });

  test('[STO-7] every acknowledged write survives kill -9', async () => {
    const target = newFolder();
    const script = fileURLToPath(new URL('./writeForever.fixture.ts', import.meta.url));
    const writer: ChildProcess = spawn(process.execPath, [script, target], { stdio: ['ignore', 'pipe', 'inherit'] });
    let acknowledged = '';
    await new Promise<void>(enough => {
      writer.stdout?.on('data', chunk => {
        acknowledged += chunk;
        if (acknowledged.split('\n').length > 40) {
          writer.kill('SIGKILL');
        }
      });
      writer.once('exit', () => enough());
    });
    const ids = acknowledged.split('\n').slice(0, -1);
    expect(ids.length).toBeGreaterThanOrEqual(40);
    const store = await openSqliteStore(target);
    const kept = new Set((await store.listFoods()).map(({ id }) => id));
    await store.close();
    expect(ids.filter(id => !kept.has(id))).toEqual([]);
  });

  test('[STO-11] a locked file is told, and nothing is lost', async () => {
    const target = newFolder();
    const store = await openSqliteStore(target);
    const other = new SqliteDatabase(join(target, 'platewright.sqlite'));
    other.exec('begin immediate');
    await expect(store.addFood({ name: 'Ham' }, anyLabel)).rejects.toMatchObject({ code: 'database-locked' });
    other.exec('rollback');
    other.close();
    await store.addFood({ name: 'Ham' }, anyLabel);
    expect(await store.counts()).toMatchObject({ foods: 1 });
    await store.close();
  });

  test('[STO-11] a full disk is told, and what was saved before is there', async () => {
    const target = newFolder();
    const store = await openSqliteStore(target);
    await store.addFood({ name: 'Ham' }, anyLabel);
    await store.close();
    const room = statSync(join(target, 'platewright.sqlite')).size / 4096 + 20;
    const cramped = await openSqliteStore(target, undefined, room);
    await expect(
      cramped.applyImport({
        fileName: 'big',
        labels: Array.from({ length: 2_000 }, (_, index) => ({ begins: { name: `Food ${index}` }, label: anyLabel })),
      }),
    ).rejects.toMatchObject({ code: 'database-full' });
    expect(await cramped.counts()).toMatchObject({ foods: 1, labels: 1 });
    await cramped.close();
  });

  test('[STO-16] a damaged file is told, wherever the damage lies, and is left as it is', async () => {
    const whole = readFileSync(earlierFile(5));
    const damaged: Record<string, (file: string) => void> = {
      'no database': file => writeFileSync(file, 'Dear diary, '.repeat(500)),
      'a head that is none': file => writeFileSync(file, Buffer.concat([Buffer.alloc(100, 7), whole.subarray(100)])),
      'cut in half': file => truncateSync(file, whole.length / 2),
      'no version': file => changed(file, 'delete from workspace'),
      'an earlier version than its tables': file => changed(file, 'update workspace set schema_version = 1'),
      'noise behind the head': file => writeFileSync(file, Buffer.concat([whole.subarray(0, 512), Buffer.alloc(whole.length - 512, 0xa5)])),
    };
    for (const [what, damage] of Object.entries(damaged)) {
      const file = join(newFolder(), 'platewright.sqlite');
      writeFileSync(file, whole);
      damage(file);
      const before = readFileSync(file);
      const work = openSqliteStore(dirname(file)).then(store => everyRow(store).finally(() => store.close()));
      await expect(work, what).rejects.toMatchObject({ code: 'database-damaged' });
      // The head tells the kind of journal; all else is untouched.
      expect(readFileSync(file).subarray(100).equals(before.subarray(100)), what).toBe(true);
    }
  });

  /** Without a log beside it. */
  function changed(file: string, statement: string): void {
    const db = new SqliteDatabase(file);
    db.pragma('journal_mode = delete');
    db.exec(statement);
    db.close();
  }

  test('[STO-16] damage in one table leaves the others readable', async () => {
    const target = newFolder();
    const file = join(target, 'platewright.sqlite');
    copyFileSync(earlierFile(5), file);
    const look = new SqliteDatabase(file);
    const { rootpage } = look.prepare<[], { rootpage: number }>("select rootpage from sqlite_schema where name = 'handouts'").get()!;
    look.close();
    const bytes = readFileSync(file);
    writeFileSync(file, bytes.fill(0xa5, (rootpage - 1) * 512, rootpage * 512));
    const store = await openSqliteStore(target);
    await expect(store.handouts.list()).rejects.toMatchObject({ code: 'database-damaged' });
    expect(await store.listFoods()).toHaveLength(4);
    expect(await store.standingLabels()).toHaveLength(3);
    await store.close();
  });

  test.skipIf(!canCloseFolders)(
    '[STO-11] a folder or file that may not be written is told (skipped where a folder cannot be closed)',
    async () => {
      const target = newFolder();
      await (await openSqliteStore(target)).close();
      const script = fileURLToPath(new URL('./openAndWrite.fixture.ts', import.meta.url));
      const write = (where: string): string => execFileSync(...asAnybody(process.execPath, script, where), { encoding: 'utf8' }).trim();
      closeFolder(target);
      expect(write(target)).toBe('database-read-only');
      expect(write(join(target, 'deeper'))).toBe('database-read-only');
      openFolder(target);
      chmodSync(join(target, 'platewright.sqlite'), 0o400);
      expect(write(target)).toBe('database-read-only');
      expect(write(newFolder())).toBe('saved');
    },
  );

  test('the data folder follows each platform, and PLATEWRIGHT_DATA moves it', () => {
    expect(dataFolder({ PLATEWRIGHT_DATA: '/elsewhere' })).toBe('/elsewhere');
    expect(dataFolder({}, 'linux', '/home/d')).toBe('/home/d/.local/share/platewright');
    expect(dataFolder({ XDG_DATA_HOME: '/x' }, 'linux', '/home/d')).toBe('/x/platewright');
    expect(dataFolder({}, 'darwin', '/Users/d')).toBe('/Users/d/Library/Application Support/Platewright');
  });

  test.skipIf(process.platform === 'win32')("the folder is the user's alone (skipped on Windows, which has no modes)", async () => {
    const target = join(newFolder(), 'new');
    await (await openSqliteStore(target)).close();
    expect(statSync(target).mode & 0o777).toBe(0o700);
  });
});

const anyLabel = {
  kind: 'read',
  printed: { market: 'us', serving: {}, basis: 'per-serving', state: 'as-packaged', front: [], panel: { sodiumMg: 600 }, otherColumns: [] },
} as const;
