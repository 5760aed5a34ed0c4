import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { type InstalledPackage, installedPackages } from './installed.ts';
import { isAllowed, type LicenceByName, licencesByName } from './licences.ts';
import { type LockedPackage, readLock } from './lock.ts';

/** What is let pass, by name and with its reason. */
export interface Exceptions {
  readonly licences: Readonly<Record<string, LicenceByName>>;
  /** Packages that bring a script for their install. None is run (.npmrc); each says how it works without. */
  readonly scripts: Readonly<Record<string, string>>;
}

const ours: Exceptions = {
  licences: licencesByName,
  scripts: { 'better-sqlite3': 'brings its compiled part for each kind of computer in its folder prebuilds' },
};

const asked = z.record(z.string(), z.string()).default({});
const project = z.object({ dependencies: asked, devDependencies: asked, optionalDependencies: asked });

/** What is wrong with the packages of a project: package.json, package-lock.json, .npmrc and node_modules of its folder. */
export function packageFaults(folder: string, exceptions: Exceptions = ours): string[] {
  const { root, packages } = readLock(folder);
  const wanted = project.parse(JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')));
  const installed = new Map(installedPackages(folder).map(found => [found.path, found]));
  const locked = new Map(packages.map(entry => [entry.path, entry]));
  return [
    ...(['dependencies', 'devDependencies', 'optionalDependencies'] as const).flatMap(kind => notPinned(wanted[kind], root[kind], kind)),
    ...packages.flatMap(entry => [
      ...originFaults(entry, locked),
      ...licenceFaults(entry, installed.get(entry.path), exceptions),
      ...installedFaults(entry, installed.get(entry.path), exceptions),
    ]),
    ...[...installed.keys()].filter(path => !locked.has(path)).map(path => `${path} is in no lock.`),
    ...exceptionsInVain(packages, exceptions),
    ...(/^ignore-scripts=true$/m.test(readFileSync(join(folder, '.npmrc'), 'utf8'))
      ? []
      : ['.npmrc lets packages run scripts when they are installed.']),
  ];
}

function notPinned(wanted: Record<string, string>, locked: Record<string, string>, kind: string): string[] {
  const loose = Object.entries(wanted).filter(([, version]) => !/^\d+\.\d+\.\d+(-[\w.]+)?$/.test(version));
  const other = [...new Set([...Object.keys(wanted), ...Object.keys(locked)])].filter(name => wanted[name] !== locked[name]);
  return [
    ...loose.map(([name, version]) => `${kind}: ${name} is asked for as "${version}", which is no exact version.`),
    ...other.map(name => `${kind}: ${name} is not the same in package.json and in the lock.`),
  ];
}

/** A package inside another's tarball stands under the digest of that one. */
function originFaults(entry: LockedPackage, locked: ReadonlyMap<string, LockedPackage>): string[] {
  const bearer = entry.inBundle ? locked.get(entry.path.slice(0, entry.path.lastIndexOf('/node_modules/'))) : entry;
  if (entry.inBundle && bearer?.inBundle) return originFaults(bearer, locked);
  // A lock without addresses takes the packages from the registry that npm is set to; the digest holds them either way.
  const elsewhere = entry.link || (entry.resolved !== undefined && !entry.resolved.startsWith('https://'));
  return [
    ...(/^sha512-[A-Za-z0-9+/]{86}==$/.test(bearer?.integrity ?? '') ? [] : [`${title(entry)} has no sha512 digest in the lock.`]),
    ...(elsewhere ? [`${title(entry)} comes from ${entry.resolved ?? 'a link'}, not from a registry.`] : []),
  ];
}

function licenceFaults(entry: LockedPackage, found: InstalledPackage | undefined, { licences }: Exceptions): string[] {
  if (!entry.isProduction) return [];
  if (licences[`${entry.name}@${entry.version}`] !== undefined) return [];
  // What lies on the disk speaks; for a computer of another kind only the lock does.
  const licence = found === undefined ? entry.license : found.license;
  if (licence === undefined) return [`${title(entry)} names no licence.`];
  if (licence !== entry.license) return [`${title(entry)} says ${licence}, the lock ${entry.license ?? 'nothing'}.`];
  const verdict = isAllowed(licence);
  if (verdict === undefined) return [`${title(entry)}: "${licence}" is no SPDX licence.`];
  return verdict ? [] : [`${title(entry)}: ${licence} is not on the list of licences.`];
}

function installedFaults(entry: LockedPackage, found: InstalledPackage | undefined, exceptions: Exceptions): string[] {
  // For a computer of another kind only the lock tells of a script.
  const brought = found?.installScripts ?? (entry.hasInstallScript ? ['so says the lock'] : []);
  const scripts = exceptions.scripts[entry.name] === undefined ? brought : [];
  const mayBeMissing = entry.optional || entry.devOptional;
  return [
    ...(found === undefined && !mayBeMissing ? [`${title(entry)} is not installed.`] : []),
    ...(found === undefined || found.version === entry.version ? [] : [`${title(entry)} is installed in version ${found.version}.`]),
    ...scripts.map(script => `${title(entry)} brings a script for its install (${script}) and is not on the list.`),
  ];
}

function exceptionsInVain(packages: readonly LockedPackage[], { licences, scripts }: Exceptions): string[] {
  const production = packages.filter(entry => entry.isProduction).map(({ name, version }) => `${name}@${version}`);
  const all = packages.map(({ name }) => name);
  return [
    ...Object.keys(licences).filter(name => !production.includes(name)),
    ...Object.keys(scripts).filter(name => !all.includes(name)),
  ].map(name => `${name} is excepted by name and is no package of the program any more.`);
}

function title({ name, version, isProduction }: LockedPackage): string {
  return `${name} ${version} (${isProduction ? 'production' : 'development'})`;
}
