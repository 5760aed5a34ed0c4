import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { copyFolder } from './copyFolder.ts';

const root = mkdtempSync(join(tmpdir(), 'platewright-copies-'));
afterEach(() => rmSync(root, { recursive: true, force: true }));

// Else the copies of the one would take the place of the copies of the other.
test('[ARC-34] a data folder that was copied by hand makes its daily copies in itself, or where one was chosen', async () => {
  const [first, second, chosen] = ['first', 'second', 'chosen'].map(name => join(root, name)) as [string, string, string];
  mkdirSync(first, { recursive: true });
  const folder = copyFolder(first);
  await folder.remember({ ...folder.memory(), lastState: '1', lastAt: '2026-06-15T12:00:00.000Z' });
  cpSync(first, second, { recursive: true });
  expect(copyFolder(second).memory()).toEqual({ folder: join(second, 'copies'), lastState: '1', lastAt: '2026-06-15T12:00:00.000Z' });
  mkdirSync(join(second, 'copies'));
  writeFileSync(join(second, 'draft'), 'a copy');
  await copyFolder(second).finish(join(second, 'draft'), { day: '2026-06-15', holdsKey: true });
  const path = join(second, 'copies', 'platewright-copy-2026-06-15-unlocked.zip');
  expect(await copyFolder(second).list()).toMatchObject([{ day: '2026-06-15', bytes: 6, holdsKey: true, path }]);

  await folder.remember({ ...folder.memory(), folder: chosen });
  cpSync(first, second, { recursive: true });
  expect(copyFolder(second).memory().folder).toBe(chosen);
});

test('[ARC-36] a folder of choice belongs to one workspace: another neither lists, sweeps nor takes the copies in it', async () => {
  const [first, second, chosen] = ['first', 'second', 'chosen'].map(name => join(root, name)) as [string, string, string];
  for (const made of [first, second]) mkdirSync(made, { recursive: true });
  const [one, other] = [copyFolder(first), copyFolder(second)];
  await one.remember({ ...one.memory(), folder: chosen });
  writeFileSync(join(chosen, 'platewright-copy-2026-06-15.zip'), 'a copy');
  await expect(other.remember({ ...other.memory(), folder: chosen })).rejects.toMatchObject({ code: 'copies-folder-taken' });
  expect(other.memory().folder).toBe(join(second, 'copies'));
  // The one that has it has it after a restart, after another folder, and in a data folder that was moved.
  await one.remember({ ...one.memory(), folder: join(root, 'elsewhere'), earlierFolders: [chosen] });
  const again = copyFolder(first);
  await again.remember({ ...again.memory(), folder: chosen });
  cpSync(first, join(root, 'moved'), { recursive: true });
  expect(await copyFolder(join(root, 'moved')).list()).toHaveLength(1);
  expect(await copyFolder(join(root, 'moved')).draftPath()).toContain(chosen);
  // Both wrote it down before there were marks: the first that makes a copy has it.
  const unmarked = join(root, 'unmarked');
  mkdirSync(unmarked);
  writeFileSync(join(unmarked, 'platewright-copy-2026-06-15.zip'), 'a copy');
  await expect(other.remember({ ...other.memory(), folder: unmarked })).rejects.toMatchObject({ code: 'copies-folder-taken' });
  for (const made of [first, second]) writeFileSync(join(made, 'copies.json'), JSON.stringify({ folder: unmarked }));
  expect(await copyFolder(second).draftPath()).toContain(unmarked);
  await expect(copyFolder(first).list()).rejects.toMatchObject({ code: 'copies-folder-taken' });
  await expect(copyFolder(first).draftPath()).rejects.toMatchObject({ code: 'copies-folder-taken' });
  expect(existsSync(join(unmarked, 'platewright-copy-2026-06-15.zip'))).toBe(true);
});

test('[ARC-36] it knows its copies when its memory is lost, and nothing is written through a link', async () => {
  const [data, chosen, linked] = ['data', 'chosen', 'linked'].map(name => join(root, name)) as [string, string, string];
  for (const made of [data, linked]) mkdirSync(made, { recursive: true });
  const folder = copyFolder(data);
  await folder.remember({ ...folder.memory(), folder: `${chosen}/` });
  writeFileSync(join(chosen, 'platewright-copy-2026-06-15.zip'), 'a copy');
  // Another spelling of the same folder is no folder of before.
  await folder.remember({ ...folder.memory(), folder: `${chosen}//`, earlierFolders: [chosen] });
  expect([folder.memory().folder, await folder.earlier()]).toEqual([chosen, []]);
  for (const damaged of ['', '{', JSON.stringify({ folder: 7 })]) {
    writeFileSync(join(data, 'copies.json'), damaged);
    const again = copyFolder(data);
    await again.remember({ ...again.memory(), folder: chosen });
    expect(await again.list(), damaged).toHaveLength(1);
  }
  writeFileSync(join(root, 'precious'), 'my notes');
  symlinkSync(join(root, 'precious'), join(linked, '.platewright-copies.json'));
  await expect(folder.remember({ ...folder.memory(), folder: linked })).rejects.toMatchObject({ code: 'copies-folder-taken' });
  expect(readFileSync(join(root, 'precious'), 'utf8')).toBe('my notes');
  // What is swept at each start, and what is on a disk that is away.
  const swept = folder.remember({ ...folder.memory(), folder: join(data, 'waiting') });
  await expect(swept).rejects.toMatchObject({ code: 'copies-folder-not-usable' });
  rmSync(chosen, { recursive: true });
  await expect(folder.list()).rejects.toMatchObject({ code: 'copies-folder-not-usable' });
});
