import { createRoute, z } from '@hono/zod-openapi';
import { clientsForArchive } from '#app/archive/clientsInArchive.ts';
import { restoreArchive } from '#app/archive/restoreArchive.ts';
import { Fault } from '#core/errors.ts';
import { archiveBody, copiesBody, restoredBody, shownArchive, shownCopies, shownRestored } from '../archiveBodies.ts';
import { newApi } from '../newApi.ts';
import { sentBytes } from '../pieces.ts';
import type { Watches } from '../watches.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

/** As in an import of labels. */
const workId = z.uuid().optional();
const passphrase = z.string().max(1_000).optional();
const byId = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
const byDay = z.object({
  day: z
    .string()
    .regex(/^\d{4}-\d\d-\d\d(-\d{6})?$/)
    .openapi({ param: { name: 'day', in: 'path' } }),
});
const done = z.object({ done: z.literal(true) });

/** Everything as one file, and back; and the copies that are made by themselves. */
export function archiveRoutes(world: World, watches: Watches) {
  const { vault, waiting, copies, restoreMark } = world;
  const describeCopies = async () => shownCopies(await copies.state(), restoreMark.isBrokenOff());
  return newApi(world.log)
    .openapi(
      createRoute({
        method: 'post',
        path: '/archives',
        request: { body: jsonBody(z.object({ workId, passphrase, withClients: z.boolean() })) },
        responses: answers(archiveBody, 'An archive that was made and read back, to be fetched under its id'),
      }),
      async context => {
        const given = context.req.valid('json');
        const clients = given.withClients ? await clientsForArchive(vault, given.passphrase) : undefined;
        const made = await watches.run(given.workId, context.req.raw.signal, watch => waiting.make(clients, watch));
        return context.json(shownArchive(made), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/archives/brought',
        request: {
          query: z.object({ workId }),
          body: {
            content: { 'application/octet-stream': { schema: z.any().openapi({ type: 'string', format: 'binary' }) } },
            required: true,
          },
        },
        responses: answers(archiveBody, 'What is in a file that was brought; nothing is written yet'),
      }),
      async context => {
        const sent = sentBytes(context);
        if (sent === undefined) throw new Fault('request-not-valid', 'No file came in.');
        const bytes = Number(context.req.header('content-length') ?? 0);
        const brought = await watches.run(context.req.valid('query').workId, context.req.raw.signal, watch =>
          waiting.bring(sent, bytes, watch),
        );
        return context.json(shownArchive(brought), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/archives/{id}/restore',
        request: {
          params: byId,
          body: jsonBody(z.object({ workId, into: z.enum(['empty', 'beside']), withClients: z.boolean(), passphrase })),
        },
        responses: answers(restoredBody, 'What was put back, and what was left out and why'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        const { workId: work, into, withClients, passphrase: words } = context.req.valid('json');
        const choice = { into, withClients, ...(words === undefined || words === '' ? {} : { passphrase: words }) };
        const restored = await watches.run(work, context.req.raw.signal, watch =>
          restoreArchive({ ...world, mark: restoreMark }, waiting.get(id), choice, watch),
        );
        await waiting.forget(id);
        world.minerals.forget();
        return context.json(shownRestored(restored), 200);
      },
    )
    .openapi(
      createRoute({ method: 'delete', path: '/archives/{id}', request: { params: byId }, responses: answers(done, 'It waits no longer') }),
      async context => {
        await waiting.forget(context.req.valid('param').id);
        return context.json({ done: true as const }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/copies',
        responses: answers(copiesBody, 'The daily copies: where they lie, and how the last one went'),
      }),
      async context => context.json(await describeCopies(), 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/copies',
        request: { body: jsonBody(z.object({ workId, deleteEarlier: z.boolean().optional() })) },
        responses: answers(copiesBody, 'A copy of today was made; with deleteEarlier, those of before are gone'),
      }),
      async context => {
        const { workId: work, deleteEarlier } = context.req.valid('json');
        await watches.run(work, context.req.raw.signal, watch => copies.makeNow(watch, deleteEarlier));
        return context.json(await describeCopies(), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/copies/folder',
        request: { body: jsonBody(z.object({ folder: z.string().min(1).max(1_000) })) },
        responses: answers(copiesBody, 'Copies to come lie in this folder'),
      }),
      async context => {
        await copies.moveTo(context.req.valid('json').folder);
        return context.json(await describeCopies(), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/copies/{day}/look',
        request: { params: byDay, body: jsonBody(z.object({ workId })) },
        responses: answers(archiveBody, 'What is in the copy of a day; nothing is written yet'),
      }),
      async context => {
        const path = await copies.pathOf(context.req.valid('param').day);
        const { workId: work } = context.req.valid('json');
        const brought = await watches.run(work, context.req.raw.signal, watch => waiting.bringKept(path, watch));
        return context.json(shownArchive(brought), 200);
      },
    );
}

/** The file of an archive that was made, as a download. */
export function archiveFile(id: string, { waiting }: Pick<World, 'waiting'>): Response {
  const { look, stream } = waiting.read(id);
  const day = look.madeAt.slice(0, 10);
  return new Response(stream, {
    headers: {
      'content-type': 'application/zip',
      'content-length': String(look.bytes),
      'content-disposition': `attachment; filename="platewright-archive-${day}.zip"`,
    },
  });
}
