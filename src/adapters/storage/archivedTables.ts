import { z } from 'zod';
import { tables } from './tables.ts';

/** The tables that stand in a workspace file, in their order, with their columns: what docs/formats.md lists. */
export const archivedTables: readonly { readonly name: string; readonly columns: readonly string[] }[] = Object.entries(tables).flatMap(
  ([name, entry]) => ('isComputed' in entry ? [] : [{ name, columns: columnsOf(entry.row) }]),
);

/** A row's columns as a file has them, whatever is done with it after. */
function columnsOf(row: z.ZodType): readonly string[] {
  return Object.keys(z.toJSONSchema(row, { io: 'input', unrepresentable: 'any' }).properties ?? {});
}
