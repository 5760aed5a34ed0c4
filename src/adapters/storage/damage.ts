import type { DamagedRow, Store } from '#app/store.ts';
import { rowsInOrder } from './rowsOfTable.ts';
import type { Session } from './session.ts';
import { tableEntries } from './tables.ts';

/** Looks through every column that has a form of its own. Takes as long as reading the whole workspace. */
export function damage(session: Session): Pick<Store, 'damagedRows'> {
  return {
    damagedRows: () =>
      session.read(async db => {
        const damaged: DamagedRow[] = [];
        for (const [table, { key, texts }] of tableEntries) {
          if (texts === undefined) continue;
          for (const row of await rowsInOrder(db, table, key)) {
            for (const [column, read] of Object.entries(texts)) {
              const text = row[column];
              if (text !== null && (typeof text !== 'string' || read(text) === undefined))
                damaged.push({ table, id: String(row[key]), column });
            }
          }
        }
        return damaged;
      }),
  };
}
