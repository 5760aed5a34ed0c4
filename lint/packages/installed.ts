import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const packageJson = z.object({
  version: z.string().default(''),
  license: z.unknown().optional(),
  scripts: z.record(z.string(), z.string()).default({}),
});

/** A package as it lies on the disk. */
export interface InstalledPackage {
  /** As package-lock.json writes it: `node_modules/pg`. */
  readonly path: string;
  readonly version: string;
  /** What its package.json says, where that is a text. */
  readonly license: string | undefined;
  /** What npm would run when it is installed; a binding.gyp is compiled although no script says so. */
  readonly installScripts: readonly string[];
}

/** Every package in node_modules of a folder, at any depth. */
export function installedPackages(folder: string, under = 'node_modules'): readonly InstalledPackage[] {
  if (!existsSync(join(folder, under))) return [];
  return readdirSync(join(folder, under))
    .filter(name => !name.startsWith('.'))
    .flatMap(name => (name.startsWith('@') ? readdirSync(join(folder, under, name)).map(inner => `${name}/${inner}`) : [name]))
    .map(name => `${under}/${name}`)
    .flatMap(path => [installedPackage(folder, path), ...installedPackages(folder, `${path}/node_modules`)]);
}

function installedPackage(folder: string, path: string): InstalledPackage {
  const file = join(folder, path, 'package.json');
  const { version, license, scripts } = packageJson.parse(existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : {});
  const named = ['preinstall', 'install', 'postinstall'].filter(name => scripts[name] !== undefined);
  const compiles = named.length === 0 && existsSync(join(folder, path, 'binding.gyp'));
  return {
    path,
    version,
    license: typeof license === 'string' ? license : undefined,
    installScripts: compiles ? ['binding.gyp'] : named,
  };
}
