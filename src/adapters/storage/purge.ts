import type { Transaction } from 'kysely';
import type { Store } from '#app/store.ts';
import { deleteRows } from './rowsOfTable.ts';
import type { Tables } from './schema.ts';
import type { Session } from './session.ts';
import { tableEntries } from './tables.ts';

/** The only ways to delete what packages said. */
export function purge(session: Session): Pick<Store, 'purgeDemo' | 'purgeAll'> {
  return {
    purgeDemo: () => session.write(trx => purging(trx, 'demo')),
    purgeAll: () => session.write(trx => purging(trx, 'all')),
  };
}

/** The triggers let rows go while this runs; when the transaction fails, the sign is rolled back with it. */
export async function purging(trx: Transaction<Tables>, what: 'demo' | 'all'): Promise<void> {
  await trx.updateTable('workspace').set({ is_purging: 1 }).execute();
  // What refers to others goes before them.
  for (const [name, { demo, referring }] of [...tableEntries].reverse()) {
    const which = what === 'all' ? '1 = 1' : demo;
    if (which === undefined) continue;
    if (referring !== undefined) await deleteRows(trx, name, `(${which}) and (${referring})`);
    await deleteRows(trx, name, which);
  }
  await trx.updateTable('workspace').set({ is_purging: 0 }).execute();
}
