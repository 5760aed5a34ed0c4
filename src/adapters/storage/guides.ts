import type { GuideFile, KeptGuide, PublishedGuide } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { refuseUnseen } from './kept.ts';
import type { Tables } from './schema.ts';
import type { Session } from './session.ts';

/** Guides: the author's words, changeable and removable, each with the version that was seen. */

export async function listGuides(session: Session): Promise<readonly KeptGuide[]> {
  const rows = await session.read(db => db.selectFrom('guides').selectAll().orderBy('id').execute());
  return rows.map(keptGuide);
}

export async function getGuide(session: Session, id: string): Promise<KeptGuide | undefined> {
  const row = await session.read(db => db.selectFrom('guides').selectAll().where('id', '=', id).executeTakeFirst());
  return row === undefined ? undefined : keptGuide(row);
}

/** Without `published` what was published stays as it is. */
export async function putGuide(
  session: Session,
  guide: GuideFile,
  seenVersion: number | null,
  more: { readonly published?: PublishedGuide | null; readonly isDemo?: boolean } = {},
): Promise<KeptGuide> {
  return session.write(async trx => {
    const earlier = await trx.selectFrom('guides').selectAll().where('id', '=', guide.id).executeTakeFirst();
    refuseUnseen(earlier?.version, seenVersion);
    const row = {
      id: guide.id,
      guide: JSON.stringify(guide),
      published: more.published === undefined ? (earlier?.published ?? null) : more.published && JSON.stringify(more.published),
      version: (earlier?.version ?? 0) + 1,
      is_demo: (more.isDemo ?? earlier?.is_demo === 1) ? 1 : 0,
    };
    if (earlier === undefined) await trx.insertInto('guides').values(row).execute();
    else await trx.updateTable('guides').set(row).where('id', '=', guide.id).execute();
    return keptGuide(row);
  });
}

export async function removeGuide(session: Session, id: string, seenVersion: number): Promise<void> {
  await session.write(async trx => {
    const earlier = await trx.selectFrom('guides').select('version').where('id', '=', id).executeTakeFirst();
    if (earlier === undefined) throw new Fault('guide-not-found', 'The guide is not in the workspace.');
    refuseUnseen(earlier.version, seenVersion);
    await trx.deleteFrom('guides').where('id', '=', id).execute();
  });
}

function keptGuide({ guide, published, version, is_demo }: Tables['guides']): KeptGuide {
  return {
    value: JSON.parse(guide) as GuideFile,
    version,
    isDemo: is_demo === 1,
    ...(published === null ? {} : { published: JSON.parse(published) as PublishedGuide }),
  };
}
