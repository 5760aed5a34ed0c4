import { createHash, randomUUID } from 'node:crypto';
import { type Kysely, sql } from 'kysely';
import type { FoodRow, NewFood, NewPhoto, PhotoRow, Store } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import * as computed from './estimates.ts';
import * as guides from './guides.ts';
import * as handouts from './handouts.ts';
import * as kept from './kept.ts';
import * as labels from './labels.ts';
import * as references from './references.ts';
import { foodColumns, foodRow } from './rows.ts';
import type { Tables } from './schema.ts';
import { claimFood, Session } from './session.ts';
import * as whole from './wholeWorkspace.ts';

/** The store on any engine that Kysely speaks to. */
export function sqlStore(db: Kysely<Tables>, now: () => Date, close: () => Promise<void>): Store {
  const session = new Session(db, now);
  return {
    listFoods: filter => listFoods(session, filter),
    getFood: async id => {
      const row = await session.read(reader => reader.selectFrom('foods').selectAll().where('id', '=', id).executeTakeFirst());
      return row === undefined ? undefined : foodRow(row);
    },
    labelsOf: foodId => labels.labelsOf(session, foodId),
    standingLabels: category => labels.standingLabels(session, category),
    addFood: (food, label) => labels.addFood(session, food, label),
    addLabel: (foodId, seenVersion, label) => labels.addLabel(session, foodId, seenVersion, label),
    withdrawLabel: (labelId, seenVersion, reason) => labels.withdrawLabel(session, labelId, seenVersion, reason),
    changeFood: (foodId, seenVersion, change) => changeFood(session, foodId, seenVersion, change),
    setRecheck: (labelId, dueOn) => labels.setRecheck(session, labelId, dueOn),
    applyImport: (entry, watch) => labels.applyImport(session, entry, watch),
    undoImport: importId => labels.undoImport(session, importId),
    listImports: async () => {
      const rows = await session.read(reader =>
        reader.selectFrom('imports').selectAll().orderBy('imported_at', 'desc').orderBy('id').execute(),
      );
      return rows.map(({ id, file_name, imported_at, added, joined, undone_at }) => ({
        id,
        fileName: file_name,
        at: imported_at,
        added,
        joined,
        ...(undone_at === null ? {} : { undoneAt: undone_at }),
      }));
    },
    listPlates: () => kept.listPlates(session),
    putPlate: (plate, seenVersion, isDemo) => kept.putPlate(session, plate, seenVersion, isDemo),
    removePlate: (id, seenVersion) => kept.removePlate(session, id, seenVersion),
    listYardsticks: () => kept.listYardsticks(session),
    putYardstick: (yardstick, seenVersion) => kept.putYardstick(session, yardstick, seenVersion),
    removeYardstick: (id, seenVersion) => kept.removeYardstick(session, id, seenVersion),
    listSurveys: () => kept.listSurveys(session),
    putSurvey: survey => kept.putSurvey(session, survey),
    removeSurvey: id => kept.removeSurvey(session, id),
    listGuides: () => guides.listGuides(session),
    getGuide: id => guides.getGuide(session, id),
    putGuide: (guide, seenVersion, more) => guides.putGuide(session, guide, seenVersion, more),
    removeGuide: (id, seenVersion) => guides.removeGuide(session, id, seenVersion),
    listHandouts: () => handouts.listHandouts(session),
    putHandout: (handout, seenVersion, isDemo) => handouts.putHandout(session, handout, seenVersion, isDemo),
    removeHandout: (id, seenVersion) => handouts.removeHandout(session, id, seenVersion),
    addPhoto: (labelId, photo) => addPhoto(session, labelId, photo),
    getPhoto: async id => {
      const row = await session.read(reader => reader.selectFrom('photos').selectAll().where('id', '=', id).executeTakeFirst());
      if (row === undefined) return undefined;
      return {
        id: row.id,
        labelId: row.label_id,
        mime: row.mime as NewPhoto['mime'],
        sha256: row.sha256,
        bytes: new Uint8Array(row.bytes),
      };
    },
    estimates: version => computed.estimates(session, version),
    putEstimates: (version, given) => computed.putEstimates(session, version, given),
    listReferences: () => references.listReferences(session),
    referenceTables: () => references.referenceTables(session),
    putReferences: tables => references.putReferences(session, tables),
    removeReference: dataset => references.removeReference(session, dataset),
    exportAll: () => whole.exportAll(session),
    restore: file => whole.restore(session, file),
    purgeDemo: () => whole.purgeDemo(session),
    purgeAll: () => whole.purgeAll(session),
    counts: () => counts(session),
    revision: async () => {
      const row = await session.read(reader => reader.selectFrom('workspace').select('revision').executeTakeFirstOrThrow());
      return row.revision;
    },
    close,
  };
}

async function listFoods(
  session: Session,
  filter: { readonly category?: string; readonly search?: string } = {},
): Promise<readonly FoodRow[]> {
  const rows = await session.read(db => {
    let query = db.selectFrom('foods').selectAll().orderBy(sql`lower(coalesce(maker, ''))`).orderBy(sql`lower(name)`).orderBy('id');
    if (filter.category !== undefined) query = query.where(sql<string>`lower(category)`, '=', filter.category.toLowerCase());
    for (const word of filter.search?.toLowerCase().split(/\s+/).filter(Boolean) ?? []) {
      // "%" and "_" are letters here, not wildcards.
      const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
      query = query.where(sql<boolean>`lower(name || ' ' || coalesce(maker, '') || ' ' || coalesce(gtin, '')) like ${pattern} escape '\\'`);
    }
    return query.execute();
  });
  return rows.map(foodRow);
}

async function changeFood(session: Session, foodId: string, seenVersion: number, change: Partial<NewFood>): Promise<FoodRow> {
  return session.write(async trx => {
    await claimFood(trx, foodId, seenVersion);
    const columns = foodColumns(change);
    if (Object.keys(columns).length > 0) await trx.updateTable('foods').set(columns).where('id', '=', foodId).execute();
    return foodRow(await trx.selectFrom('foods').selectAll().where('id', '=', foodId).executeTakeFirstOrThrow());
  });
}

async function addPhoto(session: Session, labelId: string, photo: NewPhoto): Promise<PhotoRow> {
  const sha256 = createHash('sha256').update(photo.bytes).digest('hex');
  return session.write(async trx => {
    const label = await trx.selectFrom('labels').select('id').where('id', '=', labelId).executeTakeFirst();
    if (label === undefined) throw new Fault('label-not-found', 'The label is not in the workspace.');
    const id = randomUUID();
    await trx
      .insertInto('photos')
      .values({ id, label_id: labelId, mime: photo.mime, sha256, bytes: Buffer.from(photo.bytes) })
      .execute();
    return { id, labelId, mime: photo.mime, sha256 };
  });
}

async function counts(session: Session) {
  return session.read(async db => {
    const one = async (table: 'foods' | 'labels' | 'plates' | 'photos', onlyDemo = false): Promise<number> => {
      let query = db.selectFrom(table).select(eb => eb.fn.countAll().as('rows'));
      if (onlyDemo) query = query.where('is_demo' as never, '=', 1 as never);
      return Number((await query.executeTakeFirstOrThrow()).rows);
    };
    return {
      foods: await one('foods'),
      labels: await one('labels'),
      demoFoods: await one('foods', true),
      plates: await one('plates'),
      photos: await one('photos'),
    };
  });
}
