import { setTimeout } from 'node:timers/promises';
import type { Kysely, Transaction } from 'kysely';
import { Fault } from '#core/errors.ts';
import { storageFault } from './faults.ts';
import type { Tables } from './schema.ts';

const patienceMilliseconds = 3_000;
const pauseMilliseconds = 20;

/** What the parts of a store work with: the database, a clock, new identities, and the two ways to use them. */
export class Session {
  readonly db: Kysely<Tables>;
  private readonly now: () => Date;
  /** Writes wait for each other: one connection writes, and a transaction never meets another of the same program. */
  private last: Promise<unknown> = Promise.resolve();

  constructor(db: Kysely<Tables>, now: () => Date) {
    this.db = db;
    this.now = now;
  }

  timestamp(): string {
    return this.now().toISOString();
  }

  async read<Result>(work: (db: Kysely<Tables>) => Promise<Result>): Promise<Result> {
    try {
      return await work(this.db);
    } catch (error) {
      throw storageFault(error);
    }
  }

  /** A turn among the writes for work that writes through another connection. */
  exclusively<Result>(work: () => Promise<Result>): Promise<Result> {
    const turn = this.last.then(work);
    this.last = turn.catch(() => undefined);
    return turn;
  }

  /** One moment for everything that is read. */
  readOnce<Result>(work: (db: Transaction<Tables>) => Promise<Result>): Promise<Result> {
    return this.read(db => db.transaction().execute(work));
  }

  /** One transaction for what can be computed again: the revision stays. */
  keepComputed<Result>(work: (trx: Transaction<Tables>) => Promise<Result>): Promise<Result> {
    const turn = this.last.then(() => this.patiently(() => this.transact(work, false)));
    this.last = turn.catch(() => undefined);
    return turn;
  }

  /** One transaction. Counting the revision first takes the write lock before anything is looked at. */
  write<Result>(work: (trx: Transaction<Tables>) => Promise<Result>): Promise<Result> {
    const turn = this.last.then(() => this.patiently(() => this.transact(work)));
    this.last = turn.catch(() => undefined);
    return turn;
  }

  private async transact<Result>(work: (trx: Transaction<Tables>) => Promise<Result>, counts = true): Promise<Result> {
    try {
      return await this.db.transaction().execute(async trx => {
        await trx
          .updateTable('workspace')
          .set(eb => ({ revision: eb('revision', '+', counts ? 1 : 0) }))
          .execute();
        return await work(trx);
      });
    } catch (error) {
      throw storageFault(error);
    }
  }

  /** Waits while another program writes, without holding up this one, and gives up after a while. */
  private async patiently<Result>(attempt: () => Promise<Result>): Promise<Result> {
    const giveUpAt = performance.now() + patienceMilliseconds;
    for (;;) {
      try {
        return await attempt();
      } catch (error) {
        const isLocked = error instanceof Fault && error.code === 'database-locked';
        if (!isLocked || performance.now() > giveUpAt) throw error;
        await setTimeout(pauseMilliseconds);
      }
    }
  }

  /** Takes `count` places in the order of labels; gives the first. */
  async takeSequence(trx: Transaction<Tables>, count: number): Promise<number> {
    const { label_sequence } = await trx
      .updateTable('workspace')
      .set(eb => ({ label_sequence: eb('label_sequence', '+', count) }))
      .returning('label_sequence')
      .executeTakeFirstOrThrow();
    return label_sequence - count + 1;
  }
}

/** Rows in one insert: below the number of bound values that SQLite (32,766) and PostgreSQL (65,535) allow for our widest table. */
const rowsAtOnce = 1_000;

export function* batches<Row>(rows: readonly Row[]): Iterable<readonly Row[]> {
  for (let from = 0; from < rows.length; from += rowsAtOnce) yield rows.slice(from, from + rowsAtOnce);
}
