import type { DraftForm } from '#core/client/record/clientDrafts.ts';
import { isObject } from '#core/json/presentForm.ts';
import { answer, api, Problem } from '../../api.ts';
import type { DraftPlace } from '../../ui/draft/draftPlace.ts';

/** What this window knows of one draft: the revision that it saw last, null where nothing is kept, and the call that is under way. */
interface Seen {
  revision: number | null;
  last: Promise<unknown>;
}

/** Of every form that was opened in this window. Ids and counts, nothing that was typed. */
const seenDrafts = new Map<string, Seen>();

/** With the records of clients, sealed as they are and locked with them. */
export function vaultDraft(clientId: string, form: DraftForm): DraftPlace {
  const name = `platewright-vault ${clientId} ${form}`;
  const param = { id: clientId, form };
  const seen = seenDrafts.get(name) ?? { revision: null, last: Promise.resolve() };
  seenDrafts.set(name, seen);
  /** One after the other, so that each sends the revision that the one before it was given. */
  const inTurn = <Answer>(call: () => Promise<Answer>): Promise<Answer> => {
    const next = seen.last.then(call, call);
    seen.last = next;
    return next;
  };
  const write = (values: unknown, keepalive: boolean): Promise<void> =>
    inTurn(async () => {
      if (!isObject(values)) throw new Error('only the fields of a form are kept');
      const json = { revision: seen.revision, value: { ...values } };
      const { revision } = await answer(api.clients[':id'].drafts[':form'].$put({ param, json }, { init: { keepalive } }));
      seen.revision = revision;
    });
  return {
    name,
    read: () =>
      inTurn(async () => {
        const { draft } = await answer(api.clients[':id'].drafts[':form'].$get({ param }));
        seen.revision = draft?.revision ?? null;
        return draft === null ? undefined : { at: draft.savedAt, values: draft.value };
      }),
    write: ({ values }) => write(values, false),
    remove: () =>
      inTurn(async () => {
        if (seen.revision === null) return;
        const query = { revision: String(seen.revision) };
        seen.revision = null;
        await answer(api.clients[':id'].drafts[':form'].$delete({ param, query })).catch(leaveAnothers);
      }),
    // The browser goes on with it when the page is gone. What comes too late was locked meanwhile.
    writeAtOnce: ({ values }) => void write(values, true).catch(() => undefined),
  };
}

/** What another window has kept since then is its own. */
function leaveAnothers(fault: unknown): void {
  if (!(fault instanceof Problem && fault.code === 'changed-meanwhile')) throw fault;
}
