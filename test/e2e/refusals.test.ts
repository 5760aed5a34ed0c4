import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, test } from 'vitest';
import { asAnybody, canCloseFolders, closeFolder, openFolder } from '../closedFolder.ts';
import { program } from '../program.ts';
import { ownCommand, removeFolder, startWorkbench } from './workbench.ts';

// What the start command says where the data folder or its database cannot be used (docs/rules/storage.md, STO-11).

function start(folder: string, port = '0') {
  return spawnSync(...asAnybody(process.execPath, program, 'start'), {
    encoding: 'utf8',
    timeout: 60_000,
    env: { ...process.env, PORT: port, PLATEWRIGHT_DATA: folder },
  });
}

/** Told in the catalogue's words and without a stack: exit code 1. */
const told = (words: RegExp) => ({
  status: 1,
  stdout: '',
  stderr: expect.toSatisfy((text: string) => words.test(text) && /\nNext: \S/.test(text) && !/\n\s+at |node:/.test(text)),
});

const databasesIn = (folder: string): string[] => readdirSync(folder).filter(name => name.includes('.sqlite'));

/** Every database of a folder, with its logs, and what stands in it. */
const contentOf = (folder: string): Record<string, string> =>
  Object.fromEntries(databasesIn(folder).map(name => [name, readFileSync(join(folder, name)).toString('latin1')]));

test.skipIf(!canCloseFolders)(
  '[STO-11] a folder that may not be written (skipped where a folder cannot be closed)',
  { timeout: 90_000 },
  () => {
    const folder = mkdtempSync(join(tmpdir(), 'platewright-'));
    closeFolder(folder);
    const { status, stderr } = start(folder);
    expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(/may not be written[\s\S]*Next: /) });
    expect(readdirSync(folder)).toEqual([]);
    openFolder(folder);
    removeFolder(folder);
  },
);

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

describe('what is in the place of the data', () => {
  const place = mkdtempSync(join(tmpdir(), 'platewright-'));

  test('[SRV-49] the data folder is a file, lies in one, or is a link that leads nowhere or in a circle', { timeout: 90_000 }, () => {
    writeFileSync(join(place, 'file'), 'mine');
    symlinkSync(join(place, 'nowhere'), join(place, 'dangling'));
    symlinkSync(join(place, 'circle'), join(place, 'circle'));
    for (const name of ['file', 'file/below', 'dangling', 'circle']) {
      expect(start(join(place, name))).toMatchObject(told(/The data folder cannot be used/));
    }
    expect(readdirSync(place).sort()).toEqual(['circle', 'dangling', 'file']);
    expect(readFileSync(join(place, 'file'), 'utf8')).toBe('mine');
  });

  test('[SRV-49] a shelf that is no database, and one that was cut off, stay as they are', { timeout: 120_000 }, async () => {
    const { folder, stop } = await startWorkbench();
    await stop();
    const shelf = join(folder, 'platewright.sqlite');
    truncateSync(shelf, 40_000);
    const cut = contentOf(folder);
    expect(start(folder)).toMatchObject(told(/The database is damaged/));
    expect(contentOf(folder)).toEqual(cut);
    writeFileSync(shelf, 'these are no pages '.repeat(1_000));
    const none = contentOf(folder);
    expect(start(folder)).toMatchObject(told(/The database is damaged/));
    expect(contentOf(folder)).toEqual(none);
    removeFolder(folder);
  });

  test('[SRV-49] a shelf that is missing or empty beside clients is told; a new one is begun when that is asked for', {
    timeout: 120_000,
  }, async () => {
    const first = await startWorkbench();
    await first.stop();
    const shelf = join(first.folder, 'platewright.sqlite');
    rmSync(shelf);
    expect(start(first.folder)).toMatchObject(told(/holds clients[\s\S]*--new-shelf/));
    expect(existsSync(shelf)).toBe(false);
    writeFileSync(shelf, '');
    expect(start(first.folder)).toMatchObject(told(/holds clients/));
    const again = await startWorkbench(first.folder, {}, { command: [...ownCommand, '--new-shelf'] });
    expect(((await (await again.fetch('/api/clients')).json()) as unknown[]).length).toBeGreaterThan(0);
    await again.stop();
    removeFolder(first.folder);
  });

  test('[SRV-49] a start that fails leaves no folder behind, and what was there', { timeout: 90_000 }, async () => {
    const server = createServer();
    const port = await new Promise<number>(done => {
      server.listen(0, '127.0.0.1', () => done((server.address() as { port: number }).port));
    });
    const folder = join(place, 'not', 'yet');
    expect(start(folder, String(port))).toMatchObject(told(/The port is in use[\s\S]*PORT/));
    expect(start(folder, 'no')).toMatchObject(told(/This is no port/));
    expect(existsSync(join(place, 'not'))).toBe(false);
    server.close();
    removeFolder(place);
  });
});
