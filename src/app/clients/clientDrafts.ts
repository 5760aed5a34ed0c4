import {
  type ClientDrafts,
  clientDraftsFromJson,
  clientDraftsToJson,
  clientOfDrafts,
  type DraftForm,
  draftForms,
  draftsIdOf,
} from '#core/client/record/clientDrafts.ts';
import { Fault } from '#core/errors.ts';
import { isNewerForm } from '#core/json/presentForm.ts';
import type { ClientJson, ClientVault } from '../clientVault.ts';

type Draft = ClientDrafts['drafts'][number];

/** In bytes of JSON. Own decision: many times a long assessment. */
const largestDraft = 256 * 2 ** 10;

/** What lies half typed in a form; undefined where nothing does. @throws Fault clients-locked, client-not-found, client-record-damaged */
export async function findDraft(vault: ClientVault, clientId: string, form: DraftForm): Promise<Draft | undefined> {
  return draftOf(wholeDrafts(clientId, await vault.drafts(clientId)), form);
}

/**
 * Keeps what is half typed in the place of what was. `seenRevision` null means that nothing was there.
 * @throws Fault changed-meanwhile, request-too-large, request-not-valid, clients-locked, client-not-found, client-record-damaged
 */
export async function keepDraft(
  vault: ClientVault,
  clientId: string,
  { form, value, seenRevision }: { readonly form: DraftForm; readonly value: Draft['value']; readonly seenRevision: number | null },
  now: Date,
): Promise<Draft> {
  if (new TextEncoder().encode(JSON.stringify(value)).length > largestDraft)
    throw new Fault('request-too-large', 'What is half typed here is larger than 256 kB; it was not kept.');
  const kept = await vault.changeDrafts(clientId, json => {
    const standing = wholeDrafts(clientId, json);
    refuseUnseen(standing, form, seenRevision);
    const revision = standing.version + 1;
    return readable(changed(standing, form, { form, revision, savedAt: now.toISOString(), value }));
  });
  return draftOf(kept, form)!;
}

/** Leaves no draft; where there is none all is well. @throws Fault changed-meanwhile, clients-locked, client-not-found, client-record-damaged */
export async function dropDraft(vault: ClientVault, clientId: string, form: DraftForm, seenRevision: number): Promise<void> {
  await vault.changeDrafts(clientId, json => {
    const standing = wholeDrafts(clientId, json);
    if (draftOf(standing, form) === undefined) return undefined;
    refuseUnseen(standing, form, seenRevision);
    return clientDraftsToJson(changed(standing, form));
  });
}

/** About whom something lies half typed, in which form and since when, the latest first; not what was typed. @throws Fault clients-locked */
export async function listDrafts(vault: ClientVault) {
  const all = (await vault.allDrafts()).flatMap(json =>
    (clientDraftsFromJson(json).value?.drafts ?? []).flatMap(({ form: kept, savedAt }) => {
      const form = draftForms.find(one => one === kept);
      return form === undefined ? [] : [{ clientId: clientOfDrafts(json.id)!, form, savedAt }];
    }),
  );
  return all.sort((a, b) => b.savedAt.localeCompare(a.savedAt, 'en'));
}

function draftOf({ drafts }: ClientDrafts, form: DraftForm): Draft | undefined {
  return drafts.find(one => one.form === form);
}

/** The count goes on where nothing is half typed any more: a window that was left open must not take a later draft for the one it knew. */
function changed({ id, version, drafts }: ClientDrafts, form: DraftForm, draft?: Draft): ClientDrafts {
  return { id, version: version + 1, drafts: [...drafts.filter(one => one.form !== form), ...(draft === undefined ? [] : [draft])] };
}

function refuseUnseen(drafts: ClientDrafts, form: DraftForm, seenRevision: number | null): void {
  if ((draftOf(drafts, form)?.revision ?? null) !== seenRevision)
    throw new Fault('changed-meanwhile', 'What is half typed here was changed, saved or discarded in another window.');
}

/** Looked at before it is written: what could not be read again would take the client's other drafts with it. @throws Fault request-not-valid */
function readable(drafts: ClientDrafts) {
  const json = clientDraftsToJson(drafts);
  if (clientDraftsFromJson(json).value === undefined)
    throw new Fault('request-not-valid', 'What is half typed here could not be read again; it was not kept.');
  return json;
}

/** @throws Fault client-record-damaged, client-record-newer */
function wholeDrafts(clientId: string, json: ClientJson | undefined): ClientDrafts {
  if (json === undefined) return { id: draftsIdOf(clientId), version: 0, drafts: [] };
  const { value, issues } = clientDraftsFromJson(json);
  if (isNewerForm(issues)) throw new Fault('client-record-newer', 'What is half typed about this client was written by a newer program.');
  if (value === undefined) throw new Fault('client-record-damaged', 'What is half typed about this client cannot be read.');
  return value;
}
