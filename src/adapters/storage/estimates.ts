import type { KeptEstimate } from '#app/store.ts';
import { batches, type Session } from './session.ts';

/** Estimates of labels, kept because they take long to make; those of another version are as good as missing. */
export async function estimates(session: Session, version: string): Promise<readonly KeptEstimate[]> {
  const rows = await session.read(db =>
    db.selectFrom('mineral_estimates').select(['label_id', 'estimate']).where('version', '=', version).orderBy('label_id').execute(),
  );
  return rows.map(({ label_id, estimate }) => ({ labelId: label_id, estimate: JSON.parse(estimate) as unknown }));
}

/** A label that was purged meanwhile is passed over. */
export async function putEstimates(session: Session, version: string, given: readonly KeptEstimate[]): Promise<void> {
  await session.keepComputed(async trx => {
    for (const some of batches(given)) {
      const ids = some.map(({ labelId }) => labelId);
      const there = new Set((await trx.selectFrom('labels').select('id').where('id', 'in', ids).execute()).map(({ id }) => id));
      await trx.deleteFrom('mineral_estimates').where('label_id', 'in', ids).execute();
      const rows = some.filter(({ labelId }) => there.has(labelId));
      if (rows.length === 0) continue;
      await trx
        .insertInto('mineral_estimates')
        .values(rows.map(({ labelId, estimate }) => ({ label_id: labelId, version, estimate: JSON.stringify(estimate) })))
        .execute();
    }
  });
}
