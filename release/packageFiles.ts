import { readFileSync } from 'node:fs';
import { join } from 'node:path';

const kept = [
  'name',
  'version',
  'private',
  'description',
  'license',
  'type',
  'engines',
  'bin',
  'dependencies',
  'optionalDependencies',
] as const;

type Json = Record<string, unknown>;

/** package.json of a release: ours without what only a clone needs. */
export function releasedPackage(root: string): Json {
  const project = jsonOf(root, 'package.json') as { scripts: Json };
  return { ...keptOf(project), scripts: { start: project.scripts.start } };
}

/**
 * The lock that npm reads out of a package, npm-shrinkwrap.json: every package that is installed with the release stands there in
 * its version and with its digest, as in ours.
 */
export function releasedLock(root: string): Json {
  const { packages, ...head } = jsonOf(root, 'package-lock.json') as { packages: Record<string, Json> };
  const installed = Object.entries(packages).filter(([path, entry]) => path !== '' && !entry.dev && !entry.devOptional);
  return { ...head, packages: { '': keptOf(packages['']!), ...Object.fromEntries(installed) } };
}

function keptOf(project: Json): Json {
  return Object.fromEntries(kept.filter(name => project[name] !== undefined).map(name => [name, project[name]]));
}

function jsonOf(root: string, name: string): Json {
  return JSON.parse(readFileSync(join(root, name), 'utf8'));
}
