import type { z } from 'zod';
import type { CountName } from '#app/store.ts';
import type { FaultCode } from '#core/errors.ts';
import type { Migration } from './migrations/migration.ts';

/** A row as any table may have it: by column. */
export type AnyRow = Readonly<Record<string, unknown>>;

/** What the registry says of a table; everything that is done with tables as such derives from it. */
export interface TableEntry {
  /** By number: what makes the table, and what changed it since. A archive of before the first one has none of its rows. */
  readonly migrations: Readonly<Record<number, Migration>>;
  /** In: a row of an archive, checked. Out: the row of the database. A column of a later migration has a default. */
  readonly row: z.ZodType<AnyRow>;
  /** The columns that tell the rows apart. */
  readonly key: string;
  /** The column that puts rows in order in a archive: the same workspace gives the same file. */
  readonly order: string;
  /** Rows hold bytes of any size: they are read one at a time. */
  readonly isBulky?: true;
  /** Columns that say nothing of what a row is: two rows that differ in nothing else are the same. */
  readonly incidental?: readonly string[];
  /** Computed again when it is missing: in no archive. */
  readonly isComputed?: true;
  /** How the columns that hold a text with a form of its own are read; what cannot be read is undefined. */
  readonly texts?: Readonly<Record<string, (text: string) => unknown>>;
  /** Which rows belong to the demo, in SQL: purging the demo deletes them. Looked at before the tables above it lose theirs. */
  readonly demo?: string;
  /** Rows that refer to others of the same table, in SQL: they are deleted first. */
  readonly referring?: string;
  /** Under which names its rows are counted: all of them, or those of the demo. */
  readonly counts?: Readonly<Partial<Record<CountName, 'all' | 'demo'>>>;
  /** Of a table of versioned documents. */
  readonly document?: DocumentEntry;
}

export interface DocumentEntry {
  /** "plate": what a person calls one, and the column of its JSON. */
  readonly noun: string;
  /** The faults of one that is not there or damaged, where it has its own; else those of any document. */
  readonly missing?: FaultCode;
  readonly damaged?: FaultCode;
}
