/** Readers of files on the disk: archives, client records, the shelf; and the words of the command line. */
import { createHash } from 'node:crypto';
import { copyFileSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { archiveRows, lookAtArchive } from '#adapters/archive/archiveRows.ts';
import { threadArchives } from '#adapters/archive/threadArchives.ts';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { label, plate } from '#adapters/storage/contract/samples.ts';
import { openSqliteStore } from '#adapters/storage/openStore.ts';
import { pictures } from '#app/pictures.fixture.ts';
import type { Store } from '#app/store.ts';
import { unwatched } from '#app/watch.ts';
import type { Command } from '../../../src/cli/command.ts';
import { readOptions } from '../../../src/cli/readOptions.ts';
import { readSetting } from '../../../src/cli/readSetting.ts';
import type { Chance } from './chance.ts';
import { formsOf } from './jsonReaders.ts';
import { mutateBytes, mutateText, oddTexts } from './mutate.ts';
import { mutateJson, writeJson } from './mutateJson.ts';
import type { Reader } from './reader.ts';

const cheap = { n: 2, r: 1, p: 1 };
const commandNames = [
  'survey',
  'statement',
  'label',
  'prescribe',
  'minerals',
  'guide',
  'reference',
  'handout',
  'yardsticks',
  'clients',
  'formula',
];

/** Readers that work in `folder`, with files of a small workspace made there; `close` ends what they opened. */
export async function fileReaders(folder: string): Promise<{ readonly readers: readonly Reader[]; readonly close: () => Promise<void> }> {
  const [shelf, clients, target] = ['shelf', 'clients', 'target'].map(name => join(folder, name)) as [string, string, string];
  const store = await openSqliteStore(shelf);
  await fill(store);
  const vault = await openClientVault(clients, cheap);
  for (const [at, record] of formsOf('clientRecord').entries())
    await vault.put(Object.assign({}, record, { id: `client-${at}`, version: 0 }), null);
  const copy = await vault.keyedCopy();
  const archive = join(folder, 'whole.zip');
  await threadArchives(store, { engine: 'sqlite', folder: shelf }, '0', () => new Date()).write(archive, copy, unwatched);
  await store.close();
  await vault.close();
  const into = await openSqliteStore(target);
  const standing = await openClientVault(join(folder, 'standing'), cheap);
  const files = unzipSync(readFileSync(archive));
  const wholeArchive = readFileSync(archive);
  const wholeShelf = readFileSync(join(shelf, 'platewright.sqlite'));
  const wholeVault = readFileSync(join(clients, 'clients.sqlite'));
  const commands: Command[] = [];
  for (const name of commandNames) commands.push((await import(`../../../src/cli/commands/${name}.ts`)).command);
  const wrong = join(folder, 'wrong');

  const readers: readonly Reader[] = [
    {
      name: 'archive, its bytes',
      share: 1,
      read: (chance, say) => readArchive(chance, say, mutateBytes(chance, wholeArchive)),
    },
    {
      name: 'archive, its rows',
      share: 1,
      read: (chance, say) => readArchive(chance, say, changedArchive(chance, files)),
    },
    {
      name: 'sealed clients, a copy',
      share: 2,
      read: async (chance, say) => {
        const given: unknown = JSON.parse(JSON.stringify(mutateJson(chance, copy)) ?? 'null');
        say(given);
        await standing.lookAtCopy(given, chance.oneIn(2) ? undefined : chance.of(oddTexts));
        if (chance.oneIn(5)) await standing.restoreCopy(given, undefined, 'beside');
        await standing.list();
      },
    },
    {
      name: 'client records, their file',
      share: 0.3,
      read: async (chance, say) => {
        const bytes = mutateBytes(chance, wholeVault);
        say(bytes);
        const place = anew(wrong);
        writeFileSync(join(place, 'clients.sqlite'), bytes);
        copyFileSync(join(clients, 'clients.key'), join(place, 'clients.key'));
        const opened = await openClientVault(place, cheap);
        try {
          await opened.health();
          for (const { id } of await opened.list()) await opened.get(id);
          await opened.keyedCopy();
          if (chance.oneIn(2)) await opened.put({ id: 'new', version: 0 }, null);
          else await opened.setAside();
        } finally {
          await opened.close();
        }
      },
    },
    {
      name: 'shelf, its file',
      share: 0.15,
      read: async (chance, say) => {
        const bytes = mutateBytes(chance, wholeShelf);
        say(bytes);
        const place = anew(wrong);
        writeFileSync(join(place, 'platewright.sqlite'), bytes);
        const opened = await openSqliteStore(place);
        try {
          await readThrough(opened);
          await opened.addFood({ name: 'new' }, label(1));
        } finally {
          await opened.close();
        }
      },
    },
    {
      name: 'words of the command line',
      share: 5,
      read: (chance, say) => {
        const command = chance.of(commands);
        const options = Object.keys(command.options ?? {}).map(option => `--${option}`);
        const args = Array.from({ length: chance.below(6) }, () => {
          const word = chance.of([...options, '--', '-', '--no', '-x', ...oddTexts]);
          return chance.oneIn(3) ? mutateText(chance, word) : chance.oneIn(4) ? `${word}=${chance.of(oddTexts)}` : word;
        });
        say(args);
        if (chance.oneIn(4)) return readSetting(mutateText(chance, 'hemodialysis'));
        return readOptions(command, args);
      },
    },
  ];

  async function readArchive(chance: Chance, say: (input: unknown) => void, bytes: Uint8Array): Promise<void> {
    say(bytes);
    const path = `${wrong}.zip`;
    writeFileSync(path, bytes);
    const { clientsCopy } = await lookAtArchive(path, unwatched);
    if (clientsCopy !== undefined) await standing.lookAtCopy(clientsCopy, undefined).catch(refusal);
    if (!chance.oneIn(4)) return;
    try {
      await into.restoreRows(() => archiveRows(path), chance.oneIn(3) ? 'beside' : 'empty');
      await readThrough(into);
    } finally {
      await into.purgeAll();
    }
  }

  const close = async (): Promise<void> => {
    await into.close();
    await standing.close();
  };
  return { readers, close };
}

/** A copy that does not open is refused after its archive was looked at. */
function refusal(error: unknown): void {
  if (!(error instanceof Error && error.name === 'Fault')) throw error;
}

async function fill(store: Store): Promise<void> {
  const { food, label: first } = await store.addFood({ name: 'Ham', gramsPerMeasure: { slice: 14 }, gtin: '00012345678905' }, label(6000));
  await store.addLabel(
    food.id,
    1,
    label(600, { kind: 'correction', correctsLabelId: first.id, reason: 'misread', recheckOn: '2027-01-01' }),
  );
  await store.addPhoto(first.id, { mime: 'image/png', bytes: pictures.png });
  await store.applyImport({ fileName: 'own.csv', labels: [1, 2, 3].map(at => ({ begins: { name: `Soup ${at}` }, label: label(at) })) });
  await store.plates.put(plate, null);
  await store.guides.put({ id: 'g', title: 'Unfinished' }, null);
}

/** What the screens read. */
async function readThrough(store: Store): Promise<void> {
  await store.counts();
  await store.categories();
  await store.damagedRows();
  await store.standingLabels();
  for (const { id } of await store.listFoods()) {
    await store.getFood(id);
    for (const { photoIds } of await store.labelsOf(id)) for (const photo of photoIds) await store.getPhoto(photo);
  }
  await store.listImports();
  for (const documents of [store.plates, store.yardsticks, store.guides, store.handouts, store.surveys]) await documents.list();
}

function anew(place: string): string {
  rmSync(place, { recursive: true, force: true });
  mkdirSync(place);
  return place;
}

/** An archive with a part changed and digests that agree, so that what is behind the digests is reached. */
function changedArchive(chance: Chance, whole: Readonly<Record<string, Uint8Array>>): Uint8Array {
  const files: Record<string, Uint8Array> = { ...whole };
  const name = chance.of(Object.keys(files));
  files[name] = changedPart(chance, name, files[name]!);
  if (name !== 'manifest.json' && !chance.oneIn(20)) {
    const manifest = JSON.parse(Buffer.from(files['manifest.json']!).toString());
    for (const file of manifest.files) {
      const bytes = files[file.name]!;
      file.bytes = bytes.length;
      file.sha256 = createHash('sha256').update(bytes).digest('hex');
    }
    files['manifest.json'] = strToU8(JSON.stringify(manifest));
  }
  return zipSync(files, { level: 0 });
}

function changedPart(chance: Chance, name: string, bytes: Uint8Array): Uint8Array {
  if (name.startsWith('photos/')) return mutateBytes(chance, bytes);
  if (name.endsWith('.json')) return strToU8(writeJson(chance, mutateJson(chance, JSON.parse(Buffer.from(bytes).toString()))));
  const lines = Buffer.from(bytes).toString().split('\n');
  const at = chance.below(lines.length);
  const row: unknown = lines[at] === '' ? {} : JSON.parse(lines[at]!);
  lines[at] = chance.oneIn(10) ? mutateText(chance, lines[at]!) : writeJson(chance, mutateJson(chance, row));
  return strToU8(lines.join('\n'));
}
