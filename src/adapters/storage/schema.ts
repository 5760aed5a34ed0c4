import type { Generated } from 'kysely';
import type { z } from 'zod';
import type { tables } from './tables.ts';

export type TableName = keyof typeof tables;

/** The tables, in the names that SQL uses. Booleans are 0 and 1, JSON is text, on both engines alike. */
export type Tables = { workspace: WorkspaceTable } & { [Name in TableName]: z.output<(typeof tables)[Name]['row']> };

/** One row: what holds for the workspace as a whole. */
export interface WorkspaceTable {
  id: number;
  schema_version: number;
  /** Grows with every write. */
  revision: number;
  /** Grows with every label: the order in which packages were read. */
  label_sequence: number;
  /** 1 inside the transaction that purges; the triggers let nothing be deleted otherwise. */
  is_purging: number;
  /** Tokens of the newest writes, the newest first: how a write is recognized whose answer was lost. */
  recent_writes: Generated<string>;
  /** When something was last written, ISO 8601, UTC; null before the first write that this was kept of. */
  written_at: Generated<string | null>;
  /** 1 from the beginning of a new workspace's first contents to their end. */
  is_beginning: Generated<number>;
}

export type FoodTable = Tables['foods'];
export type LabelTable = Tables['labels'];
