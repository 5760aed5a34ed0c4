import type { Kysely, TransactionBuilder } from 'kysely';
import type { Engine } from './engine.ts';
import type { Tables } from './schema.ts';

/** Where a database is, in plain data: a thread of its own opens the same one from it. */
export type DatabasePlace =
  | { readonly engine: 'sqlite'; readonly folder: string }
  | { readonly engine: 'postgresql'; readonly url: string };

/** The ways to an open database. */
export interface Connections {
  readonly engine: Engine;
  readonly place: DatabasePlace;
  /** For writes, one at a time. */
  readonly writer: Kysely<Tables>;
  /** For reads: they see what was acknowledged, and wait for no write. */
  readonly reader: Kysely<Tables>;
  /** For one long read, beside which the others go on; whoever asked destroys it. */
  readonly longReader: () => Kysely<Tables>;
  /** A transaction that sees one moment of the database. */
  readonly oneMoment: (db: Kysely<Tables>) => TransactionBuilder<Tables>;
  /** Runs while no other program does the same with this database. */
  readonly alone: (work: () => Promise<void>) => Promise<void>;
  readonly close: () => Promise<void>;
}
