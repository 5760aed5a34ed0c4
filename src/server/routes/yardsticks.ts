import { createRoute, z } from '@hono/zod-openapi';
import { describeYardsticks, keepYardstick } from '#app/yardsticks.ts';
import { yardstickSchema } from '#core/yardstick/yardstickFromJson.ts';
import { edgeBody } from '../edge.ts';
import { versionedYardstick } from '../keptBodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';
import { documentId, removalRoute } from './removal.ts';

const keeping = z.object({ version: z.number().int().nullable(), yardstick: edgeBody(yardstickSchema, 'YardstickJson') });

export function yardstickRoutes({ store, log }: World) {
  return newApi(log)
    .openapi(
      createRoute({
        method: 'get',
        path: '/yardsticks',
        responses: answers(z.array(versionedYardstick), 'Yardsticks, built-in ones among them'),
      }),
      async context => context.json(await describeYardsticks(store), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/yardsticks/{id}',
        request: { params: documentId, body: jsonBody(keeping) },
        responses: answers(versionedYardstick, 'The yardstick that was kept'),
      }),
      async context => {
        const { yardstick, version } = context.req.valid('json');
        return context.json(await keepYardstick({ ...yardstick, id: context.req.valid('param').id }, version, store), 200);
      },
    )
    .openapi(removalRoute('/yardsticks/{id}', 'yardstick'), async context => {
      const { id } = context.req.valid('param');
      await store.yardsticks.remove(id, context.req.valid('query').version);
      return context.json({ id }, 200);
    });
}
