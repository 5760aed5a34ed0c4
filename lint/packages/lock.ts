import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { packagesNamedIn } from './namedPackages.ts';

const names = z.record(z.string(), z.string()).default({});

const packageInLock = z.object({
  name: z.string().optional(),
  version: z.string().default(''),
  integrity: z.string().optional(),
  resolved: z.string().optional(),
  license: z.string().optional(),
  link: z.boolean().default(false),
  inBundle: z.boolean().default(false),
  hasInstallScript: z.boolean().default(false),
  dev: z.boolean().default(false),
  devOptional: z.boolean().default(false),
  optional: z.boolean().default(false),
  dependencies: names,
  devDependencies: names,
  optionalDependencies: names,
});

const lockFile = z.object({ lockfileVersion: z.literal(3), packages: z.record(z.string(), packageInLock) });

/** One package of package-lock.json. */
export interface LockedPackage extends z.infer<typeof packageInLock> {
  /** Where npm puts it: `node_modules/pg`, `node_modules/fhir/node_modules/q`. */
  readonly path: string;
  readonly name: string;
  /** Whether people get it: installed with the program or bundled in its browser part, not for building and checking alone. */
  readonly isProduction: boolean;
}

type Found = Omit<LockedPackage, 'isProduction'>;

export interface Lock {
  readonly root: z.infer<typeof packageInLock>;
  readonly packages: readonly LockedPackage[];
  /** Names of the packages that the sources of the browser part import. They are bundled, so development of package.json in name only. */
  readonly bundled: readonly string[];
}

/** package-lock.json of a folder. @throws ZodError when it is of another form */
export function readLock(folder: string): Lock {
  const { packages } = lockFile.parse(JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')));
  const { '': root, ...others } = packages;
  if (root === undefined) throw new Error('package-lock.json names no project.');
  const found = Object.entries(others).map(([path, entry]): Found => {
    return { ...entry, path, name: entry.name ?? path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length) };
  });
  const bundled = packagesNamedIn(join(folder, 'src', 'web'));
  const reached = reachedFrom(bundled, new Map(found.map(entry => [entry.path, entry])));
  return {
    root,
    bundled,
    packages: found.map(entry => ({ ...entry, isProduction: (!entry.dev && !entry.devOptional) || reached.has(entry.path) })),
  };
}

/** Where the package `name` stands for the one at `path` (for the project itself ''): beside it, or in a folder above, as Node looks. */
export function findPackage<Entry>(name: string, path: string, at: ReadonlyMap<string, Entry>): Entry | undefined {
  for (let from = path; ; from = from.slice(0, Math.max(from.lastIndexOf('/node_modules/'), 0))) {
    const found = at.get(`${from === '' ? '' : `${from}/`}node_modules/${name}`);
    if (found !== undefined || from === '') return found;
  }
}

/** What a bundle of these packages may hold: they and all that they need. What they can do without is not bundled. */
function reachedFrom(names: readonly string[], at: ReadonlyMap<string, Found>): ReadonlySet<string> {
  const reached = new Set<string>();
  const walk = (needed: readonly string[], path: string): void => {
    for (const entry of needed.map(name => findPackage(name, path, at))) {
      if (entry === undefined || reached.has(entry.path)) continue;
      reached.add(entry.path);
      walk(Object.keys(entry.dependencies), entry.path);
    }
  };
  walk(names, '');
  return reached;
}
