// Installs the packages when they are missing or older than package-lock.json; otherwise only looks (a few milliseconds).
// Everything it says goes to standard error, so that a command's results on standard output stay clean.
import { spawnSync } from 'node:child_process';
import { lstatSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** Modification time in milliseconds, 0 when there is no such file. */
const changedAt = path => statSync(`${root}${path}`, { throwIfNoEntry: false })?.mtimeMs ?? 0;

export function setUp() {
  // npm writes this file last, so a broken-off install counts as missing.
  if (changedAt('node_modules/.package-lock.json') >= changedAt('package-lock.json')) return;
  // A link leads to the packages of another folder, and npm would empty that one.
  if (lstatSync(`${root}node_modules`, { throwIfNoEntry: false })?.isSymbolicLink()) return;
  process.stderr.write('Platewright: installing its packages (npm ci), once …\n');
  const npm = spawnSync('npm', ['ci', '--include=dev', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (npm.status === 0) return;
  process.stderr.write(
    `The packages could not be installed\n${npm.error?.message ?? 'npm ci did not succeed; its own words are above.'}\n` +
      'Next: check the connection and that you may write to this folder, then run `npm ci` in it.\n',
  );
  process.exit(1);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) setUp();
