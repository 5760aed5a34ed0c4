import type { Store } from '#app/store.ts';
import { readAny } from './keptTexts.ts';
import { batches, type Session } from './session.ts';

/**
 * Estimates of labels, kept because they take long to make; those of another version, and damaged ones, are as good as
 * missing. A label that was purged meanwhile is passed over.
 */
export function estimates(session: Session): Pick<Store, 'estimates' | 'putEstimates'> {
  return {
    estimates: async version => {
      const kept = await session.scan(
        db => db.selectFrom('mineral_estimates').select(['label_id', 'estimate']).where('version', '=', version).orderBy('label_id'),
        ({ label_id, estimate }) => {
          const read = readAny(estimate);
          return read === undefined ? undefined : { labelId: label_id, estimate: read.json };
        },
      );
      return kept.filter(one => one !== undefined);
    },
    putEstimates: async (version, given) => {
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
    },
  };
}
