import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { program } from './program.ts';

const labels = fileURLToPath(new URL('../data/demo/labels.csv', import.meta.url));
const place = mkdtempSync(join(tmpdir(), 'platewright-hostile-'));
afterAll(() => rmSync(place, { recursive: true }));

const levels = 100_000;
const lists = '['.repeat(levels) + ']'.repeat(levels);
const objects = `${'{"a":'.repeat(levels)}1${'}'.repeat(levels)}`;
const files = { 'lists.json': lists, 'objects.json': objects, 'nul.json': '{"id":"a\\u0000b","title":"\\u0000"}', 'nuls.json': '\0\0\0' };
for (const [name, text] of Object.entries(files)) writeFileSync(join(place, name), text);

const yardstick = 'low-in-sodium-as-eaten';
const commands: Readonly<Record<string, (file: string) => readonly string[]>> = {
  'a plate': file => ['survey', labels, '--plate', file, '--yardstick', yardstick],
  'a yardstick': file => ['survey', labels, '--plate', 'on-its-own', '--yardstick', file],
  'a guide': file => ['guide', 'build', file, '--labels', labels, '--out', join(place, 'out')],
  'a handout': file => ['handout', 'build', file, '--labels', labels, '--out', join(place, 'out')],
  'an assessment': file => ['prescribe', file],
};

describe('files that no person writes: 100,000 levels deep, or with NUL bytes', () => {
  it.each(Object.keys(commands))('[CLI-3] as %s they are refused in words, and nothing is written', { timeout: 120_000 }, what => {
    for (const name of Object.keys(files)) {
      const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...commands[what]!(join(place, name))], {
        encoding: 'utf8',
      });
      expect([name, status, stdout]).toEqual([name, 1, '']);
      expect(stderr).toMatch(/\nNext: \S/);
      expect(stderr).not.toMatch(/\n\s+at |made a mistake/);
    }
    expect(readdirSync(place).sort()).toEqual(Object.keys(files).sort());
  });

  it.each(['statement', 'label', 'minerals'])('[CLI-22] as lines of `%s` each has its answer', { timeout: 60_000 }, command => {
    const lines = [
      `{"id":${lists}}`,
      `{"id":"1","statement":${objects}}`,
      `{"id":"2","panel":${objects},"name":${lists}}`,
      '\0',
      '{"id":"1","statement":"SA\\u0000LT"}',
    ];
    const input = `${lines.join('\n')}\n`;
    const { status, stdout } = spawnSync(process.execPath, [program, command, '--jsonl'], { encoding: 'utf8', input, maxBuffer: 2 ** 26 });
    expect([status, stdout.trimEnd().split('\n').length]).toEqual([0, lines.length]);
    for (const line of stdout.trimEnd().split('\n')) expect(() => JSON.parse(line)).not.toThrow();
  });
});
