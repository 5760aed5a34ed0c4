import type { RestoredRows } from '#app/store.ts';
import type { AnyRow } from './tableEntry.ts';

/** Takes the rows of one table, some at a time. */
export interface RowTaker {
  take(table: string, rows: readonly AnyRow[]): Promise<void>;
  readonly result: RestoredRows;
}
