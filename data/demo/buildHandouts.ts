/**
 * Builds the demo's handouts into a folder that opens from disk: `node data/demo/buildHandouts.ts FOLDER [--pdf]`. The day is fixed, so
 * that every run gives the same pages.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const [folder, ...more] = process.argv.slice(2);
if (folder === undefined || folder.startsWith('-')) {
  process.stderr.write('The folder is missing\nNext: run `node data/demo/buildHandouts.ts FOLDER [--pdf]`.\n');
  process.exit(1);
}
const handouts = readdirSync(here('handouts'))
  .filter(name => name.endsWith('.json'))
  .sort()
  .map(name => here(`handouts/${name}`));
const build = ['handout', 'build', ...handouts, '--labels', here('labels.csv'), '--plates', here('plates'), '--today', '2026-11-15'];
const { status } = spawnSync(process.execPath, [here('../../src/cli/main.ts'), ...build, '--out', folder, ...more], { stdio: 'inherit' });
process.exitCode = status ?? 1;
