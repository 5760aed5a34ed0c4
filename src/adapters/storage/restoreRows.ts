import { sql, type Transaction } from 'kysely';
import type { ArchivedRow, RestoredRows, RestoreInto, Store } from '#app/store.ts';
import { unwatched, type Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { archivedEntry, rowOfArchive } from './checkRow.ts';
import { areRowsRefused } from './faults.ts';
import { NewRows } from './newRowsOnly.ts';
import { purging } from './purge.ts';
import { hasRows, insertRows } from './rowsOfTable.ts';
import type { RowTaker } from './rowTaker.ts';
import type { Tables } from './schema.ts';
import type { Session } from './session.ts';
import type { AnyRow } from './tableEntry.ts';
import { tableEntries } from './tables.ts';

/** Puts the rows of an archive into the workspace, in one transaction. */
export function restoreRows(session: Session): Pick<Store, 'restoreRows'> {
  return {
    restoreRows: async (rows, into, watch = unwatched) => {
      try {
        return await session.write(trx => restored(session, trx, rows(), into, watch));
      } catch (error) {
        if (areRowsRefused(error))
          throw new Fault('archive-not-valid', 'Its rows do not belong together: one names another that is missing, or stands twice.');
        throw error;
      }
    },
  };
}

async function restored(
  session: Session,
  trx: Transaction<Tables>,
  rows: AsyncIterable<ArchivedRow>,
  into: RestoreInto,
  watch: Watch,
): Promise<RestoredRows> {
  if (into === 'empty') {
    await purging(trx, 'demo');
    await refuseFull(trx);
  }
  const taker = into === 'empty' ? new EveryRow(trx) : new NewRows(trx, session);
  let done = 0;
  for await (const { table, batch } of batchesByTable(rows)) {
    await taker.take(table, batch);
    done += batch.length;
    await watch.step(`Putting back ${table.replaceAll('_', ' ')}`, done, 0);
  }
  if (into === 'empty') await sql`update workspace set label_sequence = (select coalesce(max(sequence), 0) from labels)`.execute(trx);
  return taker.result;
}

async function refuseFull(trx: Transaction<Tables>): Promise<void> {
  for (const [name, { isComputed }] of tableEntries) {
    if (!isComputed && (await hasRows(trx, name)))
      throw new Fault('workspace-not-empty', 'Something is in the workspace already; an archive can be added beside it.');
  }
}

/** For a workspace with nothing in it. */
class EveryRow implements RowTaker {
  private readonly trx: Transaction<Tables>;
  private readonly added: Record<string, number> = {};

  constructor(trx: Transaction<Tables>) {
    this.trx = trx;
  }

  async take(table: string, rows: readonly AnyRow[]): Promise<void> {
    await insertRows(this.trx, table, rows);
    this.added[table] = (this.added[table] ?? 0) + rows.length;
  }

  get result(): RestoredRows {
    return { added: this.added, same: 0, leftOut: {}, examples: [] };
  }
}

const rowsAtOnce = 500;
/** Versions and places in the order of labels are counted on from what is restored, and must stay exact numbers. */
const largestRestored = 2 ** 31 - 1;

/** Checked rows of one table at a time, few where they are large. */
async function* batchesByTable(rows: AsyncIterable<ArchivedRow>): AsyncGenerator<{ table: string; batch: readonly AnyRow[] }> {
  let table = '';
  let batch: AnyRow[] = [];
  for await (const given of rows) {
    const most = archivedEntry(given.table).isBulky ? 1 : rowsAtOnce;
    if (batch.length > 0 && (given.table !== table || batch.length >= most)) {
      yield { table, batch };
      batch = [];
    }
    table = given.table;
    batch.push(countable(given.table, rowOfArchive(given)));
  }
  if (batch.length > 0) yield { table, batch };
}

/** @throws Fault archive-not-valid */
function countable(table: string, row: AnyRow): AnyRow {
  const isTooLarge = Object.values(row).some(value => typeof value === 'number' && Math.abs(value) > largestRestored);
  if (isTooLarge) throw new Fault('archive-not-valid', `A number in ${table} is larger than any that is counted here.`);
  return row;
}
