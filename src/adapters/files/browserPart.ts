import { existsSync, readFileSync } from 'node:fs';
import { chmod, mkdir, mkdtemp, rename, rm, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Fault } from '#core/errors.ts';
import { digestOfSources } from './digestOfSources.ts';
import { beginUnfinished, endUnfinished, sweepUnfinished, unfinishedName } from './unfinished.ts';

const building = 'web.building-';
/** Everything that it is made of. */
const sources = ['src/web/**/*', 'src/core/**/*.ts', 'data/**/*.{json,ts}', 'vite.config.ts', 'package-lock.json'];

/**
 * The folder with the built browser part of the program in `root`. A packed release brings it along. In a clone it is built when it is made of something else than what stands there
 * now: beside its place first, so that a build that is stopped is never taken for a whole one.
 *
 * @throws Fault output-not-written
 */
export async function browserPart(root: string, say: (text: string) => void): Promise<string> {
  const brought = join(root, 'web');
  if (existsSync(join(brought, 'index.html'))) return brought;
  const built = join(root, 'dist', 'web');
  const madeOf = join(root, 'dist', 'web.made-of');
  const digest = digestOfSources(root, sources);
  if (existsSync(join(built, 'index.html')) && existsSync(madeOf) && readFileSync(madeOf, 'utf8') === digest) return built;
  say('Platewright: building its browser part, once …\n');
  try {
    await build(root, built);
    await writeFile(madeOf, digest, { mode: 0o644 });
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    if (!/^E(?:ACCES|PERM|ROFS|NOSPC|DQUOT)$/.test(code)) throw error;
    throw new Fault('output-not-written', `The browser part cannot be built in "${dirname(built)}" (${code}).`);
  }
  return built;
}

async function build(root: string, built: string): Promise<void> {
  await mkdir(dirname(built), { recursive: true });
  await sweepUnfinished(dirname(built), building);
  const fresh = await mkdtemp(join(dirname(built), unfinishedName(building)));
  beginUnfinished(fresh);
  const { NODE_ENV: before } = process.env;
  try {
    // The builder goes by it: started by whoever tests or develops, the program would be given React with all its checks, twice as large.
    process.env.NODE_ENV = 'production';
    const { build } = await import('vite');
    // The configuration's own root is where the program was started, which may be anywhere.
    await build({
      configFile: join(root, 'vite.config.ts'),
      root: join(root, 'src', 'web'),
      build: { outDir: join(fresh, 'whole'), emptyOutDir: true },
      logLevel: 'error',
    });
    // Another user of this computer may start the program from the same folder.
    await chmod(join(fresh, 'whole'), 0o755);
    await put(fresh, built);
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
    await rm(fresh, { recursive: true, force: true });
    endUnfinished(fresh);
  }
}

/**
 * Another program may build at the same time, and put its own there between the two: it is made of the same, and ours takes its place. What stood there is moved away whole before it is
 * removed: a folder that is emptied in its place may be another program's by then.
 */
async function put(fresh: string, built: string): Promise<void> {
  const whole = join(fresh, 'whole');
  for (let tries = 1; ; tries += 1) {
    await rename(built, join(fresh, `before-${tries}`)).catch(unlessGone);
    try {
      return await rename(whole, built);
    } catch (error) {
      const code = error instanceof Error && 'code' in error ? error.code : undefined;
      if (tries === 20 || (code !== 'ENOTEMPTY' && code !== 'EEXIST')) throw error;
    }
  }
}

function unlessGone(error: unknown): void {
  if (!(error instanceof Error && 'code' in error && error.code === 'ENOENT')) throw error;
}
