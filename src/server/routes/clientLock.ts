import { createRoute, z } from '@hono/zod-openapi';
import { Fault } from '#core/errors.ts';
import { lockBody } from '../clientBodies.ts';
import type { ClientDoor } from '../clientDoor.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

const passphrase = z.string().max(1_000);
export const takeOffWords = 'take the passphrase off';

/** The door to the clients' file: opened and locked, its passphrase, when it locks by itself. */
export function clientLockRoutes({ vault, log }: World, door: ClientDoor) {
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/clients/lock', responses: answers(lockBody, 'Whether client data can be read') }),
      context => context.json(door.status(), 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/lock',
        request: { body: jsonBody(z.object({ open: z.boolean(), passphrase: passphrase.optional() })) },
        responses: answers(lockBody, 'Locked, or open after the passphrase'),
      }),
      async context => {
        const given = context.req.valid('json');
        if (given.open) await vault.unlock(given.passphrase ?? '');
        else vault.lock();
        return context.json(door.status(), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/lock/touch',
        responses: answers(lockBody, 'A key or a pointer was moved in a window: the time until the lock begins anew'),
      }),
      context => {
        door.touch();
        return context.json(door.status(), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/clients/lock/idle',
        request: { body: jsonBody(z.object({ minutes: z.number().int().min(1).max(120) })) },
        responses: answers(lockBody, 'After how many minutes without a key or a pointer it locks'),
      }),
      context => {
        vault.setIdleMinutes(context.req.valid('json').minutes);
        door.changed();
        return context.json(door.status(), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/clients/passphrase',
        request: {
          body: jsonBody(
            z.object({
              current: passphrase.optional(),
              next: passphrase.optional(),
              /** Asked for when there is no next one: nothing that was left empty takes it off. */
              confirm: z.literal(takeOffWords).optional(),
            }),
          ),
        },
        responses: answers(lockBody, 'Set, changed or taken off'),
      }),
      async context => {
        const { current, next, confirm } = context.req.valid('json');
        if (next === undefined && confirm === undefined)
          throw new Fault('not-confirmed', `There is no new passphrase, nor "${takeOffWords}".`);
        await vault.changePassphrase(current, next);
        return context.json(door.status(), 200);
      },
    );
}
