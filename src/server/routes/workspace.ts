import { createRoute, z } from '@hono/zod-openapi';
import { loadDemoClients, removeDemoClients } from '#app/clients/loadDemoClients.ts';
import { whatCannotBeRead } from '#app/damagedDocuments.ts';
import { loadDemo } from '#app/loadDemo.ts';
import { list, workspaceBody } from '../bodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

const damagedRow = z.object({ table: z.string(), id: z.string(), column: z.string() });

export function workspaceRoutes(world: World) {
  const { store, vault, now } = world;
  let counted: { revision: number; categories: Awaited<ReturnType<typeof store.categories>> } = { revision: -1, categories: [] };
  const describe = async (): Promise<z.infer<typeof workspaceBody>> => {
    const { foods, labels, demoFoods, photos } = await store.counts();
    const revision = await store.revision();
    // Asked once for each state of the workspace: a long shelf takes a tenth of a second.
    if (counted.revision !== revision) counted = { revision, categories: await store.categories() };
    const writtenAt = await store.writtenAt();
    return {
      ...{ foods, labels, demoFoods, photos, revision, categories: [...counted.categories], database: world.database },
      ...(writtenAt === undefined ? {} : { writtenAt }),
    };
  };
  return newApi(world.log)
    .openapi(
      createRoute({ method: 'get', path: '/workspace', responses: answers(workspaceBody, 'What the workspace holds') }),
      async context => context.json(await describe(), 200),
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/workspace',
        request: { body: jsonBody(z.object({ confirm: z.literal('delete everything') })) },
        responses: answers(workspaceBody, 'The empty workspace'),
      }),
      async context => {
        await store.purgeAll();
        world.minerals.forget();
        return context.json(await describe(), 200);
      },
    )
    .openapi(
      createRoute({ method: 'post', path: '/demo', responses: answers(workspaceBody, 'The workspace with the demo') }),
      async context => {
        await loadDemo(world.demo(), store);
        if (vault.state() === 'open') await loadDemoClients(vault, now());
        return context.json(await describe(), 200);
      },
    )
    .openapi(
      createRoute({ method: 'delete', path: '/demo', responses: answers(workspaceBody, 'The workspace without the demo') }),
      async context => {
        await store.purgeDemo();
        if (vault.state() === 'open') await removeDemoClients(vault);
        world.minerals.forget();
        return context.json(await describe(), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/workspace/damaged',
        responses: answers(list(damagedRow), 'Rows that cannot be read; they are left as they are, and go along with an export'),
      }),
      async context => context.json(await whatCannotBeRead(store), 200),
    );
}
