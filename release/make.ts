/**
 * Makes a release (docs/decisions/0016-release.md): a package that runs without sources, in dist/release and packed by `npm pack`
 * beside it. `node release/make.ts FOLDER` puts both into another folder.
 */
import { spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { browserPart } from '#adapters/files/browserPart.ts';
import { billOfMaterials } from '../lint/packages/billOfMaterials.ts';
import { readLock } from '../lint/packages/lock.ts';
import { releasedLock, releasedPackage } from './packageFiles.ts';
import { writeProgram } from './program.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const place = resolve(process.argv[2] ?? join(root, 'dist'));
const release = join(place, 'release');

/** What the program reads from the disk at its own place, besides its modules. */
const asItStands = ['bin', 'LICENSE', 'README.md', 'data/demo/labels.csv', 'data/demo/plates', 'data/demo/guides', 'data/demo/handouts'];

rmSync(release, { recursive: true, force: true });
mkdirSync(release, { recursive: true });
writeProgram(root, 'src/cli/main.ts', release);
for (const path of asItStands) cpSync(join(root, path), join(release, path), { recursive: true });
cpSync(await browserPart(root, text => void process.stderr.write(text)), join(release, 'web'), { recursive: true });
writeJson('package.json', releasedPackage(root));
writeJson('npm-shrinkwrap.json', releasedLock(root));
writeFileSync(join(release, 'platewright.cdx.json'), billOfMaterials(readLock(root), 'platewright'));
process.exitCode =
  spawnSync('npm', ['pack', '--pack-destination', place], {
    cwd: release,
    stdio: 'inherit',
    shell: process.platform === 'win32',
  }).status ?? 1;

function writeJson(name: string, value: unknown): void {
  writeFileSync(join(release, name), `${JSON.stringify(value, undefined, 2)}\n`);
}
