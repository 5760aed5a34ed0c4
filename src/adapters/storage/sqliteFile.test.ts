import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { copyFileSync, cpSync, mkdtempSync, readFileSync, renameSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import SqliteDatabase from 'better-sqlite3';
import { afterAll, describe, expect, test } from 'vitest';
import { fault, label } from './contract/samples.ts';
import { openSqliteStore } from './openStore.ts';

const folders: string[] = [];
function newFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-file-'));
  folders.push(folder);
  return folder;
}
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true, force: true });
});
const fileOf = (folder: string): string => join(folder, 'platewright.sqlite');

describe('the SQLite file', () => {
  test('[STO-22] a file that is taken away or exchanged while the program runs is told; nothing is written where it would be lost', async () => {
    const changes: Record<string, (folder: string) => void> = {
      'taken away': folder => rmSync(fileOf(folder)),
      'its log taken away': folder => rmSync(`${fileOf(folder)}-wal`),
      exchanged: folder => {
        copyFileSync(fileOf(folder), `${fileOf(folder)}.copy`);
        renameSync(`${fileOf(folder)}.copy`, fileOf(folder));
      },
    };
    for (const [what, change] of Object.entries(changes)) {
      const folder = newFolder();
      const store = await openSqliteStore(folder);
      await store.addFood({ name: 'Ham' }, label(600));
      change(folder);
      expect(await fault(store.addFood({ name: 'Lost' }, label(1))), what).toBe('database-missing');
      expect(await store.counts(), what).toMatchObject({ foods: 1 });
      await store.close();
    }
  });

  test('[STO-22] a log without the database it belongs to is told, and left as it is', async () => {
    const folder = newFolder();
    const store = await openSqliteStore(folder);
    await store.addFood({ name: 'Ham' }, label(600));
    for (const damage of [rmSync, truncateSync]) {
      const copy = newFolder();
      cpSync(folder, copy, { recursive: true });
      const log = readFileSync(`${fileOf(copy)}-wal`);
      damage(fileOf(copy));
      expect(await fault(openSqliteStore(copy))).toBe('database-missing');
      expect(readFileSync(`${fileOf(copy)}-wal`).equals(log)).toBe(true);
      copyFileSync(fileOf(folder), fileOf(copy));
      const back = await openSqliteStore(copy);
      expect(await back.counts()).toMatchObject({ foods: 1 });
      await back.close();
    }
    await store.close();
  });

  test('[STO-10] a file that was half made when the first start was killed opens', { timeout: 120_000 }, async () => {
    const script = fileURLToPath(new URL('./openAndWrite.fixture.ts', import.meta.url));
    // From before the file is there to after it is made, the nearer the closer.
    for (let round = 0; round < 5; round++) {
      const folder = newFolder();
      const program = spawn(process.execPath, [script, folder], { stdio: 'ignore' });
      const exit = once(program, 'exit');
      while (program.exitCode === null && statSync(fileOf(folder), { throwIfNoEntry: false }) === undefined) await setTimeout(1);
      await setTimeout(round * 4);
      program.kill('SIGKILL');
      await exit;
      const store = await openSqliteStore(folder);
      expect((await store.counts()).foods).toBeLessThanOrEqual(1);
      await store.addFood({ name: 'Bread' }, label(1));
      await store.close();
    }
  });

  test('[STO-10] an empty file, and one with a head and no tables, open', async () => {
    const folder = newFolder();
    writeFileSync(fileOf(folder), '');
    await (await openSqliteStore(folder)).close();
    const other = newFolder();
    const file = new SqliteDatabase(fileOf(other));
    file.pragma('journal_mode = wal');
    file.close();
    const store = await openSqliteStore(other);
    expect(await store.counts()).toMatchObject({ foods: 0 });
    await store.close();
  });

  test('[STO-10] programs that open a new folder at once migrate once', async () => {
    const folder = newFolder();
    const stores = await Promise.all(Array.from({ length: 4 }, () => openSqliteStore(folder)));
    await Promise.all(stores.map((store, index) => store.addFood({ name: `Food ${index}` }, label(index))));
    for (const store of stores) expect(await store.counts()).toMatchObject({ foods: 4 });
    for (const store of stores) await store.close();
  });
});
