import { createRoute, z } from '@hono/zod-openapi';
import type { HandoutFile, Versioned } from '#app/documents.ts';
import { handoutTold, topicHandout, wholePage } from '#app/handouts/builtHandout.ts';
import type { Previews } from '#app/previews.ts';
import { handoutHtml } from '#core/handout/html/handoutHtml.ts';
import { exactDress, pageDress } from '../guideBodies.ts';
import { handoutFull, handoutJson, handoutPreview } from '../handoutBodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody, jsonBody } from './answers.ts';
import { removalRoute } from './removal.ts';

const params = z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' } }) });
const written = z.object({ handout: handoutJson, dress: pageDress.default({ largePrint: false }) });

function full({ value, version, isDemo }: Versioned<HandoutFile>) {
  return { handout: value, version, isDemo };
}

/** Handouts on a topic, kept as they were typed. */
export function handoutRoutes(world: World, previews: Previews) {
  const { store } = world;
  return newApi(world.log)
    .openapi(
      createRoute({ method: 'get', path: '/handouts', responses: answers(z.array(handoutFull), 'Handouts on a topic') }),
      async context => context.json((await store.handouts.list()).map(full), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/handouts/{id}',
        request: { params, body: jsonBody(z.object({ handout: handoutJson, version: z.number().nullable() })) },
        responses: answers(handoutFull, 'The handout that was kept'),
      }),
      async context => {
        const { handout, version } = context.req.valid('json');
        const { id } = context.req.valid('param');
        return context.json(full(await store.handouts.put({ ...handout, id }, version)), 200);
      },
    )
    .openapi(removalRoute('/handouts/{id}', 'handout'), async context => {
      const { id } = context.req.valid('param');
      await store.handouts.remove(id, context.req.valid('query').version);
      return context.json({ id }, 200);
    })
    .openapi(
      createRoute({
        method: 'post',
        path: '/handout-previews',
        request: { body: jsonBody(written) },
        responses: answers(handoutPreview, 'What the handout comes to, and where its page can be looked at; keeps nothing'),
      }),
      async context => {
        const { handout, dress } = context.req.valid('json');
        return context.json(handoutTold(await topicHandout(handout, world), previews, dress.largePrint), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/handout-previews/paper',
        request: { body: jsonBody(written) },
        responses: fileAnswer('application/pdf', 'The handout as paper will have it'),
      }),
      async context => {
        const { handout, dress } = context.req.valid('json');
        const print = world.pdfPrinter(context.req.raw.signal);
        const pdf = await print(handoutHtml(wholePage(await topicHandout(handout, world)), exactDress(dress)));
        return fileBody(pdf, 'application/pdf');
      },
    );
}
