import { randomUUID } from 'node:crypto';
import { setImmediate } from 'node:timers/promises';
import type { ImportEntry, ImportRow, Store } from '#app/store.ts';
import { rowsAStep, unwatched, type Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { newFood, newLabel } from './newRows.ts';
import type { FoodTable, LabelTable } from './schema.ts';
import { batches, type Session } from './session.ts';

/** Many labels at once, and the way back. */
export function imports(session: Session): Pick<Store, 'applyImport' | 'undoImport' | 'listImports'> {
  return {
    applyImport: (entry, watch) => applyImport(session, entry, watch),
    undoImport: importId => undoImport(session, importId),
    listImports: () => listImports(session),
  };
}

/** All of an import or nothing of it. A label that joins a food raises that food's version, so that an open form notices. */
async function applyImport(session: Session, entry: ImportEntry, watch: Watch = unwatched) {
  return session.write(async trx => {
    const at = session.timestamp();
    const first = await session.takeSequence(trx, entry.labels.length);
    const foods: FoodTable[] = [];
    const labels: LabelTable[] = [];
    const rechecks: { label_id: string; due_on: string }[] = [];
    const joined: string[] = [];
    for (const [index, one] of entry.labels.entries()) {
      if (index % rowsAStep === 0) {
        await watch.step('Keeping labels', index, entry.labels.length);
        // The rest of the program has its turn, whether anybody watches or not.
        await setImmediate();
      }
      let foodId: string;
      if ('begins' in one) {
        const food = newFood({ ...one.begins, ...(entry.isDemo === undefined ? {} : { isDemo: entry.isDemo }) });
        foods.push(food);
        foodId = food.id;
      } else {
        foodId = one.joins;
        joined.push(foodId);
      }
      const label = await newLabel(trx, foodId, one.label, first + index, at);
      labels.push(label);
      if (one.label.recheckOn !== undefined) rechecks.push({ label_id: label.id, due_on: one.label.recheckOn });
    }
    for (const rows of batches(foods)) {
      await watch.step('Keeping labels', labels.length, labels.length);
      await trx.insertInto('foods').values(rows).execute();
    }
    for (const rows of batches(joined)) {
      const { numUpdatedRows } = await trx
        .updateTable('foods')
        .set(eb => ({ version: eb('version', '+', 1) }))
        .where('id', 'in', rows)
        .executeTakeFirst();
      if (Number(numUpdatedRows) !== new Set(rows).size)
        throw new Fault('food-not-found', 'A food that a row was to join is no longer in the workspace.');
    }
    for (const rows of batches(labels)) {
      await watch.step('Keeping labels', labels.length, labels.length);
      await trx.insertInto('labels').values(rows).execute();
    }
    for (const rows of batches(rechecks)) await trx.insertInto('label_rechecks').values(rows).execute();
    const importId = randomUUID();
    const counts = { added: foods.length, joined: joined.length };
    await trx
      .insertInto('imports')
      .values({ id: importId, file_name: entry.fileName, imported_at: at, ...counts, undone_at: null })
      .execute();
    for (const rows of batches(labels)) {
      await watch.step('Keeping labels', labels.length, labels.length);
      await trx
        .insertInto('import_labels')
        .values(rows.map(({ id }) => ({ import_id: importId, label_id: id })))
        .execute();
    }
    return { importId, ...counts };
  });
}

async function undoImport(session: Session, importId: string): Promise<{ readonly withdrawn: number }> {
  return session.write(async trx => {
    const entry = await trx.selectFrom('imports').select('undone_at').where('id', '=', importId).executeTakeFirst();
    if (entry === undefined) throw new Fault('not-found', 'The import is not in the workspace.');
    const at = session.timestamp();
    const open = await trx
      .selectFrom('import_labels')
      .innerJoin('labels', 'labels.id', 'import_labels.label_id')
      .select(['import_labels.label_id', 'labels.food_id'])
      .where('import_id', '=', importId)
      .where(({ not, exists, selectFrom }) =>
        not(
          exists(selectFrom('label_withdrawals').select('label_id').whereRef('label_withdrawals.label_id', '=', 'import_labels.label_id')),
        ),
      )
      .execute();
    for (const rows of batches(open)) {
      await trx
        .insertInto('label_withdrawals')
        .values(rows.map(({ label_id }) => ({ label_id, reason: 'the import was undone', withdrawn_at: at })))
        .execute();
      await trx
        .updateTable('foods')
        .set(eb => ({ version: eb('version', '+', 1) }))
        .where(
          'id',
          'in',
          rows.map(({ food_id }) => food_id),
        )
        .execute();
    }
    await trx.updateTable('imports').set({ undone_at: at }).where('id', '=', importId).where('undone_at', 'is', null).execute();
    return { withdrawn: open.length };
  });
}

async function listImports(session: Session): Promise<readonly ImportRow[]> {
  const rows = await session.read(db => db.selectFrom('imports').selectAll().orderBy('imported_at', 'desc').orderBy('id').execute());
  return rows.map(({ id, file_name, imported_at, added, joined, undone_at }) => ({
    id,
    fileName: file_name,
    at: imported_at,
    added,
    joined,
    ...(undone_at === null ? {} : { undoneAt: undone_at }),
  }));
}
