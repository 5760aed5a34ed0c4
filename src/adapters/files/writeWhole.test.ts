import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { writeWhole } from './writeWhole.ts';

const place = mkdtempSync(join(tmpdir(), 'platewright-whole-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

test('[CLI-27] a file is replaced whole, and nothing is left beside it', async () => {
  const path = join(place, 'larger.json');
  writeFileSync(path, 'earlier');
  await writeWhole(path, 'later');
  expect([readFileSync(path, 'utf8'), readdirSync(place)]).toEqual(['later', ['larger.json']]);
});

test('[CLI-27] a place that cannot be written is told, and nothing is left beside it', async () => {
  for (const path of [join(place, 'nowhere', 'larger.json'), place])
    await expect(writeWhole(path, 'text')).rejects.toMatchObject({ code: 'output-not-written' });
  expect(readdirSync(place)).toEqual(['larger.json']);
});

test('[SRV-46] what a killed program left beside it is swept', async () => {
  const path = join(place, 'larger.json');
  writeFileSync(join(place, '.larger.json.writing-999999999-abcdef'), 'half');
  await writeWhole(path, 'later');
  expect(readdirSync(place)).toEqual(['larger.json']);
});
