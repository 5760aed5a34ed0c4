import { createRoute, z } from '@hono/zod-openapi';
import { dropDraft, findDraft, keepDraft, listDrafts } from '#app/clients/clientDrafts.ts';
import { clientDraftsSchema, draftForms } from '#core/client/record/clientDrafts.ts';
import { edgeDraft, edgeDraftAnswer } from '../edge.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

const params = z.object({
  id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }),
  form: z.enum(draftForms).openapi({ param: { name: 'form', in: 'path' } }),
});
const path = '/clients/{id}/drafts/{form}';
const { value: valueSchema } = clientDraftsSchema.shape.drafts.element.shape;
const keptDraft = z
  .object({ revision: z.number(), savedAt: z.string(), value: edgeDraftAnswer(valueSchema, 'DraftValueJson') })
  .openapi('ClientDraft');
const draftShort = z.object({ clientId: z.string(), form: z.enum(draftForms), savedAt: z.string() }).openapi('ClientDraftShort');

/** What lies half typed about a client, kept with the records until the page has saved or discarded it. */
export function keptDraftRoutes({ vault, now, log }: World) {
  return newApi(log)
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/drafts',
        responses: answers(z.array(draftShort), 'About whom something lies half typed, the latest first; not what was typed'),
      }),
      async context => context.json(await listDrafts(vault), 200),
    )
    .openapi(
      createRoute({
        method: 'get',
        path,
        request: { params },
        responses: answers(z.object({ draft: keptDraft.nullable() }), 'What lies half typed in one form; null where nothing does'),
      }),
      async context => {
        const { id, form } = context.req.valid('param');
        const draft = await findDraft(vault, id, form);
        return context.json(
          { draft: draft === undefined ? null : { revision: draft.revision, savedAt: draft.savedAt, value: draft.value } },
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path,
        request: {
          params,
          body: jsonBody(z.object({ revision: z.number().int().positive().nullable(), value: edgeDraft(valueSchema, 'DraftValueJson') })),
        },
        responses: answers(keptDraft.omit({ value: true }), 'The revision to send next time; 256 kB of JSON at most'),
      }),
      async context => {
        const { id, form } = context.req.valid('param');
        const { revision: seenRevision, value } = context.req.valid('json');
        const { revision, savedAt } = await keepDraft(vault, id, { form, value, seenRevision }, now());
        return context.json({ revision, savedAt }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path,
        request: { params, query: z.object({ revision: z.coerce.number().int().positive() }) },
        responses: answers(z.object({ done: z.literal(true) }), 'Nothing lies half typed in this form any more'),
      }),
      async context => {
        const { id, form } = context.req.valid('param');
        await dropDraft(vault, id, form, context.req.valid('query').revision);
        return context.json({ done: true as const }, 200);
      },
    );
}
