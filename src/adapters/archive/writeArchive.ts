import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { createWriteStream } from 'node:fs';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import type { SealedClients } from '#app/clientVault.ts';
import type { ArchivedTable, Store } from '#app/store.ts';
import type { Watch } from '#app/watch.ts';
import { archiveFormat, clientsName, type Manifest, manifestName, photosTable, tableFile } from './manifest.ts';
import { pictureEnding } from './pictureFiles.ts';

interface Given {
  readonly madeAt: Date;
  readonly version: string;
  readonly clients: SealedClients | undefined;
}

/**
 * Writes an archive of everything that stands at one moment. One file of it is written after the other, so that memory
 * stays flat: rows as lines of JSON, pictures as files, the manifest last, when every digest is known.
 */
export async function writeArchive(store: Store, path: string, { madeAt, version, clients }: Given, watch: Watch): Promise<void> {
  const zip = new ZipFile();
  const files: Manifest['files'][number][] = [];
  const rows: Record<string, number> = {};
  const written = pipeline(zip.outputStream, createWriteStream(path, { flags: 'wx', mode: 0o600, flush: true }));

  const add = async (name: string, content: Iterable<string | Uint8Array> | AsyncIterable<string | Uint8Array>, compress: boolean) => {
    const digest = createHash('sha256');
    let bytes = 0;
    async function* counted() {
      for await (const part of content) {
        const chunk = typeof part === 'string' ? Buffer.from(part) : part;
        digest.update(chunk);
        bytes += chunk.length;
        yield chunk;
      }
    }
    const stream = Readable.from(counted());
    const ended = once(stream, 'close');
    zip.addReadStream(stream, name, { mtime: madeAt, mode: 0o100600, compress });
    await Promise.race([ended, written]);
    if (stream.errored) throw stream.errored;
    files.push({ name, bytes, sha256: digest.digest('hex') });
  };

  try {
    await store.archived(async tables => {
      for (const table of tables) {
        rows[table.name] = table.count;
        const lines = table.name === photosTable ? await addPictures(table, add, watch) : table.rows();
        await add(tableFile(table.name), watchedLines(lines, table, watch), true);
      }
    });
    if (clients !== undefined) await add(clientsName, [JSON.stringify(clients)], true);
    const manifest: Manifest = {
      platewrightArchive: archiveFormat,
      madeAt: madeAt.toISOString(),
      version,
      rows,
      ...(clients === undefined
        ? {}
        : { clients: { records: clients.rows.length, opensWith: clients.key === undefined ? 'passphrase' : 'key' } }),
      files,
    };
    zip.addBuffer(Buffer.from(JSON.stringify(manifest)), manifestName, { mtime: madeAt, mode: 0o100600 });
    zip.end();
    await written;
  } catch (error) {
    // Ends the writing too: nobody else holds the stream.
    if (zip.outputStream instanceof Readable) zip.outputStream.destroy(error instanceof Error ? error : undefined);
    await written.catch(() => undefined);
    throw error;
  }
}

type Row = Readonly<Record<string, unknown>>;

/** Writes each picture as a file; gives their rows, with the file's name in the place of the bytes. */
async function addPictures(
  table: ArchivedTable,
  add: (name: string, content: Iterable<Uint8Array>, compress: boolean) => Promise<void>,
  watch: Watch,
): Promise<readonly Row[]> {
  const rows: Row[] = [];
  for await (const { bytes, ...row } of table.rows()) {
    await watch.step('Writing pictures', rows.length, table.count);
    const name = `photos/${String(rows.length + 1).padStart(6, '0')}${pictureEnding(row.mime)}`;
    await add(name, onlyOnce(bytes), false);
    rows.push({ ...row, file: name });
  }
  return rows;
}

/** The writer of ZIP files keeps what it was given until the end: the picture itself must be gone by then. */
function* onlyOnce(bytes: unknown): Generator<Uint8Array> {
  const held = bytes instanceof Uint8Array ? [bytes] : [];
  bytes = undefined;
  while (held.length > 0) yield held.pop()!;
}

const linesAStep = 500;

async function* watchedLines(
  rows: Iterable<Row> | AsyncIterable<Row>,
  { name, count }: ArchivedTable,
  watch: Watch,
): AsyncGenerator<string> {
  let done = 0;
  let lines = '';
  for await (const row of rows) {
    lines += `${JSON.stringify(row)}\n`;
    done += 1;
    if (done % linesAStep === 0 || lines.length > 2 ** 20) {
      await watch.step(`Writing ${name.replaceAll('_', ' ')}`, done, count);
      yield lines;
      lines = '';
    }
  }
  if (lines !== '') yield lines;
}
