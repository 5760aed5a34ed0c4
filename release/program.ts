import { copyFileSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { stripTypeScriptTypes } from 'node:module';
import { dirname, join, posix } from 'node:path';

/** A file of the program as one of its sources names it: an import, a thread, a table. */
const named = /'((?:\.{1,2}|#\w+)\/[\w./-]+\.(?:ts|json))'/g;

/**
 * Writes the program as JavaScript: the source `main` and all that it reaches, each at its own place with its own lines, its types
 * taken out by Node as when it runs a source, which it refuses to do under node_modules. Tests, the browser part and what holds
 * types alone are not reached.
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
    const released = program.replace(named, (_, name: string) => {
      const reached = placeOf(name, path, rooms);
      if (!waiting.includes(reached)) waiting.push(reached);
      const way = posix.relative(posix.dirname(path), asScript(reached));
      return `'${way.startsWith('.') ? way : `./${way}`}'`;
    });
    writeFileSync(join(to, asScript(path)), released);
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

/** The ending .mjs says that it is a module; for .js Node would look for a package.json in each folder. */
function asScript(path: string): string {
  return path.replace(/\.ts$/, '.mjs');
}
