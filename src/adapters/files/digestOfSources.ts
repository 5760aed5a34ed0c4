import { createHash } from 'node:crypto';
import { globSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';

/** Of all files below `root` that the patterns name, but tests: what was built of other ones is old. */
export function digestOfSources(root: string, patterns: readonly string[]): string {
  const digest = createHash('sha256');
  const files = globSync(patterns, { cwd: root, withFileTypes: true }).filter(entry => entry.isFile() && !entry.name.includes('.test.'));
  for (const path of files.map(({ parentPath, name }) => join(parentPath, name)).sort())
    digest
      .update(`${relative(root, path)}\n`)
      .update(readFileSync(path))
      .update('\n');
  return digest.digest('hex');
}
