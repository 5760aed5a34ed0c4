import { execFileSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, statfsSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import { passableFolder } from './postgresServer.fixture.ts';

/** A real file system of a few megabytes, which can be filled and given room again. */
export class SmallDisk {
  readonly folder = mkdtempSync(join(passableFolder, 'platewright-disk-'));

  constructor(megabytes: number) {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${megabytes}m`, 'tmpfs', this.folder], { stdio: 'pipe' });
  }

  /** Leaves room for so many bytes, in steps of 4,096. A database that writes meanwhile may take the rest of the room first: then none is left. */
  fill(room: number): void {
    this.makeRoom();
    const ballast = openSync(join(this.folder, 'ballast'), 'w');
    const step = Buffer.alloc(64 * 1024);
    try {
      for (let more = this.room() - room; more > 0; more = this.room() - room) writeSync(ballast, step, 0, Math.min(step.length, more));
    } catch (error) {
      if (!(error instanceof Error && 'code' in error && error.code === 'ENOSPC')) throw error;
    } finally {
      closeSync(ballast);
    }
  }

  private room(): number {
    const { bavail, bsize } = statfsSync(this.folder);
    return bavail * bsize;
  }

  makeRoom(): void {
    rmSync(join(this.folder, 'ballast'), { force: true });
  }

  end(): void {
    execFileSync('umount', ['--lazy', this.folder]);
    rmSync(this.folder, { recursive: true, force: true });
  }
}

/** Whether this user may mount a small disk in memory: root on Linux, outside of a locked container. */
export const maySmallDisk: boolean = mayMount();

function mayMount(): boolean {
  if (process.platform !== 'linux' || process.getuid?.() !== 0) return false;
  try {
    new SmallDisk(1).end();
    return true;
  } catch {
    return false;
  }
}
