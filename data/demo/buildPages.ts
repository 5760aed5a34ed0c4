import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));

/** Builds the demo's guides or handouts with the command line, as the script that was started was told: `FOLDER [--pdf]`. */
export function buildPages(command: 'guide' | 'handout', script: string): void {
  const [folder, ...more] = process.argv.slice(2);
  if (folder === undefined || folder.startsWith('-')) {
    process.stderr.write(`The folder is missing\nNext: run \`node data/demo/${script} FOLDER [--pdf]\`.\n`);
    process.exit(1);
  }
  const written = `${command}s`;
  const files = readdirSync(here(written))
    .filter(name => name.endsWith('.json'))
    .sort()
    .map(name => here(`${written}/${name}`));
  const build = [command, 'build', ...files, '--labels', here('labels.csv'), '--plates', here('plates'), '--today', '2026-11-15'];
  const { status } = spawnSync(process.execPath, [here('../../src/cli/main.ts'), ...build, '--out', folder, ...more], { stdio: 'inherit' });
  process.exitCode = status ?? 1;
}
