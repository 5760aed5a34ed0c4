import { randomBytes } from 'node:crypto';
import { type Kysely, sql, type Transaction } from 'kysely';
import { Fault } from '#core/errors.ts';
import type { Connections, DatabasePlace, Streamable } from './connections.ts';
import { isLost, isPassing, storageFault } from './faults.ts';
import { patiently } from './patience.ts';
import type { Tables } from './schema.ts';

/** How long a caller waits while the database is busy or away, before being told. */
const patienceMilliseconds = 10_000;
/** Writes that the workspace remembers by their tokens, and the length of one. */
const rememberedWrites = 64;
const tokenLength = 8;

/** What the parts of a store work with: a clock, new identities, and the ways to read and to write. */
export class Session {
  private readonly connections: Connections;
  private readonly now: () => Date;
  /** Writes wait for each other: one connection writes, and a transaction never meets another of the same program. */
  private last: Promise<unknown> = Promise.resolve();

  constructor(connections: Connections, now: () => Date) {
    this.connections = connections;
    this.now = now;
  }

  /** What another thread opens to work on the same database. */
  get place(): DatabasePlace {
    return this.connections.place;
  }

  timestamp(): string {
    return this.now().toISOString();
  }

  /** Sees every acknowledged write and waits for none. Tried again while the database is away, so `work` does nothing but read. */
  async read<Result>(work: (db: Kysely<Tables>) => Promise<Result>): Promise<Result> {
    try {
      return await patiently(() => work(this.connections.reader), isPassing, this.giveUpAt());
    } catch (error) {
      throw storageFault(error);
    }
  }

  /** The rows of a long list, each read by `read`, without holding up the rest of the program. */
  async scan<Row, Result>(query: (db: Kysely<Tables>) => Streamable<Row>, read: (row: Row) => Result): Promise<Result[]> {
    const attempt = async (): Promise<Result[]> => {
      const all: Result[] = [];
      for await (const row of this.connections.scan(query)) all.push(read(row));
      return all;
    };
    try {
      return await patiently(attempt, isPassing, this.giveUpAt());
    } catch (error) {
      throw storageFault(error);
    }
  }

  /**
   * One moment of the whole workspace, however long `work` reads; other reads and writes go on. Where the connection breaks while
   * `work` runs, that is told: it may have handed on what it read.
   */
  async readOnce<Result>(work: (trx: Transaction<Tables>) => Promise<Result>): Promise<Result> {
    const { longReader, oneMoment } = this.connections;
    const db = longReader();
    let hasBegun = false;
    const attempt = () =>
      oneMoment(db).execute(async trx => {
        await trx.selectFrom('workspace').select('revision').execute();
        hasBegun = true;
        return await work(trx);
      });
    try {
      return await patiently(attempt, error => !hasBegun && isPassing(error), this.giveUpAt());
    } catch (error) {
      throw storageFault(error);
    } finally {
      await db.destroy();
    }
  }

  /** One transaction for what can be computed again: the revision stays. */
  keepComputed<Result>(work: (trx: Transaction<Tables>) => Promise<Result>): Promise<Result> {
    const giveUpAt = this.giveUpAt();
    return this.inTurn(() => patiently(() => this.transact(work), isLost, giveUpAt));
  }

  /**
   * One transaction, resolved when it will survive a power cut. When the connection is lost it is tried again, but only where it
   * is certain that nothing was kept.
   * @throws Fault outcome-unknown where it could not be found out
   */
  write<Result>(work: (trx: Transaction<Tables>) => Promise<Result>): Promise<Result> {
    const giveUpAt = this.giveUpAt();
    return this.inTurn(() => patiently(() => this.transact(work, randomBytes(6).toString('base64url')), isLost, giveUpAt));
  }

  /** Takes the turn of a write while another thread writes with a connection of its own. */
  exclusively<Result>(work: () => Promise<Result>): Promise<Result> {
    return this.inTurn(work);
  }

  /** Runs while no other program does the same with this database. */
  async alone(work: () => Promise<void>): Promise<void> {
    try {
      await this.connections.alone(work);
    } catch (error) {
      throw storageFault(error);
    }
  }

  private giveUpAt(): number {
    return performance.now() + patienceMilliseconds;
  }

  private inTurn<Result>(work: () => Promise<Result>): Promise<Result> {
    const turn = this.last.then(work).catch(error => {
      throw storageFault(error);
    });
    this.last = turn.catch(() => undefined);
    return turn;
  }

  /** With a token, the write is counted and can be recognized later. */
  private async transact<Result>(work: (trx: Transaction<Tables>) => Promise<Result>, token?: string): Promise<Result> {
    let cause: unknown;
    let written: { readonly revision: number; readonly result: Result } | undefined;
    try {
      return await this.connections.writer.transaction().execute(async trx => {
        try {
          const { revision } = await sign(trx, token, this.timestamp());
          const result = await work(trx);
          written = { revision, result };
          return result;
        } catch (error) {
          cause = error;
          throw error;
        }
      });
    } catch (error) {
      // What went wrong first is told, not that rolling back failed as well.
      const first = cause ?? error;
      if (written === undefined || token === undefined || !isLost(first)) throw first;
      if (await this.wasKept(token, written.revision)) return written.result;
      throw first;
    }
  }

  /** Whether a write is there whose answer was lost. @throws Fault outcome-unknown */
  private async wasKept(token: string, revision: number): Promise<boolean> {
    try {
      const look = () => this.connections.writer.transaction().execute(trx => sign(trx));
      const now = await patiently(look, isLost, this.giveUpAt());
      if (now.recent_writes.includes(token)) return true;
      if (now.revision - revision < rememberedWrites) return false;
    } catch {
      // Told below: nothing is known.
    }
    throw new Fault('outcome-unknown', 'The connection to the database broke while this was being saved.');
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

/** Takes the lock of writing before anything is looked at: it waits for whoever writes. With a token, counts the write and leaves it. */
function sign(
  trx: Transaction<Tables>,
  token?: string,
  at?: string,
): Promise<{ readonly revision: number; readonly recent_writes: string }> {
  return trx
    .updateTable('workspace')
    .set(eb =>
      token === undefined
        ? { revision: eb.ref('revision') }
        : {
            revision: eb('revision', '+', 1),
            written_at: at ?? null,
            recent_writes: sql<string>`substr(${token} || recent_writes, 1, ${sql.lit(rememberedWrites * tokenLength)})`,
          },
    )
    .returning(['revision', 'recent_writes'])
    .executeTakeFirstOrThrow();
}

/**
 * Rows in one insert: below the number of bound values that SQLite (32,766) and PostgreSQL (65,535) allow for our widest table, and
 * few enough that putting the statement together holds up nobody.
 */
const rowsAtOnce = 500;

export function* batches<Row>(rows: readonly Row[]): Iterable<readonly Row[]> {
  for (let from = 0; from < rows.length; from += rowsAtOnce) yield rows.slice(from, from + rowsAtOnce);
}
