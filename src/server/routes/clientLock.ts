import { createRoute, z } from '@hono/zod-openapi';
import { isClient } from '#app/clients/clinicFigures.ts';
import type { ClientJson } from '#app/clientVault.ts';
import type { Previews } from '#app/previews.ts';
import { clientRecordFromJson, clientRecordToJson } from '#core/client/record/clientRecordJson.ts';
import { exportAnswer, lockBody } from '../clientBodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

/** The clients' file as a whole: locked and opened, exported, erased. */
export function clientLockRoutes({ vault, log }: World, clientPreviews: Previews) {
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/clients/lock', responses: answers(lockBody, 'Whether client data can be read') }),
      context => context.json({ state: vault.state(), hasPassphrase: vault.hasPassphrase() }, 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/lock',
        request: { body: jsonBody(z.object({ open: z.boolean(), passphrase: z.string().max(1_000).optional() })) },
        responses: answers(lockBody, 'Locked, or open after the passphrase'),
      }),
      async context => {
        const { open, passphrase } = context.req.valid('json');
        if (open) await vault.unlock(passphrase ?? '');
        else {
          vault.lock();
          clientPreviews.forget();
        }
        return context.json({ state: vault.state(), hasPassphrase: vault.hasPassphrase() }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/clients/passphrase',
        request: { body: jsonBody(z.object({ current: z.string().max(1_000).optional(), next: z.string().max(1_000).optional() })) },
        responses: answers(lockBody, 'Set, changed or taken off'),
      }),
      async context => {
        const { current, next } = context.req.valid('json');
        await vault.changePassphrase(current, next);
        return context.json({ state: vault.state(), hasPassphrase: vault.hasPassphrase() }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/export',
        responses: answers(exportAnswer, 'Every client, whole'),
      }),
      async context => context.json((await vault.exportAll()).map(exported), 200),
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/clients',
        request: { body: jsonBody(z.object({ confirm: z.literal('erase every client') })) },
        responses: answers(z.object({ done: z.literal(true) }), 'Every client is erased'),
      }),
      async context => {
        await vault.eraseAll();
        clientPreviews.forget();
        return context.json({ done: true as const }, 200);
      },
    );
}

/** A record in the present form; one that cannot be read goes along as it is kept, so that it hides no other and is not lost. */
function exported(record: ClientJson): ClientJson {
  const read = isClient(record) ? clientRecordFromJson(record).value : undefined;
  return read === undefined ? record : { ...clientRecordToJson(read) };
}
