/** A workspace of many labels and large pictures: into an archive, and out of it again. Prints seconds, memory, and whether every row came back. */
import { createHash, randomFillSync } from 'node:crypto';
import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { threadArchives } from '#adapters/archive/threadArchives.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import type { NewLabel, Store } from '#app/store.ts';
import { unwatched } from '#app/watch.ts';

export interface BigArchive {
  readonly labels: number;
  readonly photos: number;
  readonly archiveMb: number;
  readonly outSeconds: number;
  readonly inSeconds: number;
  /** The most that the whole process held while it wrote and while it restored. */
  readonly outPeakMb: number;
  readonly inPeakMb: number;
  readonly isEqual: boolean;
}

const jpegStart = new Uint8Array([0xff, 0xd8, 0xff, 0xe0]);

export async function bigArchive(labels: number, photos: number, photoBytes: number): Promise<BigArchive> {
  const folder = mkdtempSync(join(tmpdir(), 'platewright-long-archive-'));
  const [from, to] = [join(folder, 'from'), join(folder, 'to')];
  try {
    const store = await openSqliteStore(from);
    await fill(store, labels, photos, photoBytes);
    const path = join(folder, 'all.zip');
    const out = await measured(() =>
      threadArchives(store, { engine: 'sqlite', folder: from }, '0', () => new Date()).write(path, undefined, unwatched),
    );
    const other = await openSqliteStore(to);
    const back = await measured(() =>
      threadArchives(other, { engine: 'sqlite', folder: to }, '0', () => new Date()).restore(path, 'empty', unwatched),
    );
    const isEqual = (await digest(store)) === (await digest(other));
    await store.close();
    await other.close();
    const archiveMb = Math.round(statSync(path).size / 2 ** 20);
    return {
      labels,
      photos,
      archiveMb,
      outSeconds: out.seconds,
      inSeconds: back.seconds,
      outPeakMb: out.peakMb,
      inPeakMb: back.peakMb,
      isEqual,
    };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

async function fill(store: Store, labels: number, photos: number, photoBytes: number): Promise<void> {
  const label = (at: number): NewLabel => ({
    kind: 'read',
    printed: {
      market: 'us',
      serving: { household: '1 cup', grams: 240 },
      basis: 'per-serving',
      state: 'as-packaged',
      front: ['no salt added'],
      panel: { energyKcal: 90 + (at % 200), sodiumMg: at % 900, potassiumMg: (at * 7) % 1200, proteinG: at % 30, fatG: at % 17 },
      otherColumns: [],
      statement: `Water, lentils, carrots, potassium chloride, disodium phosphate, spice number ${at}, onion powder, yeast extract.`,
    },
  });
  for (let from = 0; from < labels; from += 10_000) {
    const some = Array.from({ length: Math.min(10_000, labels - from) }, (_, at) => ({
      begins: { name: `Soup ${from + at}`, maker: `Maker ${(from + at) % 90}`, category: 'soups' },
      label: label(from + at),
    }));
    await store.applyImport({ fileName: `${from}.csv`, labels: some });
  }
  const standing = await store.standingLabels();
  for (let at = 0; at < photos; at += 1) {
    const bytes = randomFillSync(new Uint8Array(photoBytes));
    bytes.set(jpegStart);
    await store.addPhoto(standing[at % standing.length]!.label.id, { mime: 'image/jpeg', bytes });
  }
}

/** Of every row that an archive keeps. */
async function digest(store: Store): Promise<string> {
  const hash = createHash('sha256');
  await store.archived(async tables => {
    for (const { name, rows } of tables) {
      for await (const { bytes, ...row } of rows()) {
        hash.update(`${name}${JSON.stringify(row)}`);
        if (bytes instanceof Uint8Array) hash.update(bytes);
      }
    }
  });
  return hash.digest('hex');
}

/** Seconds, and the growth of the process's memory over what it held before (the store of the test is in the same process). */
async function measured(work: () => Promise<unknown>): Promise<{ seconds: number; peakMb: number }> {
  globalThis.gc?.();
  let peak = 0;
  const look = (): void => {
    const kb = Number(/VmRSS:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1] ?? 0);
    peak = Math.max(peak, kb);
  };
  const timer = setInterval(look, 50);
  const start = performance.now();
  await work();
  const seconds = (performance.now() - start) / 1_000;
  clearInterval(timer);
  look();
  return { seconds: Math.round(seconds * 10) / 10, peakMb: Math.round(peak / 1_024) };
}
