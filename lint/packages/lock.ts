import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

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
  /** Whether the program itself needs it, not its tests and checks alone. */
  readonly isProduction: boolean;
}

export interface Lock {
  readonly root: z.infer<typeof packageInLock>;
  readonly packages: readonly LockedPackage[];
}

/** package-lock.json of a folder. @throws ZodError when it is of another form */
export function readLock(folder: string): Lock {
  const { packages } = lockFile.parse(JSON.parse(readFileSync(join(folder, 'package-lock.json'), 'utf8')));
  const { '': root, ...others } = packages;
  if (root === undefined) throw new Error('package-lock.json names no project.');
  return {
    root,
    packages: Object.entries(others).map(([path, entry]) => ({
      ...entry,
      path,
      name: entry.name ?? path.slice(path.lastIndexOf('node_modules/') + 'node_modules/'.length),
      isProduction: !entry.dev && !entry.devOptional,
    })),
  };
}
