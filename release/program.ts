import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { dirname, join, posix } from 'node:path';

/** A file of the program as one of its sources names it: an import, a thread, a table. */
const named = /'((?:\.{1,2}|#\w+)\/[\w./-]+\.(?:ts|json))'/g;

/**
 * Writes the program as JavaScript: the source `main` and all that it reaches, each at its own place with its own lines, as Node
 * itself takes the types out when it runs a source. Node does not do so under node_modules. What only types stand on, tests and
 * the browser part are not reached.
 */
export function writeProgram(root: string, main: string, to: string): void {
  const rooms = roomsOf(root);
  const waiting = [main];
  for (const path of waiting) {
    mkdirSync(dirname(join(to, path)), { recursive: true });
    if (path.endsWith('.json')) {
      copyFileSync(join(root, path), join(to, path));
      continue;
    }
    const program = stripTypeScriptTypes(readFileSync(join(root, path), 'utf8'));
    for (const [, name] of program.matchAll(named)) {
      const reached = placeOf(name!, path, rooms);
      if (!waiting.includes(reached)) waiting.push(reached);
    }
    writeFileSync(
      join(to, asScript(path)),
      program.replace(named, (_, name: string) => `'${asScript(name)}'`),
    );
  }
}

/** "#core/*" → "src/core/", from package.json. */
function roomsOf(root: string): ReadonlyMap<string, string> {
  const { imports }: { imports: Record<string, string> } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
  return new Map(Object.entries(imports).map(([name, place]) => [name.replace('/*', ''), place.replace(/^\.\/|\*$/g, '')]));
}

function placeOf(name: string, from: string, rooms: ReadonlyMap<string, string>): string {
  if (!name.startsWith('#')) return posix.join(posix.dirname(from), name);
  const room = name.slice(0, name.indexOf('/'));
  return posix.join(rooms.get(room) ?? room, name.slice(room.length));
}

function asScript(path: string): string {
  return path.replace(/\.ts$/, '.js');
}
