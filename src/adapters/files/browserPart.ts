import { existsSync, readdirSync, statSync } from 'node:fs';
import { chmod, mkdir, mkdtemp, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { Fault } from '#core/errors.ts';
import { beginUnfinished, endUnfinished, sweepUnfinished, unfinishedName } from './unfinished.ts';

const building = 'web.building-';

/**
 * The folder with the built browser part of the program in `root`. It is built when one of its sources is newer: beside its place first,
 * so that a build that is stopped is never taken for a whole one.
 *
 * @throws Fault output-not-written
 */
export async function browserPart(root: string, say: (text: string) => void): Promise<string> {
  const built = join(root, 'dist', 'web');
  const index = join(built, 'index.html');
  if (existsSync(index) && statSync(index).mtimeMs >= newest(join(root, 'src', 'web'))) return built;
  say('Platewright: building its browser part, once …\n');
  try {
    await build(root, built);
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
  try {
    const { build } = await import('vite');
    // The configuration's own root is where the program was started, which may be anywhere.
    await build({
      configFile: join(root, 'vite.config.ts'),
      root: join(root, 'src', 'web'),
      build: { outDir: fresh, emptyOutDir: true },
      logLevel: 'error',
    });
    // Another user of this computer may start the program from the same folder.
    await chmod(fresh, 0o755);
    await rm(built, { recursive: true, force: true });
    await rename(fresh, built);
  } finally {
    await rm(fresh, { recursive: true, force: true });
    endUnfinished(fresh);
  }
}

function newest(folder: string): number {
  let latest = 0;
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    latest = Math.max(latest, entry.isDirectory() ? newest(path) : statSync(path).mtimeMs);
  }
  return latest;
}
