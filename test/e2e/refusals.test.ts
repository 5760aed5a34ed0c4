import { spawnSync } from 'node:child_process';
import { chmodSync, mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { removeFolder, startWorkbench } from './workbench.ts';

// What the start command says where the data folder or its database cannot be used (docs/rules/storage.md, STO-11).
const main = fileURLToPath(new URL('../../src/cli/main.ts', import.meta.url));
const isRoot = process.getuid?.() === 0;
const nobody = 65_534;

function start(folder: string, uid?: number) {
  return spawnSync(process.execPath, [main, 'start'], {
    encoding: 'utf8',
    timeout: 60_000,
    env: { ...process.env, PORT: '0', PLATEWRIGHT_DATA: folder },
    ...(uid === undefined ? {} : { uid, gid: uid }),
  });
}

test.skipIf(!isRoot)('[STO-11] a folder that may not be written (needs root to try as another user)', { timeout: 90_000 }, () => {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-'));
  chmodSync(folder, 0o755);
  const { status, stderr } = start(folder, nobody);
  expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(/may not be written[\s\S]*Next: /) });
  expect(readdirSync(folder)).toEqual([]);
  removeFolder(folder);
});

test('[STO-11] a database that another program holds', { timeout: 90_000 }, async () => {
  const workbench = await startWorkbench();
  await workbench.stop();
  const held = new Database(join(workbench.folder, readdirSync(workbench.folder).find(name => name.endsWith('.sqlite'))!));
  held.pragma('locking_mode = EXCLUSIVE');
  held.exec('BEGIN EXCLUSIVE');
  const { status, stderr } = start(workbench.folder);
  expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(/in use[\s\S]*Next: /) });
  held.exec('COMMIT');
  held.close();
  const again = await startWorkbench(workbench.folder);
  expect(((await (await again.fetch('/api/workspace')).json()) as { foods: number }).foods).toBe(72);
  await again.stop();
  removeFolder(workbench.folder);
});

test('[STO-11] a database that a newer program wrote is left as it is', { timeout: 90_000 }, async () => {
  const workbench = await startWorkbench();
  await workbench.stop();
  const database = new Database(join(workbench.folder, 'platewright.sqlite'));
  database.exec('UPDATE workspace SET schema_version = 9999');
  database.close();
  const { status, stderr } = start(workbench.folder);
  expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(/newer[\s\S]*Next: /) });
  removeFolder(workbench.folder);
});
