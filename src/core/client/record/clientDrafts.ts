import { z } from 'zod';
import type { Reading } from '#core/errors.ts';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { readWhole } from '#core/json/readWhole.ts';

/** The forms about a client that may lie half typed. */
export const draftForms = ['assessment', 'results', 'prescription', 'handout', 'meals', 'contact', 'note'] as const;
export type DraftForm = (typeof draftForms)[number];

const draftSchema = z.object({
  /** One of `draftForms`; a later program may know more. */
  form: z.string(),
  /** Another one after each saving, never one that stood before; sent back with the next. */
  revision: z.number(),
  /** ISO 8601. */
  savedAt: z.string(),
  /** As the page keeps it: it may be anything but finished. */
  value: z.record(z.string(), z.unknown()),
});

/** What lies half typed about one client, one draft a form. It stands beside the client's record and goes with it. */
export const clientDraftsSchema = z.object({
  id: z.string(),
  /** Grows with each change, and is the revision of the draft that was changed. */
  version: z.number(),
  drafts: z.array(draftSchema),
});

export type ClientDrafts = DeepReadonly<z.output<typeof clientDraftsSchema>>;

export function clientDraftsFromJson(json: unknown): Reading<ClientDrafts | undefined> {
  return readWhole(clientDraftsSchema, json, []);
}

export function clientDraftsToJson(drafts: ClientDrafts): ClientDrafts & { readonly format: number } {
  return { format: 1, ...drafts };
}

const beginning = 'drafts of ';

/** Under which id the drafts about a client are kept. */
export function draftsIdOf(clientId: string): string {
  return `${beginning}${clientId}`;
}

/** The client whom kept drafts are about; undefined where the id is that of a record. */
export function clientOfDrafts(id: string): string | undefined {
  return id.startsWith(beginning) ? id.slice(beginning.length) : undefined;
}
