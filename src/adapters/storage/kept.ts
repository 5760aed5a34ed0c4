import type { PlateFile, Versioned } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import type { SavedSurvey } from '#core/yardstick/savedSurvey.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import type { Session } from './session.ts';

/** Plates, yardsticks and saved surveys: the user's own, changeable and removable, each with the version that was seen. */

export async function listPlates(session: Session): Promise<readonly Versioned<PlateFile>[]> {
  const rows = await session.read(db => db.selectFrom('plates').selectAll().orderBy('id').execute());
  return rows.map(row => ({ value: JSON.parse(row.plate) as PlateFile, version: row.version, isDemo: row.is_demo === 1 }));
}

export async function putPlate(
  session: Session,
  plate: PlateFile,
  seenVersion: number | null,
  isDemo = false,
): Promise<Versioned<PlateFile>> {
  return session.write(async trx => {
    const earlier = await trx.selectFrom('plates').select('version').where('id', '=', plate.id).executeTakeFirst();
    refuseUnseen(earlier?.version, seenVersion);
    const version = (earlier?.version ?? 0) + 1;
    const row = { plate: JSON.stringify(plate), version, is_demo: isDemo ? 1 : 0 };
    if (earlier === undefined)
      await trx
        .insertInto('plates')
        .values({ id: plate.id, ...row })
        .execute();
    else await trx.updateTable('plates').set(row).where('id', '=', plate.id).execute();
    return { value: plate, version, isDemo };
  });
}

export async function removePlate(session: Session, id: string, seenVersion: number): Promise<void> {
  await session.write(async trx => {
    const earlier = await trx.selectFrom('plates').select('version').where('id', '=', id).executeTakeFirst();
    if (earlier === undefined) throw new Fault('plate-not-found', 'The plate is not in the workspace.');
    refuseUnseen(earlier.version, seenVersion);
    await trx.deleteFrom('plates').where('id', '=', id).execute();
  });
}

export async function listYardsticks(session: Session): Promise<readonly Versioned<Yardstick>[]> {
  const rows = await session.read(db => db.selectFrom('yardsticks').selectAll().orderBy('id').execute());
  return rows.map(row => ({ value: JSON.parse(row.yardstick) as Yardstick, version: row.version, isDemo: false }));
}

export async function putYardstick(session: Session, yardstick: Yardstick, seenVersion: number | null): Promise<Versioned<Yardstick>> {
  return session.write(async trx => {
    const earlier = await trx.selectFrom('yardsticks').select('version').where('id', '=', yardstick.id).executeTakeFirst();
    refuseUnseen(earlier?.version, seenVersion);
    const version = (earlier?.version ?? 0) + 1;
    const row = { yardstick: JSON.stringify(yardstick), version };
    if (earlier === undefined)
      await trx
        .insertInto('yardsticks')
        .values({ id: yardstick.id, ...row })
        .execute();
    else await trx.updateTable('yardsticks').set(row).where('id', '=', yardstick.id).execute();
    return { value: yardstick, version, isDemo: false };
  });
}

export async function removeYardstick(session: Session, id: string, seenVersion: number): Promise<void> {
  await session.write(async trx => {
    const earlier = await trx.selectFrom('yardsticks').select('version').where('id', '=', id).executeTakeFirst();
    if (earlier === undefined) throw new Fault('yardstick-not-found', 'The yardstick is not in the workspace.');
    refuseUnseen(earlier.version, seenVersion);
    await trx.deleteFrom('yardsticks').where('id', '=', id).execute();
  });
}

export async function listSurveys(session: Session): Promise<readonly SavedSurvey[]> {
  const rows = await session.read(db => db.selectFrom('saved_surveys').selectAll().orderBy('id').execute());
  return rows.map(row => JSON.parse(row.survey) as SavedSurvey);
}

export async function putSurvey(session: Session, survey: SavedSurvey): Promise<SavedSurvey> {
  return session.write(async trx => {
    await trx.deleteFrom('saved_surveys').where('id', '=', survey.id).execute();
    await trx
      .insertInto('saved_surveys')
      .values({ id: survey.id, survey: JSON.stringify(survey) })
      .execute();
    return survey;
  });
}

export async function removeSurvey(session: Session, id: string): Promise<void> {
  await session.write(trx => trx.deleteFrom('saved_surveys').where('id', '=', id).execute());
}

/** `seenVersion` null means "new": then nothing may be there yet. */
export function refuseUnseen(version: number | undefined, seenVersion: number | null): void {
  if ((version ?? null) !== seenVersion) throw new Fault('changed-meanwhile', 'It was changed in another window after it was opened here.');
}
