import { spawnSync } from 'node:child_process';
import { cpSync, globSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Offending lines, each in a file of a small copy of the tree that has the project's own lint configuration. */
const offences: readonly [file: string, line: string][] = [
  ['src/core/errors.ts', "export * from '#core/quantity/amount.ts';"],
  ['src/core/quantity/a.ts', "export * from '#core/errors.ts';"],
  ['src/core/statement/a.ts', "export * from '#core/additive/additive.ts';"],
  ['src/core/reference/a.ts', "export * from '#core/statement/statement.ts';"],
  ['src/core/optimize/a.ts', "export * from '#core/reference/matchFood.ts';"],
  ['src/core/additive/a.ts', "export type { ReadLabel } from '#core/label/label.ts';"],
  ['src/core/label/a.ts', "export * from '#core/plate/plate.ts';"],
  ['src/core/recipe/a.ts', "export * from '#core/client/assessment.ts';"],
  ['src/core/plate/a.ts', "export * from '#core/yardstick/yardstick.ts';"],
  ['src/core/plate/b.ts', "export * from '../recipe/readRecipe.ts';"],
  ['src/core/client/a.ts', "export * from '#core/yardstick/yardstick.ts';"],
  ['src/core/yardstick/yardsticks/a.ts', "export * from '#core/menu/readMenu.ts';"],
  ['src/core/menu/a.ts', "export * from '#core/guide/guide.ts';"],
  ['src/core/guide/a.ts', "export * from '#core/recheck/recheck.ts';"],
  ['src/core/guide/b.ts', "export * from '#core/handout/handout.ts';"],
  ['src/core/handout/a.ts', "export * from '#core/recheck/recheck.ts';"],
  ['src/core/recheck/a.ts', "export * from '#core/guide/guide.ts';"],
  ['src/core/label/b.ts', "export * from '#app/importLabels.ts';"],
  ['src/core/label/c.ts', "export * from '#adapters/files/readTable.ts';"],
  ['src/core/label/d.ts', "export * from '../../cli/command.ts';"],
  ['src/core/label/e.ts', "export * from '../../server/app.ts';"],
  ['src/core/label/f.ts', "export * from './../../web/main.ts';"],
  ['src/core/label/g.ts', "export { readFileSync } from 'node:fs';"],
  ['src/core/label/h.ts', "export { parse } from 'papaparse';"],
  ['src/core/label/i.ts', 'export const today = Date.now();'],
  ['src/core/label/j.ts', 'export const dice = Math.random();'],
  ['src/core/label/k.ts', 'export const today = new Date();'],
  ['src/core/label/l.ts', "export const late = import('#core/menu/readMenu.ts');"],
  ['src/app/a.ts', "export * from '#adapters/files/readTable.ts';"],
  ['src/app/b.ts', "export { readFileSync } from 'node:fs';"],
  ['src/app/c.ts', "export * from '../cli/command.ts';"],
  ['src/adapters/files/a.ts', "export * from '#app/importLabels.ts';"],
  ['src/adapters/files/b.ts', "export * from '../../cli/command.ts';"],
  ['src/cli/commands/a.ts', "export * from '#adapters/files/readTable.ts';"],
  ['src/server/routes/a.ts', "export * from '#adapters/files/readTable.ts';"],
  ['src/web/screens/a.ts', "export * from '../../adapters/files/readTable.ts';"],
];

/** Casts where something crosses an edge, and a circle that types alone close. */
const edges: readonly [file: string, line: string][] = [
  ['src/app/never.ts', "export const it: string = JSON.parse('1') as never;"],
  ['src/app/any.ts', "export const it: string = JSON.parse('1') as any;"],
  ['src/server/unknown.ts', "export const it = JSON.parse('1') as unknown as string;"],
  ['src/web/screens/unknown.tsx', "export const it = JSON.parse('1') as unknown as string;"],
  ['bench/never.ts', "export const it: string = JSON.parse('1') as never;"],
  ['src/core/plate/circleA.ts', "import type { B } from './circleB.ts';\nexport interface A {\n  readonly b?: B;\n}"],
  ['src/core/plate/circleB.ts', "import type { A } from './circleA.ts';\nexport interface B {\n  readonly a?: A;\n}"],
];

const lawful: readonly [file: string, line: string][] = [
  ['src/core/statement/ok.ts', "export * from '#core/quantity/amount.ts';\nexport * from './statement.ts';"],
  ['src/core/additive/ok.ts', "export * from '#core/statement/statement.ts';"],
  ['src/core/label/ok.ts', "export * from '#core/additive/additive.ts';\nexport const day = new Date('2026-10-14');"],
  ['src/core/handout/ok.ts', "export * from '#core/guide/guide.ts';\nexport { syllable } from 'syllable';"],
  ['src/core/recheck/ok.ts', "export * from '#core/menu/menu.ts';\nexport * from '#core/errors.ts';"],
  ['src/core/label/ok.test.ts', "export { readFileSync } from 'node:fs';"],
  ['src/app/ok.ts', "export * from '#core/label/label.ts';\nexport * from './ports.ts';"],
  ['src/adapters/files/ok.ts', "export * from '#app/ports.ts';\nexport { readFileSync } from 'node:fs';"],
  ['src/cli/main.ts', "export * from '#adapters/files/readTable.ts';"],
  ['src/app/cast.test.ts', "export const it = JSON.parse('1') as unknown as string;"],
];

let tree: string;
let complaints: ReadonlyMap<string, string>;

beforeAll(() => {
  tree = mkdtempSync(join(tmpdir(), 'walls-'));
  for (const kept of ['biome.json', '.gitignore', 'lint']) cpSync(join(root, kept), join(tree, kept), { recursive: true });
  for (const [file, line] of [...offences, ...edges, ...lawful]) {
    mkdirSync(dirname(join(tree, file)), { recursive: true });
    writeFileSync(join(tree, file), `${line}\n`);
  }
  const biome = join(root, 'node_modules/@biomejs/biome/bin/biome');
  const run = spawnSync(process.execPath, [biome, 'lint', '--reporter=json', '--max-diagnostics=none', '.'], {
    cwd: tree,
    encoding: 'utf8',
  });
  const report: { diagnostics: { category: string; message: string; location: { path: string } }[] } = JSON.parse(run.stdout);
  complaints = new Map(
    report.diagnostics
      .filter(
        ({ category }) =>
          category === 'lint/style/noRestrictedImports' || category === 'lint/suspicious/noImportCycles' || category === 'plugin',
      )
      .map(({ location, message }) => [location.path, message]),
  );
});

afterAll(() => rmSync(tree, { recursive: true, force: true }));

describe('walls between the rooms', () => {
  it.each(offences)('[WALL-1] %s must not say: %s', file => {
    expect(complaints.get(file)).toBeTypeOf('string');
  });

  it.each(edges)('[WALL-5] %s must not say: %s', file => {
    expect(complaints.get(file)).toBeTypeOf('string');
  });

  it.each(lawful)('[WALL-2] %s may say: %s', file => {
    expect(complaints.get(file)).toBeUndefined();
  });
});

describe('the language of the core', () => {
  it('[WALL-3] fetch, process, document and the console are unknown words in the core', () => {
    const place = mkdtempSync(join(tmpdir(), 'core-types-'));
    try {
      const words = ['fetch', 'process', 'document', 'console', 'setTimeout', 'crypto'];
      for (const word of [...words, 'Intl']) writeFileSync(join(place, `${word}.ts`), `export const it = ${word};\n`);
      writeFileSync(
        join(place, 'tsconfig.json'),
        JSON.stringify({ extends: join(root, 'tsconfig.core.json'), include: ['*.ts'], exclude: [] }),
      );
      const run = spawnSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-p', place], {
        cwd: place,
        encoding: 'utf8',
      });
      const refused = [...run.stdout.matchAll(/^(\w+)\.ts.*error TS2(?:304|584|591|580|552|583): Cannot find name/gm)].map(
        match => match[1],
      );
      expect(refused.sort()).toEqual(words.sort());
    } finally {
      rmSync(place, { recursive: true, force: true });
    }
  });

  it('[WALL-4] every module of the core is compiled with those words alone', () => {
    const run = spawnSync(
      process.execPath,
      [join(root, 'node_modules/typescript/bin/tsc'), '-p', 'tsconfig.core.json', '--listFilesOnly'],
      {
        cwd: root,
        encoding: 'utf8',
      },
    );
    const listed = new Set(run.stdout.split('\n'));
    const files = globSync('src/core/**/*.ts', { cwd: root }).filter(file => !file.endsWith('.test.ts'));
    expect(files.length).toBeGreaterThan(5);
    expect(files.filter(file => !listed.has(join(root, file)))).toEqual([]);
  });
});
