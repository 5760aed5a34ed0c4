import type { Store } from '#app/store.ts';
import { purging } from './purge.ts';
import type { Session } from './session.ts';

/** The first contents of a new workspace: brought once, by one program, whole. */
export function beginning(session: Session): Pick<Store, 'onceWhenNew'> {
  return {
    onceWhenNew: work =>
      session.alone(async () => {
        const { revision, is_beginning } = await session.read(db =>
          db.selectFrom('workspace').select(['revision', 'is_beginning']).executeTakeFirstOrThrow(),
        );
        if (revision > 0 && is_beginning === 0) return;
        await session.write(async trx => {
          await trx.updateTable('workspace').set({ is_beginning: 1 }).execute();
          await purging(trx, 'demo');
        });
        await work();
        await session.write(trx => trx.updateTable('workspace').set({ is_beginning: 0 }).execute());
      }),
  };
}
