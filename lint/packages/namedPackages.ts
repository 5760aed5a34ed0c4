import { existsSync, globSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

const named = /(?:\bfrom\s+|\bimport\s+|\bimport\(\s*|@import\s+)['"]([^'"]+)['"]/g;

/** Names of the packages that the sources in a folder import, those of tests apart; sorted. */
export function packagesNamedIn(folder: string): readonly string[] {
  if (!existsSync(folder)) return [];
  const files = globSync('**/*.{ts,tsx,css}', { cwd: folder }).filter(path => !/\.(test|fixture)\./.test(path));
  const names = files.flatMap(path => [...readFileSync(join(folder, path), 'utf8').matchAll(named)].map(([, name]) => name!));
  return [...new Set(names.filter(isOfPackage).map(packageName))].sort();
}

/** "./x.ts" is a file, "#core/x.ts" a part of the program, "node:fs" of Node. */
function isOfPackage(name: string): boolean {
  return /^[@a-z]/.test(name) && !name.includes(':');
}

/** "react-dom/client" is of react-dom, "@tanstack/react-query" a name as it stands. */
function packageName(name: string): string {
  return name
    .split('/')
    .slice(0, name.startsWith('@') ? 2 : 1)
    .join('/');
}
