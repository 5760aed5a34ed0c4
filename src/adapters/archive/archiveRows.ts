import { createReadStream } from 'node:fs';
import { z } from 'zod';
import { damagedColumns, rowOfArchive } from '#adapters/storage/checkRow.ts';
import { isObject } from '#adapters/storage/readJson.ts';
import { tableEntries } from '#adapters/storage/tables.ts';
import type { ArchiveLook } from '#app/archives.ts';
import type { ArchivedRow } from '#app/store.ts';
import { rowsAStep, type Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { clientsName, photosTable, tableFile } from './manifest.ts';
import { beginsAsZip, OpenArchive } from './openArchive.ts';
import { rowsOfWorkspaceFile } from './workspaceFile.ts';

/** More columns than any table of ours has. */
const mostColumns = 100;
const pictureRow = z.looseObject({ file: z.string() });

/** Reads a file through, and says what is in it: everything is compared with its digest and read by its reader. */
export async function lookAtArchive(path: string, watch: Watch): Promise<ArchiveLook> {
  const { isZip, bytes } = await beginsAsZip(path);
  const rows: Record<string, number> = {};
  let damaged = 0;
  let done = 0;
  const look = async (given: AsyncIterable<ArchivedRow>, of: number): Promise<void> => {
    for await (const row of given) {
      damaged += damagedColumns(row.table, rowOfArchive(row)).length;
      rows[row.table] = (rows[row.table] ?? 0) + 1;
      if (done++ % rowsAStep === 0 || row.table === photosTable) await watch.step('Reading the archive', done, of);
    }
  };
  if (!isZip) {
    await look(rowsOfWorkspaceFile(createReadStream(path)), 0);
    return { kind: 'workspace-file', bytes, madeAt: '', version: '', rows, damaged };
  }
  const archive = await OpenArchive.open(path);
  try {
    const { manifest } = archive;
    await look(
      rowsOf(archive),
      Object.values(manifest.rows).reduce((sum, count) => sum + count, 0),
    );
    for (const [table, count] of Object.entries(manifest.rows)) {
      if ((rows[table] ?? 0) !== count)
        throw new Fault('archive-not-valid', `It holds another number of ${table} than its list of contents says.`);
    }
    const { clients } = manifest;
    if ((clients !== undefined) !== archive.has(clientsName))
      throw new Fault('archive-not-valid', 'Its client records are missing or too many.');
    const { madeAt, version } = manifest;
    const facts = { kind: 'archive' as const, bytes, madeAt, version, rows: manifest.rows, damaged };
    if (clients === undefined) return facts;
    return { ...facts, clients, clientsCopy: clientsIn(await archive.whole(clientsName)) };
  } finally {
    archive.close();
  }
}

/** The rows of a file, in the order in which they can be put back. @throws Fault archive-not-valid, archive-newer */
export async function* archiveRows(path: string): AsyncGenerator<ArchivedRow> {
  const { isZip } = await beginsAsZip(path);
  if (!isZip) {
    yield* rowsOfWorkspaceFile(createReadStream(path));
    return;
  }
  const archive = await OpenArchive.open(path);
  try {
    yield* rowsOf(archive);
  } finally {
    archive.close();
  }
}

async function* rowsOf(archive: OpenArchive): AsyncGenerator<ArchivedRow> {
  const known = new Set(tableEntries.map(([name]) => name));
  for (const table of Object.keys(archive.manifest.rows)) {
    if (!known.has(table)) throw new Fault('archive-newer', `It holds "${table}", which this program does not know.`);
  }
  const taken = new Set<string>();
  for (const table of known) {
    if (!archive.has(tableFile(table))) continue;
    for await (const line of archive.lines(tableFile(table))) {
      const row = rowOfLine(table, line);
      yield { table, row: table === photosTable ? await withPicture(archive, row, taken) : row };
    }
  }
}

/** `taken`: the files of rows before. A picture that many rows name would be kept as many times. */
async function withPicture(
  archive: OpenArchive,
  given: Readonly<Record<string, unknown>>,
  taken: Set<string>,
): Promise<Readonly<Record<string, unknown>>> {
  const read = pictureRow.safeParse(given);
  if (!read.success || !read.data.file.startsWith('photos/')) throw new Fault('archive-not-valid', 'A picture names no file.');
  const { file, ...row } = read.data;
  if (taken.has(file)) throw new Fault('archive-not-valid', 'Two pictures name one file.');
  taken.add(file);
  return { ...row, bytes: await archive.whole(file) };
}

function rowOfLine(table: string, line: string): Readonly<Record<string, unknown>> {
  const row = parsed(line);
  // Counted before anything is checked: a million columns would be checked one by one.
  if (isObject(row) && Object.keys(row).length <= mostColumns) return row;
  throw new Fault('archive-not-valid', `A line of ${table} in it cannot be read.`);
}

function parsed(line: string): unknown {
  try {
    return JSON.parse(line);
  } catch {
    // The parser's own words would quote the row.
    return undefined;
  }
}

function clientsIn(bytes: Buffer): unknown {
  try {
    return JSON.parse(bytes.toString());
  } catch {
    throw new Fault('archive-not-valid', 'Its client records cannot be read.');
  }
}
