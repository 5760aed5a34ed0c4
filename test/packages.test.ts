import { spawnSync } from 'node:child_process';
import { chmodSync, cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Spec, Validation } from '@cyclonedx/cyclonedx-library';
import { afterEach, describe, expect, it } from 'vitest';
import { billOfMaterials } from '../lint/packages/billOfMaterials.ts';
import { packageFaults } from '../lint/packages/findFaults.ts';
import { isAllowed } from '../lint/packages/licences.ts';
import { readLock } from '../lint/packages/lock.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const digest = `sha512-${'A'.repeat(86)}==`;
const none = { licences: {}, scripts: {} };
const places: string[] = [];
afterEach(() => {
  for (const place of places.splice(0)) rmSync(place, { recursive: true });
});

function folder(): string {
  const place = mkdtempSync(join(tmpdir(), 'platewright-packages-'));
  places.push(place);
  return place;
}

function write(place: string, name: string, text: unknown): void {
  mkdirSync(dirname(join(place, name)), { recursive: true });
  writeFileSync(join(place, name), typeof text === 'string' ? text : JSON.stringify(text));
}

/** A project of one production and one development package, without a fault. */
function project() {
  const place = folder();
  const asked = { dependencies: { kept: '1.0.0' }, devDependencies: { tool: '2.0.0' } };
  const lock = {
    lockfileVersion: 3,
    packages: {
      '': { version: '0.1.0', ...asked } as object,
      'node_modules/kept': { version: '1.0.0', integrity: digest, license: 'MIT' } as object,
      'node_modules/tool': { version: '2.0.0', integrity: digest, dev: true } as object,
    } as Record<string, object>,
  };
  const save = (): void => write(place, 'package-lock.json', lock);
  save();
  write(place, 'package.json', asked);
  write(place, '.npmrc', 'ignore-scripts=true\n');
  write(place, 'node_modules/kept/package.json', { version: '1.0.0', license: 'MIT' });
  write(place, 'node_modules/tool/package.json', { version: '2.0.0' });
  return { place, lock, save, faults: (exceptions = none) => packageFaults(place, exceptions) };
}

describe('the packages of the program', () => {
  it('[SUP-1] [SUP-2] [SUP-3] [SUP-4] [SUP-5] [SUP-6] are without a fault', () => {
    expect(packageFaults(root)).toEqual([]);
  });

  it.each(['zod', 'typescript'])('[SUP-2] %s without its digest in a copy of the lock is one fault', name => {
    const place = folder();
    for (const file of ['package.json', 'package-lock.json', '.npmrc']) cpSync(join(root, file), join(place, file));
    symlinkSync(join(root, 'node_modules'), join(place, 'node_modules'));
    expect(packageFaults(place)).toEqual([]);
    const lock = JSON.parse(readFileSync(join(place, 'package-lock.json'), 'utf8'));
    delete lock.packages[`node_modules/${name}`].integrity;
    write(place, 'package-lock.json', lock);
    expect(packageFaults(place)).toEqual([expect.stringMatching(new RegExp(`^${name} .* has no sha512 digest in the lock\\.$`))]);
  });
});

describe('a project of two packages', () => {
  it('[SUP-1] has no fault; one more package that is asked for loosely, or in another version, is one', () => {
    const { place, faults } = project();
    expect(faults()).toEqual([]);
    write(place, 'package.json', { dependencies: { kept: '^1.0.0' }, devDependencies: { tool: '2.0.0' } });
    expect(faults()).toEqual([
      'dependencies: kept is asked for as "^1.0.0", which is no exact version.',
      'dependencies: kept is not the same in package.json and in the lock.',
    ]);
  });

  it.each([
    [{ version: '1.0.0', license: 'MIT' }, 'kept 1.0.0 (production) has no sha512 digest in the lock.'],
    [
      { version: '1.0.0', license: 'MIT', integrity: 'sha1-2jmj7l5rSw0yVb/vlWAYkK/YBwk=' },
      'kept 1.0.0 (production) has no sha512 digest in the lock.',
    ],
    [
      { version: '1.0.0', license: 'MIT', integrity: digest, resolved: 'git+ssh://example.org/kept.git' },
      'kept 1.0.0 (production) comes from git+ssh://example.org/kept.git, not from a registry.',
    ],
    [
      { version: '1.0.0', license: 'MIT', integrity: digest, link: true, resolved: '../kept' },
      'kept 1.0.0 (production) comes from ../kept, not from a registry.',
    ],
    [{ version: '1.0.0', license: 'ISC', integrity: digest }, 'kept 1.0.0 (production) says MIT, the lock ISC.'],
    [{ version: '1.0.1', license: 'MIT', integrity: digest }, 'kept 1.0.1 (production) is installed in version 1.0.0.'],
  ])('[SUP-2] %j in the lock is a fault', (entry, fault) => {
    const { lock, save, faults } = project();
    lock.packages['node_modules/kept'] = entry;
    save();
    expect(faults()).toEqual([fault]);
  });

  it('[SUP-2] a development package needs its digest too; one inside a tarball stands under the digest of that one', () => {
    const { place, lock, save, faults } = project();
    lock.packages['node_modules/tool/node_modules/inner'] = { version: '3.0.0', dev: true, inBundle: true };
    write(place, 'node_modules/tool/node_modules/inner/package.json', { version: '3.0.0' });
    save();
    expect(faults()).toEqual([]);
    lock.packages['node_modules/tool'] = { version: '2.0.0', dev: true };
    save();
    expect(faults()).toEqual([
      'tool 2.0.0 (development) has no sha512 digest in the lock.',
      'inner 3.0.0 (development) has no sha512 digest in the lock.',
    ]);
  });

  it.each([
    [undefined, 'kept 1.0.0 (production) names no licence.'],
    ['GPL-3.0-only', 'kept 1.0.0 (production): GPL-3.0-only is not on the list of licences.'],
    ['(MIT AND GPL-3.0-only)', 'kept 1.0.0 (production): (MIT AND GPL-3.0-only) is not on the list of licences.'],
    ['SEE LICENSE IN LICENSE.txt', 'kept 1.0.0 (production): "SEE LICENSE IN LICENSE.txt" is no SPDX licence.'],
  ])('[SUP-3] the licence %s is a fault, and none where it is excepted by name', (license, fault) => {
    const { place, lock, save, faults } = project();
    lock.packages['node_modules/kept'] = { version: '1.0.0', integrity: digest, license };
    save();
    write(place, 'node_modules/kept/package.json', { version: '1.0.0', license });
    expect(faults()).toEqual([fault]);
    expect(faults({ ...none, licences: { 'kept@1.0.0': { why: 'a test' } } })).toEqual([]);
  });

  it('[SUP-3] of a choice one licence of the list is enough, of a sum each must be on it', () => {
    expect(
      ['MIT OR GPL-3.0-or-later', 'MIT AND Zlib', 'Apache-2.0 OR MIT', 'GPL-2.0-only OR AGPL-3.0-only', 'MIT/X11'].map(isAllowed),
    ).toEqual([true, true, true, false, undefined]);
  });

  it('[SUP-10] what a source of the browser part imports, and what that needs, is production; what a test imports is not', () => {
    const { place, lock, save, faults } = project();
    lock.packages['node_modules/tool'] = { version: '2.0.0', integrity: digest, dev: true, dependencies: { inner: '^3.0.0' } };
    lock.packages['node_modules/tool/node_modules/inner'] = { version: '3.0.0', integrity: digest, dev: true };
    write(place, 'node_modules/tool/node_modules/inner/package.json', { version: '3.0.0' });
    save();
    write(place, 'src/web/a.test.ts', "import { a } from 'tool';");
    expect(faults()).toEqual([]);
    for (const source of ["import { a } from 'tool/part';", "const { a } = await import('tool');", "import {\n  a,\n} from 'tool';"]) {
      write(place, 'src/web/inner/a.tsx', source);
      expect(faults()).toEqual(['tool 2.0.0 (production) names no licence.', 'inner 3.0.0 (production) names no licence.']);
      expect(JSON.parse(billOfMaterials(readLock(place), 'one')).dependencies).toContainEqual({
        ref: 'pkg:npm/one@0.1.0',
        dependsOn: ['pkg:npm/kept@1.0.0', 'pkg:npm/tool@2.0.0'],
      });
    }
  });

  it('[SUP-4] what no lock names is a fault, at any depth; so is what is missing', () => {
    const { place, lock, save, faults } = project();
    write(place, 'node_modules/@some/stranger/package.json', { version: '1.0.0', license: 'MIT' });
    write(place, 'node_modules/kept/node_modules/inner/package.json', { version: '1.0.0', license: 'MIT' });
    expect(faults()).toEqual(['node_modules/@some/stranger is in no lock.', 'node_modules/kept/node_modules/inner is in no lock.']);
    rmSync(join(place, 'node_modules/@some'), { recursive: true });
    rmSync(join(place, 'node_modules/kept'), { recursive: true });
    expect(faults()).toEqual(['kept 1.0.0 (production) is not installed.']);
    lock.packages['node_modules/kept'] = { version: '1.0.0', integrity: digest, license: 'MIT', optional: true };
    save();
    expect(faults()).toEqual([]);
  });

  it('[SUP-5] a script for the install is a fault, also one that is only a binding.gyp, and so is an .npmrc that lets it run', () => {
    const { place, faults } = project();
    write(place, 'node_modules/kept/package.json', { version: '1.0.0', license: 'MIT', scripts: { postinstall: 'node fetch.js' } });
    write(place, 'node_modules/tool/binding.gyp', '{}');
    expect(faults()).toEqual([
      'kept 1.0.0 (production) brings a script for its install (postinstall) and is not on the list.',
      'tool 2.0.0 (development) brings a script for its install (binding.gyp) and is not on the list.',
    ]);
    expect(faults({ ...none, scripts: { kept: 'a test', tool: 'a test' } })).toEqual([]);
    write(place, '.npmrc', '# ignore-scripts=true\n');
    expect(faults({ ...none, scripts: { kept: 'a test', tool: 'a test' } })).toEqual([
      '.npmrc lets packages run scripts when they are installed.',
    ]);
  });

  it('[SUP-5] a script that only the lock tells of, in a package for another kind of computer, is a fault', () => {
    const { lock, save, faults } = project();
    lock.packages['node_modules/away'] = { version: '1.0.0', integrity: digest, license: 'MIT', optional: true, hasInstallScript: true };
    save();
    expect(faults()).toEqual(['away 1.0.0 (production) brings a script for its install (so says the lock) and is not on the list.']);
  });

  it('[SUP-6] an exception for what is not there is a fault', () => {
    expect(project().faults({ licences: { 'gone@1.0.0': { why: 'a test' } }, scripts: { away: 'a test' } })).toEqual([
      'gone@1.0.0 is excepted by name and is no package of the program any more.',
      'away is excepted by name and is no package of the program any more.',
    ]);
  });
});

describe('the bill of materials', () => {
  const text = billOfMaterials(readLock(root), 'platewright');
  const components: { name: string; version: string; type: string; licenses?: unknown; hashes: { alg: string; content: string }[] }[] =
    JSON.parse(text).components;
  const validator = new Validation.JsonStrictValidator(Spec.Version.v1dot6);

  it('[SUP-7] is valid by the schema of CycloneDX 1.6, which refuses one that is broken', async () => {
    expect(await validator.validate(text)).toBeNull();
    expect(await validator.validate(text.replace('"SHA-512"', '"SHA-511"'))).not.toBeNull();
    expect(await validator.validate(text.replace('"id": "MIT"', '"id": "MITT"'))).not.toBeNull();
  });

  it('[SUP-7] names all that the program reaches from package.json, walked on the disk', () => {
    const { dependencies } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const reached = new Set<string>();
    const walk = (from: string, names: readonly string[]): void => {
      for (const name of names) {
        let at = from;
        while (at.length > root.length && !existsSync(join(at, 'node_modules', name))) at = dirname(at);
        const file = join(at, 'node_modules', name, 'package.json');
        if (reached.has(file) || !existsSync(file)) continue;
        reached.add(file);
        const inner = JSON.parse(readFileSync(file, 'utf8'));
        walk(dirname(file), Object.keys({ ...inner.dependencies, ...inner.optionalDependencies }));
      }
    };
    walk(root, [...Object.keys(dependencies), 'react', 'react-dom', '@tanstack/react-router']);
    const named = new Set(components.map(({ name, version }) => `${name}@${version}`));
    const found = [...reached].map(file => JSON.parse(readFileSync(file, 'utf8'))).map(({ name, version }) => `${name}@${version}`);
    expect(found.length).toBeGreaterThan(Object.keys(dependencies).length);
    expect(found.filter(name => !named.has(name))).toEqual([]);
  });

  it('[SUP-7] gives each a digest and, where one is granted, a licence', () => {
    expect(components.filter(({ hashes }) => !/^[0-9a-f]{128}$/.test(hashes[0]?.content ?? ''))).toEqual([]);
    const without = components.filter(({ licenses }) => licenses === undefined).map(({ name }) => name);
    expect(without).toEqual([]);
  });

  it('[SUP-7] is the same for the same lock, and has another number for another', () => {
    expect(billOfMaterials(readLock(root), 'platewright')).toBe(text);
    const number = (bill: string) => JSON.parse(bill).serialNumber;
    expect(number(billOfMaterials(readLock(root), 'other'))).not.toBe(number(text));
    // RFC 9562, section 5.8: version 8, variant 10.
    expect(number(text)).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });
});

describe('the Node that comes along', () => {
  const setup = readFileSync(join(root, 'bin/setup.mjs'), 'utf8');
  const known = [...setup.matchAll(/^ {2}'(\w+)-(\w+)': '([\w-]+)',$/gm)].map(([, os, cpu, name]) => ({ os, cpu, name }));

  it('[SUP-7] [SUP-8] each that setup knows stands in the lock for its kind of computer, new enough, and in the bill as a platform', () => {
    const { packages } = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8'));
    const bill: { name: string; type: string }[] = JSON.parse(billOfMaterials(readLock(root), 'platewright')).components;
    expect(known).toHaveLength(5);
    for (const { os, cpu, name } of known) {
      const entry = packages[`node_modules/${name}`];
      expect([[entry.os].flat(), [entry.cpu].flat()]).toEqual([[os], [cpu]]);
      const [major, minor] = entry.version.split('.').map(Number);
      expect(major > 24 || (major === 24 && minor >= 12)).toBe(true);
      expect(bill.find(part => part.name === name)?.type).toBe('platform');
    }
  });
});

/** Setup in a folder of its own, as a caller with another Node on another computer would meet it. */
function setUpAs(node: string, cpu: string) {
  const place = folder();
  for (const file of ['package.json', 'package-lock.json', 'bin/setup.mjs']) cpSync(join(root, file), join(place, file));
  write(place, 'node_modules/.package-lock.json', '{}');
  const pretended = `data:text/javascript,${encodeURIComponent(
    `Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '${node}' } });
     Object.defineProperty(process, 'arch', { value: '${cpu}' });`,
  )}`;
  const { status, stderr } = spawnSync(process.execPath, ['--import', pretended, join(place, 'bin/setup.mjs')], { encoding: 'utf8' });
  return { status, stderr };
}

describe('setup', () => {
  it('[SUP-8] a computer that no Node comes along for, and a Node too old: what to do', () => {
    expect(setUpAs('20.20.2', 'riscv64')).toEqual({
      status: 1,
      stderr: expect.stringMatching(/^This Node is too old\nNode 20\.20\.2 .* \(\w+-riscv64\)\.\nNext: install Node 24\.12 or newer/),
    });
  });

  it('[SUP-8] the Node that should have come along is missing: how to get it', () => {
    expect(setUpAs('24.11.1', process.arch)).toEqual({
      status: 1,
      stderr: expect.stringMatching(/^This Node is too old\n.* is missing\.\nNext: run `npm ci --include=optional`/),
    });
  });

  it.skipIf(process.platform === 'win32')(
    '[SUP-8] installs in a clone without what builds the browser part, and not where npm did (skipped on Windows, which has no sh)',
    () => {
      const home = folder();
      const said = (place: string): string => {
        cpSync(join(root, 'bin/setup.mjs'), join(home, place, 'bin/setup.mjs'));
        const env = { ...process.env, PATH: `${home}:${process.env.PATH}` };
        return spawnSync(process.execPath, [join(home, place, 'bin/setup.mjs')], { encoding: 'utf8', env }).stderr;
      };
      write(home, 'npm', '#!/bin/sh\necho "npm $*" >&2\n');
      chmodSync(join(home, 'npm'), 0o755);
      write(home, 'clone/package-lock.json', '{}');
      write(home, 'clone/vite.config.ts', '');
      write(home, 'clone/node_modules/.package-lock.json', '{}');
      expect(said('clone')).toContain('npm ci --ignore-scripts');
      write(home, 'clone/node_modules/vite/package.json', '{}');
      expect(said('clone')).toBe('');
      for (const place of ['unpacked', 'node_modules/platewright']) write(home, `${place}/npm-shrinkwrap.json`, '{}');
      expect(said('unpacked')).toContain('npm ci --ignore-scripts');
      expect(said('node_modules/platewright')).toBe('');
    },
  );

  it('[REL-6] the sources in a node_modules: how a release is made', () => {
    const home = folder();
    cpSync(join(root, 'bin'), join(home, 'node_modules/platewright/bin'), { recursive: true });
    write(home, 'node_modules/platewright/vite.config.ts', '');
    const { status, stderr } = spawnSync(process.execPath, [join(home, 'node_modules/platewright/bin/platewright')], { encoding: 'utf8' });
    expect([status, stderr]).toEqual([1, expect.stringMatching(/^This is no release\n.*\nNext: run `npm run release`/)]);
  });

  it('[SUP-8] a Node that is new enough needs none', () => {
    expect(setUpAs('24.12.0', 'riscv64')).toEqual({ status: 0, stderr: '' });
    expect(setUpAs('26.0.0', 'riscv64')).toEqual({ status: 0, stderr: '' });
  });
});
