import type { Transaction } from 'kysely';
import { Fault } from '#core/errors.ts';
import type { Tables } from './schema.ts';

/** Raises the version of a food that is about to change; refuses when it is not the one that was seen. */
export async function claimFood(trx: Transaction<Tables>, foodId: string, seenVersion: number): Promise<void> {
  const { numUpdatedRows } = await trx
    .updateTable('foods')
    .set(eb => ({ version: eb('version', '+', 1) }))
    .where('id', '=', foodId)
    .where('version', '=', seenVersion)
    .executeTakeFirst();
  if (numUpdatedRows > 0n) return;
  const exists = await trx.selectFrom('foods').select('id').where('id', '=', foodId).executeTakeFirst();
  if (exists === undefined) throw new Fault('food-not-found', 'The food is not in the workspace.');
  throw new Fault('changed-meanwhile', 'The food was changed in another window after it was opened here.');
}
