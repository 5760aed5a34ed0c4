import { spawnSync } from 'node:child_process';
import { chmodSync, chownSync } from 'node:fs';

const isRoot = process.getuid?.() === 0;
const nobody = 65_534;

/** Root may write into every folder. Begun so, a command may not (capabilities(7)), and still reads the project, wherever that lies. */
const layDown = ['setpriv', '--inh-caps=-dac_override', '--bounding-set=-dac_override'];

/** Not on Windows, which has other rights than modes, nor where root may lay down none of its powers, as in some containers. */
export const canCloseFolders: boolean = isRoot
  ? spawnSync(layDown[0]!, [...layDown.slice(1), 'true']).status === 0
  : process.platform !== 'win32';

/** A command, as spawn takes it, to which a folder may be closed. */
export function asAnybody(...command: readonly string[]): [program: string, args: string[]] {
  const [program, ...args] = isRoot && canCloseFolders ? [...layDown, ...command] : command;
  return [program!, args];
}

/** Root gives it to another user, who may write in it alone; anybody else takes the right from themselves. */
export function closeFolder(folder: string): void {
  if (isRoot) chownSync(folder, nobody, nobody);
  chmodSync(folder, isRoot ? 0o755 : 0o500);
}

export function openFolder(folder: string): void {
  if (isRoot) chownSync(folder, 0, 0);
  chmodSync(folder, 0o700);
}
