import { execFileSync } from 'node:child_process';
import { existsSync, globSync, lstatSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { readLock } from '../../lint/packages/lock.ts';
import { removeFolder, startWorkbench, type Workbench } from './workbench.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const isLong = process.env.PLATEWRIGHT_LONG !== undefined;
/** The system's Node, which may be too old for the program: its launcher then changes to the packaged one. */
const systemNode = ['/usr/bin/node', '/usr/local/bin/node'].find(path => existsSync(path)) ?? process.execPath;

const place = mkdtempSync(join(tmpdir(), 'platewright-release-'));
const packed = join(place, `platewright-${readLock(root).root.version}.tgz`);
const locked = readLock(root).packages.filter(({ dev, devOptional }) => !dev && !devOptional);

beforeAll(() => {
  execFileSync(process.execPath, ['--disable-warning=ExperimentalWarning', join(root, 'release/make.ts'), place], {
    cwd: place,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
}, 120_000);
afterAll(() => removeFolder(place), 120_000);

/** The packed files in a folder. */
function unpackTo(folder: string): void {
  mkdirSync(folder, { recursive: true });
  execFileSync('tar', ['xzf', packed, '--strip-components=1', '-C', folder]);
}

const json = async (answer: Response): Promise<Record<string, unknown>> => (await answer.json()) as Record<string, unknown>;

/** Starts it with a new data folder. */
async function startAndAsk(command: readonly string[], cwd: string): Promise<string> {
  const workbench = await startWorkbench(mkdtempSync(join(place, 'data-')), {}, { command, cwd });
  try {
    await expectAnswers(workbench);
  } finally {
    await workbench.stop();
  }
  return workbench.said();
}

/** The page with its script, and something of each thread: storage, estimates, tables, archives. */
async function expectAnswers(workbench: Workbench): Promise<void> {
  const page = await (await workbench.fetch('/')).text();
  const [, script] = /<script type="module"[^>]* src="([^"]+)"/.exec(page) ?? [];
  expect((await workbench.fetch(script!)).headers.get('content-type')).toBe('text/javascript; charset=utf-8');
  const foods = (await (await workbench.fetch('/api/foods')).json()) as { id: string }[];
  expect(foods.length).toBeGreaterThan(50);
  expect(await json(await workbench.fetch(`/api/foods/${foods[0]!.id}/minerals`))).toMatchObject({ kind: 'estimate' });
  const form = new FormData();
  form.set('file', new File(['name,sodiumMg\nOat biscuit,120\n'], 'one.csv'));
  expect(await json(await workbench.fetch('/api/imports/look', { method: 'POST', body: form }))).toMatchObject({ fileName: 'one.csv' });
  const made = await workbench.fetch('/api/archives', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ workId: crypto.randomUUID(), passphrase: '', withClients: false }),
  });
  expect([made.status, await json(made)]).toEqual([200, expect.objectContaining({ id: expect.any(String) })]);
}

describe('a packed release', () => {
  test('[REL-1] starts where there are no sources and no package but those that are installed with it', { timeout: 120_000 }, async () => {
    const home = join(place, 'without sources');
    unpackTo(join(home, 'node_modules/platewright'));
    for (const { path } of locked.filter(({ path }) => existsSync(join(root, path)))) {
      mkdirSync(dirname(join(home, path)), { recursive: true });
      if (!existsSync(join(home, path))) symlinkSync(join(root, path), join(home, path));
    }
    expect(existsSync(join(home, 'node_modules/vite'))).toBe(false);
    const launcher = join(home, 'node_modules/platewright/bin/platewright');
    expect(await startAndAsk([systemNode, launcher, 'start'], home)).toBe('');
  });

  test('[REL-2] holds the program as JavaScript, the built browser part and what both read, and nothing else', () => {
    const release = join(place, 'release');
    expect(readdirSync(release).sort()).toEqual([
      'LICENSE',
      'README.md',
      'bin',
      'data',
      'npm-shrinkwrap.json',
      'package.json',
      'platewright.cdx.json',
      'src',
      'web',
    ]);
    expect(readdirSync(join(release, 'src')).sort()).toEqual(['adapters', 'app', 'cli', 'core', 'server']);
    expect(globSync('**/*{.ts,.tsx,.map,.test.*,.fixture.*,.form*.json}', { cwd: release })).toEqual([]);
    const files = execFileSync('tar', ['tzf', packed], { encoding: 'utf8' }).trim().split('\n');
    expect(files.length).toBe(globSync('**/*', { cwd: release, withFileTypes: true }).filter(entry => entry.isFile()).length);
  });

  test('[REL-3] its lock names each package that is installed with it, with its digest, and no other', () => {
    const { packages } = JSON.parse(readFileSync(join(place, 'release/npm-shrinkwrap.json'), 'utf8'));
    const { '': own, ...others } = packages;
    expect(Object.keys(others)).toEqual(locked.map(({ path }) => path));
    expect(locked.map(({ path }) => others[path].integrity)).toEqual(locked.map(({ integrity }) => integrity));
    const project = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    expect([own.dependencies, own.devDependencies]).toEqual([project.dependencies, undefined]);
  });

  test('[REL-4] each package inside the browser part stands with the text of its licence beside it, and in the bill of materials', () => {
    const texts = readFileSync(join(place, 'release/web/licenses.md'), 'utf8');
    const inside = [...texts.matchAll(/^## (\S+) - (\S+) \((.+)\)$/gm)].map(([, name, version]) => `${name}@${version}`);
    expect(inside).toEqual(expect.arrayContaining([expect.stringMatching(/^react-dom@/), expect.stringMatching(/^pdfjs-dist@/)]));
    const { components } = JSON.parse(readFileSync(join(place, 'release/platewright.cdx.json'), 'utf8'));
    const named = (components as { name: string; version: string }[]).map(({ name, version }) => `${name}@${version}`);
    expect(inside.filter(name => !named.includes(name))).toEqual([]);
  });
});

/** Megabytes (2^20 bytes) of a folder. */
function megabytes(folder: string): number {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).map(name => lstatSync(join(folder, name)));
  return files.filter(file => file.isFile()).reduce((sum, { size }) => sum + size, 0) / 2 ** 20;
}

// A minute each, and npm asks the network: in the long run only.
if (isLong) {
  describe('installed by npm, under 300 MB', () => {
    test('[REL-1] [REL-5] as a package of another folder', { timeout: 600_000 }, async () => {
      const home = join(place, 'by npm install');
      mkdirSync(home);
      writeFileSync(join(home, 'package.json'), '{"private":true}');
      execFileSync('npm', ['install', '--ignore-scripts', '--no-audit', '--no-fund', packed], { cwd: home, stdio: 'ignore' });
      expect(megabytes(join(home, 'node_modules'))).toBeLessThan(300);
      expect(await startAndAsk([join(home, 'node_modules/.bin/platewright'), 'start'], home)).toBe('');
    });

    test('[REL-1] [REL-5] unpacked: its first start installs what its lock names', { timeout: 600_000 }, async () => {
      const home = join(place, 'unpacked');
      unpackTo(home);
      expect(await startAndAsk([systemNode, join(home, 'bin/platewright'), 'start'], place)).toContain('installing its packages');
      expect(megabytes(join(home, 'node_modules'))).toBeLessThan(300);
    });
  });
}
