import { createHash, randomUUID } from 'node:crypto';
import type { Store } from '#app/store.ts';
import { Fault } from '#core/errors.ts';
import { readMime } from './keptTexts.ts';
import type { Session } from './session.ts';

/** Photos of packages, each with the label that was read from it. */
export function photos(session: Session): Pick<Store, 'addPhoto' | 'getPhoto'> {
  return {
    addPhoto: (labelId, { mime, bytes }) => {
      const sha256 = createHash('sha256').update(bytes).digest('hex');
      return session.write(async trx => {
        const label = await trx.selectFrom('labels').select('id').where('id', '=', labelId).executeTakeFirst();
        if (label === undefined) throw new Fault('label-not-found', 'The label is not in the workspace.');
        const id = randomUUID();
        await trx
          .insertInto('photos')
          .values({ id, label_id: labelId, mime, sha256, bytes: Buffer.from(bytes) })
          .execute();
        return { id, labelId, mime, sha256 };
      });
    },
    getPhoto: async id => {
      const row = await session.read(db => db.selectFrom('photos').selectAll().where('id', '=', id).executeTakeFirst());
      const mime = row === undefined ? undefined : readMime(row.mime);
      if (row === undefined || mime === undefined) return undefined;
      return { id: row.id, labelId: row.label_id, mime, sha256: row.sha256, bytes: new Uint8Array(row.bytes) };
    },
  };
}
