import { createRoute, z } from '@hono/zod-openapi';
import { isClient } from '#app/clients/clinicFigures.ts';
import type { ClientJson } from '#app/clientVault.ts';
import type { Previews } from '#app/previews.ts';
import { clientRecordFromJson, clientRecordToJson } from '#core/client/record/clientRecordJson.ts';
import { Fault } from '#core/errors.ts';
import { clientShort, erasedBody, exportAnswer, healthBody } from '../clientBodies.ts';
import { recordOf } from '../clientRecords.ts';
import type { ErasedClients } from '../erasedClients.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

const params = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
const done = z.object({ done: z.literal(true) });

/** The clients' file as a whole: exported, erased whole or by client and brought back, looked through for damage. */
export function clientFileRoutes({ vault, log }: World, clientPreviews: Previews, erased: ErasedClients) {
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/clients/export', responses: answers(exportAnswer, 'Every client, whole') }),
      async context => context.json((await vault.exportAll()).map(exported), 200),
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/clients',
        request: { body: jsonBody(z.object({ confirm: z.literal('erase every client'), passphrase: z.string().max(1_000).optional() })) },
        responses: answers(done, 'Every client is erased, and the passphrase; while locked it is asked for'),
      }),
      async context => {
        await vault.eraseAll(context.req.valid('json').passphrase);
        clientPreviews.forget();
        erased.forget();
        return context.json({ done: true as const }, 200);
      },
    )
    .openapi(
      createRoute({ method: 'get', path: '/clients/health', responses: answers(healthBody, 'What is whole in the file, and what is not') }),
      async context => context.json(await vault.health(), 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/set-aside',
        request: { body: jsonBody(z.object({ confirm: z.literal('set aside what is damaged') })) },
        responses: answers(z.object({ records: z.number(), file: z.string().optional() }), 'How many records went, and into which file'),
      }),
      async context => {
        const { records, file } = await vault.setAside();
        return context.json({ records, ...(file === undefined ? {} : { file }) }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/erased',
        responses: answers(erasedBody, 'Who was erased and can still be brought back'),
      }),
      context => {
        if (vault.state() !== 'open') throw new Fault('clients-locked', 'The client records are locked.');
        return context.json([...erased.list()], 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/clients/{id}',
        request: { params, body: jsonBody(z.object({ version: z.number().int().positive(), name: z.string().max(200) })) },
        responses: answers(done, 'The client is erased; for ten minutes or until the lock that can be undone'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        const { version, name } = context.req.valid('json');
        const record = await recordOf(id, vault);
        if (name.trim() !== record.name.trim()) throw new Fault('not-confirmed', 'What was typed is not what the client is called here.');
        erased.keep(await vault.remove(id, version), record.name);
        clientPreviews.forget();
        return context.json({ done: true as const }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/bring-back',
        request: { params },
        responses: answers(clientShort.pick({ id: true, version: true }), 'The client is back as before'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        const removed = erased.find(id);
        if (removed === undefined) throw new Fault('client-not-found', 'The client can no longer be brought back.');
        const { version } = await vault.bringBack(removed);
        erased.forget(id);
        return context.json({ id, version }, 200);
      },
    );
}

/** A record in the present form; one that cannot be read goes along as it is kept, so that it hides no other and is not lost. */
function exported(record: ClientJson): ClientJson {
  const read = isClient(record) ? clientRecordFromJson(record).value : undefined;
  return read === undefined ? record : { ...clientRecordToJson(read) };
}
