import { rmSync } from 'node:fs';
import { lstat, readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';

const underWay = new Set<string>();

process.on('exit', () => {
  for (const path of underWay) rmSync(path, { recursive: true, force: true });
});

/** From here on the path is removed when the program ends, whatever ends it but a kill. */
export function beginUnfinished(path: string): void {
  underWay.add(path);
}

export function endUnfinished(path: string): void {
  underWay.delete(path);
}

/** A name for something unfinished tells whose it is. */
export function unfinishedName(prefix: string): string {
  return `${prefix}${process.pid}-`;
}

/** Removes what programs left behind that were killed: names that `unfinishedName` made, of this user, whose program is gone. */
export async function sweepUnfinished(folder: string, prefix: string): Promise<void> {
  for (const name of await readdir(folder).catch(() => [])) {
    const pid = name.startsWith(prefix) ? /^(\d+)-\w+$/.exec(name.slice(prefix.length))?.[1] : undefined;
    if (pid === undefined || isRunning(Number(pid))) continue;
    const path = join(folder, name);
    const owner = (await lstat(path).catch(() => undefined))?.uid;
    if (owner === undefined || owner !== (process.getuid?.() ?? owner)) continue;
    await rm(path, { recursive: true, force: true }).catch(() => undefined);
  }
}

function isRunning(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM';
  }
}
