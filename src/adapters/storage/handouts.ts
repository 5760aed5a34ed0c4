import type { HandoutFile, Versioned } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { refuseUnseen } from './kept.ts';
import type { Session } from './session.ts';

/** Handouts on a topic: the author's words, changeable and removable, each with the version that was seen. */

export async function listHandouts(session: Session): Promise<readonly Versioned<HandoutFile>[]> {
  const rows = await session.read(db => db.selectFrom('handouts').selectAll().orderBy('id').execute());
  return rows.map(row => ({ value: JSON.parse(row.handout) as HandoutFile, version: row.version, isDemo: row.is_demo === 1 }));
}

export async function putHandout(
  session: Session,
  handout: HandoutFile,
  seenVersion: number | null,
  isDemo = false,
): Promise<Versioned<HandoutFile>> {
  return session.write(async trx => {
    const earlier = await trx.selectFrom('handouts').selectAll().where('id', '=', handout.id).executeTakeFirst();
    refuseUnseen(earlier?.version, seenVersion);
    const demo = isDemo || earlier?.is_demo === 1;
    const row = { handout: JSON.stringify(handout), version: (earlier?.version ?? 0) + 1, is_demo: demo ? 1 : 0 };
    if (earlier === undefined)
      await trx
        .insertInto('handouts')
        .values({ id: handout.id, ...row })
        .execute();
    else await trx.updateTable('handouts').set(row).where('id', '=', handout.id).execute();
    return { value: handout, version: row.version, isDemo: demo };
  });
}

export async function removeHandout(session: Session, id: string, seenVersion: number): Promise<void> {
  await session.write(async trx => {
    const earlier = await trx.selectFrom('handouts').select('version').where('id', '=', id).executeTakeFirst();
    if (earlier === undefined) throw new Fault('handout-not-found', 'The handout is not in the workspace.');
    refuseUnseen(earlier.version, seenVersion);
    await trx.deleteFrom('handouts').where('id', '=', id).execute();
  });
}
