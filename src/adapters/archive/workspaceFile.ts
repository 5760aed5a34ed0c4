import { z } from 'zod';
import type { ArchivedRow } from '#app/store.ts';
import { Fault } from '#core/errors.ts';

/** The whole workspace as one JSON text, as programs of before the archive saved it: bytes of photos are base64, and it is read at once. */
const fileShape = z.object({
  platewrightWorkspace: z.literal(1),
  tables: z.record(z.string(), z.array(z.record(z.string(), z.unknown()))),
});
const base64 = z.base64();

/** Read at once it takes three times its size of memory. */
export const longestWorkspaceFileBytes = 100 * 2 ** 20;

/** The rows of such a file. @throws Fault workspace-file-not-valid */
export function rowsOfWorkspaceFile(bytes: Uint8Array): readonly ArchivedRow[] {
  const read = fileShape.safeParse(parsed(bytes));
  if (!read.success) throw new Fault('workspace-file-not-valid', 'It is neither an archive nor a workspace file of an earlier program.');
  return Object.entries(read.data.tables).flatMap(([table, rows]) => rows.map(row => ({ table, row: withBytes(row) })));
}

function withBytes(row: Readonly<Record<string, unknown>>): Readonly<Record<string, unknown>> {
  const given = base64.safeParse(row.bytes);
  return given.success ? { ...row, bytes: Buffer.from(given.data, 'base64') } : row;
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    // The parser's own words would quote the file.
    return undefined;
  }
}
