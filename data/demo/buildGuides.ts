/**
 * Builds the demo's guides into a folder that opens from disk: `node data/demo/buildGuides.ts FOLDER [--pdf]`. The day is fixed, so that
 * every run gives the same pages.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const [folder = 'demo-guides', ...more] = process.argv.slice(2);
const guides = readdirSync(here('guides'))
  .filter(name => name.endsWith('.json'))
  .sort()
  .map(name => here(`guides/${name}`));
const { status } = spawnSync(
  process.execPath,
  [
    here('../../src/cli/main.ts'),
    ...['guide', 'build', ...guides, '--labels', here('labels.csv'), '--plates', here('plates'), '--today', '2026-11-15'],
    ...['--out', folder, ...more],
  ],
  { stdio: 'inherit' },
);
process.exitCode = status ?? 1;
