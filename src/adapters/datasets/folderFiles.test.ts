import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { folderFiles } from './folderFiles.ts';

const place = mkdtempSync(join(tmpdir(), 'platewright-datasets-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

test('[REF-12] an unpacked archive with one folder in it is that folder; a file is itself', async () => {
  const inner = join(place, 'download', 'sr28asc');
  mkdirSync(inner, { recursive: true });
  writeFileSync(join(inner, 'WEIGHT.txt'), 'abc');
  writeFileSync(join(inner, 'FOOD_DES.txt'), 'a');
  writeFileSync(join(inner, '.hidden'), '');
  const found = await folderFiles(join(place, 'download'));
  expect(found.map(({ name, bytes }) => [name, bytes])).toEqual([
    ['FOOD_DES.txt', 1],
    ['WEIGHT.txt', 3],
  ]);
  const [file] = await folderFiles(join(inner, 'WEIGHT.txt'));
  let text = '';
  for await (const bytes of file!.open()) text += Buffer.from(bytes).toString();
  expect(text).toBe('abc');
});

test('[REF-12] a path that is not there is told', async () => {
  await expect(folderFiles(join(place, 'nowhere'))).rejects.toMatchObject({ code: 'file-not-found' });
});
