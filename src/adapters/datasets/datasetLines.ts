import type { DatasetFile } from '#app/ports.ts';
import type { Watch } from '#app/watch.ts';

export interface DatasetLine {
  readonly line: number;
  readonly text: string;
}

const bytesAStep = 1024 * 1024;

/**
 * The lines of a file, block by block, so that a file of gigabytes needs the memory of one block. Tells the watch how many
 * megabytes are read. LF or CRLF; a byte order mark is taken off.
 *
 * @throws Fault work-cancelled.
 */
export async function* datasetLines(file: DatasetFile, encoding: 'utf-8' | 'latin1', watch: Watch): AsyncGenerator<readonly DatasetLine[]> {
  const decoder = new TextDecoder(encoding);
  const megabytes = Math.ceil(file.bytes / bytesAStep);
  let line = 1;
  let rest = '';
  let read = 0;
  let told = 0;
  const linesOf = (text: string): DatasetLine[] =>
    text.split('\n').map((one, at) => ({ line: line + at, text: one.endsWith('\r') ? one.slice(0, -1) : one }));
  for await (const bytes of pieces(file.open())) {
    const text = rest + decoder.decode(bytes, { stream: true });
    const end = text.lastIndexOf('\n');
    rest = text.slice(end + 1);
    if (end >= 0) {
      const lines = linesOf(text.slice(0, end));
      yield lines;
      line += lines.length;
    }
    read += bytes.length;
    if (read - told < bytesAStep) continue;
    told = read;
    await watch.step(`Megabytes of ${file.name}`, Math.floor(read / bytesAStep), megabytes);
  }
  rest += decoder.decode();
  if (rest !== '') yield linesOf(rest);
}

/** A file of an upload comes as one chunk of all its bytes; in pieces, others have their turn and the blocks stay small. */
async function* pieces(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  for await (const chunk of chunks) for (let at = 0; at < chunk.length; at += pieceBytes) yield chunk.subarray(at, at + pieceBytes);
}

const pieceBytes = 256 * 1024;
