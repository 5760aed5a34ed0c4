import type { Transaction } from 'kysely';
import type { FoodRow, LabelRow, NewFood, NewLabel, Store } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { claimFood } from './claimFood.ts';
import { newFood, newLabel } from './newRows.ts';
import { foodRow, labelRow } from './rows.ts';
import type { Tables } from './schema.ts';
import type { Session } from './session.ts';

/** Labels are added, corrected by a further one, or withdrawn by a row of its own; never changed. */
export function writeLabels(session: Session): Pick<Store, 'addFood' | 'addLabel' | 'withdrawLabel' | 'setRecheck'> {
  return {
    addFood: (food, label) => addFood(session, food, label),
    addLabel: (foodId, seenVersion, label) => addLabel(session, foodId, seenVersion, label),
    withdrawLabel: (labelId, seenVersion, reason) => withdrawLabel(session, labelId, seenVersion, reason),
    setRecheck: (labelId, seenDueOn, dueOn) => setRecheck(session, labelId, seenDueOn, dueOn),
  };
}

async function insertLabel(session: Session, trx: Transaction<Tables>, foodId: string, label: NewLabel): Promise<LabelRow> {
  const row = await newLabel(trx, foodId, label, await session.takeSequence(trx, 1), session.timestamp());
  await trx.insertInto('labels').values(row).execute();
  if (label.recheckOn !== undefined) await trx.insertInto('label_rechecks').values({ label_id: row.id, due_on: label.recheckOn }).execute();
  return labelRow(
    { ...row, corrected_by: null, withdrawn_reason: null, withdrawn_at: null, due_on: label.recheckOn ?? null },
    label.printed,
    [],
  );
}

async function addFood(session: Session, food: NewFood, label: NewLabel) {
  return session.write(async trx => {
    const row = newFood(food);
    await trx.insertInto('foods').values(row).execute();
    return { food: foodRow(row), label: await insertLabel(session, trx, row.id, label) };
  });
}

async function addLabel(session: Session, foodId: string, seenVersion: number, label: NewLabel) {
  return session.write(async trx => {
    await claimFood(trx, foodId, seenVersion);
    const added = await insertLabel(session, trx, foodId, label);
    const food = await trx.selectFrom('foods').selectAll().where('id', '=', foodId).executeTakeFirstOrThrow();
    return { food: foodRow(food), label: added };
  });
}

async function withdrawLabel(session: Session, labelId: string, seenVersion: number, reason: string): Promise<FoodRow> {
  return session.write(async trx => {
    const label = await trx.selectFrom('labels').select('food_id').where('id', '=', labelId).executeTakeFirst();
    if (label === undefined) throw new Fault('label-not-found', 'The label is not in the workspace.');
    await claimFood(trx, label.food_id, seenVersion);
    await trx
      .insertInto('label_withdrawals')
      .values({ label_id: labelId, reason, withdrawn_at: session.timestamp() })
      .onConflict(conflict => conflict.doNothing())
      .execute();
    return foodRow(await trx.selectFrom('foods').selectAll().where('id', '=', label.food_id).executeTakeFirstOrThrow());
  });
}

async function setRecheck(session: Session, labelId: string, seenDueOn: string | null, dueOn: string | null): Promise<void> {
  await session.write(async trx => {
    const label = await trx.selectFrom('labels').select('id').where('id', '=', labelId).executeTakeFirst();
    if (label === undefined) throw new Fault('label-not-found', 'The label is not in the workspace.');
    const standing = await trx.selectFrom('label_rechecks').select('due_on').where('label_id', '=', labelId).executeTakeFirst();
    if ((standing?.due_on ?? null) !== seenDueOn)
      throw new Fault('changed-meanwhile', 'Another day was set for this label in another window after it was opened here.');
    await trx.deleteFrom('label_rechecks').where('label_id', '=', labelId).execute();
    if (dueOn !== null) await trx.insertInto('label_rechecks').values({ label_id: labelId, due_on: dueOn }).execute();
  });
}
