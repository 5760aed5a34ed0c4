/**
 * Builds the demo's guides into a folder that opens from disk: `node data/demo/buildGuides.ts FOLDER [--pdf]`. The day is fixed, so that
 * every run gives the same pages.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const [folder, ...more] = process.argv.slice(2);
if (folder === undefined || folder.startsWith('-')) {
  process.stderr.write('The folder is missing\nNext: run `node data/demo/buildGuides.ts FOLDER [--pdf]`.\n');
  process.exit(1);
}
const guides = readdirSync(here('guides'))
  .filter(name => name.endsWith('.json'))
  .sort()
  .map(name => here(`guides/${name}`));
const build = ['guide', 'build', ...guides, '--labels', here('labels.csv'), '--plates', here('plates'), '--today', '2026-11-15'];
const { status } = spawnSync(process.execPath, [here('../../src/cli/main.ts'), ...build, '--out', folder, ...more], { stdio: 'inherit' });
process.exitCode = status ?? 1;
