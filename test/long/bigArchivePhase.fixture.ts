/** A program of its own for one phase of the big archive, so that its memory is that phase's alone. Prints one line of JSON. */
import { createHash, randomFillSync } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { threadArchives } from '#adapters/archive/threadArchives.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import type { NewLabel, Store } from '#app/store.ts';
import { unwatched } from '#app/watch.ts';

const [phase = '', folder = '', ...numbers] = process.argv.slice(2);
const [labels = 0, photos = 0, photoBytes = 0] = numbers.map(Number);
const path = join(folder, 'all.zip');
const jpegStart = new Uint8Array([0xff, 0xd8, 0xff, 0xe0]);

const phases: Readonly<Record<string, () => Promise<unknown>>> = {
  fill: () => withStore('from', store => fill(store)),
  out: () => withStore('from', (store, place) => threadArchives(store, place, '0', () => new Date()).write(path, undefined, unwatched)),
  in: () => withStore('to', (store, place) => threadArchives(store, place, '0', () => new Date()).restore(path, 'empty', unwatched)),
  'digest-from': () => withStore('from', digest),
  'digest-to': () => withStore('to', digest),
};
const start = performance.now();
const result = await phases[phase]!();
const seconds = Math.round((performance.now() - start) / 100) / 10;
// The most that the process ever held (proc(5), "VmHWM"), the start of Node among it.
const peakMb = Math.round(Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))?.[1]) / 1_024);
process.stdout.write(`${JSON.stringify({ seconds, peakMb, ...(typeof result === 'string' ? { digest: result } : {}) })}\n`);

async function withStore<Result>(
  name: string,
  work: (store: Store, place: { engine: 'sqlite'; folder: string }) => Promise<Result>,
): Promise<Result> {
  const place = { engine: 'sqlite', folder: join(folder, name) } as const;
  const store = await openSqliteStore(place.folder);
  try {
    return await work(store, place);
  } finally {
    await store.close();
  }
}

async function fill(store: Store): Promise<void> {
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
