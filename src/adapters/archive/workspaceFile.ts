import { z } from 'zod';
import { isObject } from '#adapters/storage/readJson.ts';
import type { ArchivedRow } from '#app/store.ts';
import { Fault } from '#core/errors.ts';

/** The whole workspace as one JSON text, as programs of before the archive saved it. Bytes of photos are base64. */
const outlineShape = z.object({ platewrightWorkspace: z.literal(1), tables: z.record(z.string(), z.array(z.never())) });
const base64 = z.base64();

/** Everything but the rows: names of tables and the brackets around them. */
const longestOutline = 10_000;
/** A row with a photo of the largest size that was ever taken. */
const longestRowBytes = 96 * 2 ** 20;
const mostColumns = 100;

const [quote, backslash, openBrace, closeBrace, openBracket, closeBracket, comma] = [...'"\\{}[],'].map(sign => sign.charCodeAt(0));
/** The depth at which rows begin: within the file, its tables, and the list of one of them. */
const rowDepth = 3;

/**
 * The rows of such a file, as its bytes come: it may be larger than any text that is held at once. A row is cut out by its
 * brackets and parsed by itself; what is left, the outline, is parsed at the end and must be the one of a workspace file.
 * @throws Fault workspace-file-not-valid
 */
export async function* rowsOfWorkspaceFile(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<ArchivedRow> {
  let depth = 0;
  let isText = false;
  let isEscaped = false;
  /** Of the row that has begun. */
  let row: Buffer[] | undefined;
  let rowBytes = 0;
  let outline = '';
  for await (const given of chunks) {
    const chunk = Buffer.from(given.buffer, given.byteOffset, given.byteLength);
    /** Where the part begins that belongs to the row or to the outline. */
    let from = 0;
    const takeOutline = (to: number): void => {
      outline += chunk.toString('latin1', from, to);
      if (outline.length > longestOutline) throw notValid();
      from = to;
    };
    for (let at = 0; at < chunk.length; at += 1) {
      const sign = chunk[at];
      if (isText) {
        if (isEscaped) isEscaped = false;
        else if (sign === backslash) isEscaped = true;
        else if (sign === quote) isText = false;
      } else if (sign === quote) {
        isText = true;
      } else if (sign === openBrace || sign === openBracket) {
        if (depth === rowDepth && row === undefined) {
          takeOutline(at);
          row = [];
          rowBytes = 0;
        }
        depth += 1;
      } else if (sign === closeBrace || sign === closeBracket) {
        depth -= 1;
        if (depth === rowDepth && row !== undefined) {
          row.push(chunk.subarray(from, at + 1));
          from = at + 1;
          yield { table: tableOf(outline), row: rowOf(Buffer.concat(row)) };
          row = undefined;
        }
      } else if (sign === comma && depth === rowDepth && row === undefined) {
        // Between two rows: the outline has neither.
        takeOutline(at);
        from = at + 1;
      }
    }
    if (row === undefined) {
      takeOutline(chunk.length);
    } else {
      rowBytes += chunk.length - from;
      if (rowBytes > longestRowBytes) throw notValid();
      // The chunk may be used again by whoever reads the file.
      row.push(Buffer.from(chunk.subarray(from)));
    }
  }
  if (row !== undefined || !outlineShape.safeParse(parsed(outline)).success) throw notValid();
}

/** The name that opened the last list of the outline: `…,"labels":[`. */
function tableOf(outline: string): string {
  const [, name] = /"(\w+)"\s*:\s*\[\s*$/.exec(outline) ?? [];
  if (name === undefined) throw notValid();
  return name;
}

function rowOf(bytes: Buffer): Readonly<Record<string, unknown>> {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw notValid();
  }
  const row = parsed(text);
  if (!isObject(row) || Object.keys(row).length > mostColumns) throw notValid();
  const given = base64.safeParse(row.bytes);
  return given.success ? { ...row, bytes: Buffer.from(given.data, 'base64') } : row;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    // The parser's own words would quote the file.
    return undefined;
  }
}

function notValid(): Fault {
  return new Fault('workspace-file-not-valid', 'It is neither an archive nor a workspace file of an earlier program.');
}
