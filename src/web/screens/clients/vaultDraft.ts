import type { DraftForm } from '#core/client/record/clientDrafts.ts';
import { isObject } from '#core/json/presentForm.ts';
import { answer, api, Problem } from '../../api.ts';
import type { DraftPlace, KeptDraft } from '../../ui/draft/draftPlace.ts';

/** What this window knows of one draft: the revision that it saw last, null where nothing is kept, and the call that is under way. */
interface Seen {
  revision: number | null;
  /** The mark of what was sent and not answered. */
  sent: string | undefined;
  last: Promise<unknown>;
}

/** Of every form that was opened in this window. Ids and counts, nothing that was typed. */
const seenDrafts = new Map<string, Seen>();

/** With the records of clients, sealed as they are and locked with them. */
export function vaultDraft(clientId: string, form: DraftForm): DraftPlace {
  const name = `platewright-vault ${clientId} ${form}`;
  const param = { id: clientId, form };
  const seen = seenDrafts.get(name) ?? { revision: null, sent: undefined, last: Promise.resolve() };
  seenDrafts.set(name, seen);
  /** One after the other, so that each sends the revision that the one before it was given. */
  const inTurn = <Answer>(call: () => Promise<Answer>): Promise<Answer> => {
    const next = seen.last.then(call, call);
    // Not the answer: what was typed is not held beyond its form.
    seen.last = next.then(
      () => undefined,
      () => undefined,
    );
    return next;
  };
  /** An answer was lost: what this window sent is its own, also where the program kept it. */
  const learnWhatArrived = async (): Promise<void> => {
    const { draft } = await answer(api.clients[':id'].drafts[':form'].$get({ param }));
    if (draft !== null && draft.value.mark === seen.sent) seen.revision = draft.revision;
    seen.sent = undefined;
  };
  const write = ({ values, begunFrom = '' }: KeptDraft, keepalive: boolean): Promise<void> =>
    inTurn(async () => {
      if (!isObject(values)) throw new Error('only the fields of a form are kept');
      if (seen.sent !== undefined) await learnWhatArrived();
      seen.sent = crypto.randomUUID();
      const json = { revision: seen.revision, value: { values: { ...values }, begunFrom, mark: seen.sent } };
      const { revision } = await answer(api.clients[':id'].drafts[':form'].$put({ param, json }, { init: { keepalive } }));
      seen.revision = revision;
      seen.sent = undefined;
    });
  return {
    name,
    read: () =>
      inTurn(async () => {
        const { draft } = await answer(api.clients[':id'].drafts[':form'].$get({ param }));
        seen.revision = draft?.revision ?? null;
        if (draft === null) return undefined;
        const { savedAt: at, value } = draft;
        return { at, values: value.values ?? value, ...(typeof value.begunFrom === 'string' ? { begunFrom: value.begunFrom } : {}) };
      }),
    write: draft => write(draft, false),
    remove: () =>
      inTurn(async () => {
        if (seen.sent !== undefined) await learnWhatArrived();
        if (seen.revision === null) return;
        const query = { revision: String(seen.revision) };
        await answer(api.clients[':id'].drafts[':form'].$delete({ param, query })).catch(leaveAnothers);
        // Not before: what could not be forgotten still stands there under its revision.
        seen.revision = null;
      }),
    // The browser goes on with it when the page is gone. What comes too late was locked meanwhile.
    writeAtOnce: draft => void write(draft, true).catch(() => undefined),
  };
}

/** What another window has kept since then is its own. */
function leaveAnothers(fault: unknown): void {
  if (!(fault instanceof Problem && fault.code === 'changed-meanwhile')) throw fault;
}
