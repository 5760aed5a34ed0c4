import { cpSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
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
  expect(copyFolder(second).pathOf('2026-06-15')).toBe(join(second, 'copies', 'platewright-copy-2026-06-15.zip'));

  await folder.remember({ ...folder.memory(), folder: chosen });
  cpSync(first, second, { recursive: true });
  expect(copyFolder(second).memory().folder).toBe(chosen);
});
