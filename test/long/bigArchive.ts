/** A workspace of many labels and large pictures: into an archive, and out of it again, each in a process of its own. */
import { execFile } from 'node:child_process';
import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

export interface BigArchive {
  readonly labels: number;
  readonly photos: number;
  readonly archiveMb: number;
  readonly outSeconds: number;
  readonly inSeconds: number;
  /** The most that the process held which wrote, and which restored. */
  readonly outPeakMb: number;
  readonly inPeakMb: number;
  readonly isEqual: boolean;
}

interface Phase {
  readonly seconds: number;
  readonly peakMb: number;
  readonly digest?: string;
}

export async function bigArchive(labels: number, photos: number, photoBytes: number): Promise<BigArchive> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-long-archive-'));
  const script = fileURLToPath(new URL('./bigArchivePhase.fixture.ts', import.meta.url));
  const phase = async (name: string): Promise<Phase> => {
    const { stdout } = await promisify(execFile)(process.execPath, [script, name, folder, ...[labels, photos, photoBytes].map(String)]);
    return JSON.parse(stdout);
  };
  try {
    await phase('fill');
    const out = await phase('out');
    const back = await phase('in');
    const [from, to] = [await phase('digest-from'), await phase('digest-to')];
    return {
      labels,
      photos,
      archiveMb: Math.round(statSync(join(folder, 'all.zip')).size / 2 ** 20),
      outSeconds: out.seconds,
      inSeconds: back.seconds,
      outPeakMb: out.peakMb,
      inPeakMb: back.peakMb,
      isEqual: from.digest !== undefined && from.digest === to.digest,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
