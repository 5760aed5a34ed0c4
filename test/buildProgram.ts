import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { digestOfSources } from '#adapters/files/digestOfSources.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
/** As deep as `src/cli` and `src/server`: the program finds what it ships two folders above. */
const folder = join(root, 'dist/program');
const madeOf = join(root, 'dist/program.made-of');
const sources = ['src/{adapters,app,cli,core,server}/**/*.ts', 'data/**/*.{json,ts}', 'test/buildProgram.ts', 'package-lock.json'];

/** How a source names the thread that it starts. */
const thread = /new URL\('(\.\/\w+)\.ts', import\.meta\.url\)/g;
/** They bring native parts or files that they look for beside themselves, or are loaded only when they are needed. */
const apart = ['better-sqlite3', 'docx', 'highs', 'pg', 'vite'];

/**
 * Before the first test that starts the program: its thousand modules in some hundred files, built when the sources have changed. A third of what a start takes was finding, reading and
 * stripping them. Nothing is shortened or renamed on purpose; the sources as they stand are started by bin/platewright, and a release by its own test.
 */
export default async function buildProgram(): Promise<void> {
  const digest = digestOfSources(root, sources);
  if (existsSync(madeOf) && readFileSync(madeOf, 'utf8') === digest) return;
  const { build } = await import('vite');
  const built = await build({
    root,
    configFile: false,
    logLevel: 'error',
    ssr: { noExternal: true, external: apart },
    plugins: [
      {
        name: 'threads',
        enforce: 'pre',
        async transform(source, id) {
          for (const [, name] of source.matchAll(thread)) {
            const resolved = await this.resolve(`${name}.ts`, id);
            if (resolved !== null) this.emitFile({ type: 'chunk', id: resolved.id, fileName: `${basename(name!)}.mjs` });
          }
          return source.replace(thread, "new URL('$1.mjs', import.meta.url)");
        },
      },
    ],
    build: {
      ssr: 'src/cli/main.ts',
      write: false,
      minify: false,
      rolldownOptions: { output: { entryFileNames: '[name].mjs', chunkFileNames: '[name]-[hash].mjs' } },
    },
  });
  if (!('output' in built)) throw new Error('the program was not built');
  mkdirSync(folder, { recursive: true });
  for (const file of built.output) writeWhole(join(folder, file.fileName), file.type === 'chunk' ? file.code : file.source);
  writeWhole(madeOf, digest);
}

/** Another run of the tests may be starting it. */
function writeWhole(path: string, content: string | Uint8Array): void {
  writeFileSync(`${path}.${process.pid}`, content);
  renameSync(`${path}.${process.pid}`, path);
}
