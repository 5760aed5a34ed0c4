import { createRoute, z } from '@hono/zod-openapi';
import { describePlates, keepPlate } from '#app/plates.ts';
import { plateSchema } from '#core/plate/plateFromJson.ts';
import { edgeBody } from '../edge.ts';
import { versionedPlate } from '../keptBodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';
import { documentId, removalRoute } from './removal.ts';

const keeping = z.object({ version: z.number().int().nullable(), plate: edgeBody(plateSchema, 'PlateJson') });

export function plateRoutes({ store, log }: World) {
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/plates', responses: answers(z.array(versionedPlate), 'Plates, built-in ones among them') }),
      async context => context.json(await describePlates(store), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/plates/{id}',
        request: { params: documentId, body: jsonBody(keeping) },
        responses: answers(versionedPlate, 'The plate that was kept'),
      }),
      async context => {
        const { plate, version } = context.req.valid('json');
        return context.json(await keepPlate({ ...plate, id: context.req.valid('param').id }, version, store), 200);
      },
    )
    .openapi(removalRoute('/plates/{id}', 'plate'), async context => {
      const { id } = context.req.valid('param');
      await store.plates.remove(id, context.req.valid('query').version);
      return context.json({ id }, 200);
    });
}
