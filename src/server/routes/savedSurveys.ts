import { createRoute, z } from '@hono/zod-openapi';
import { wholeOr } from '#app/wholeOr.ts';
import { savedSurveyFromJson, savedSurveySchema, savedSurveyToJson } from '#core/yardstick/savedSurvey.ts';
import { edgeAnswer, edgeBody } from '../edge.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';
import { documentId } from './removal.ts';

const savedSurvey = edgeAnswer(savedSurveySchema, 'SavedSurvey');

export function savedSurveyRoutes({ store, log }: World) {
  return newApi(log)
    .openapi(createRoute({ method: 'get', path: '/surveys', responses: answers(z.array(savedSurvey), 'Saved surveys') }), async context =>
      context.json((await store.surveys.list()).map(savedSurveyToJson), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/surveys/{id}',
        request: { params: documentId, body: jsonBody(edgeBody(savedSurveySchema.omit({ id: true }), 'NewSavedSurvey')) },
        responses: answers(savedSurvey, 'The survey that was saved'),
      }),
      async context => {
        const given = { ...context.req.valid('json'), id: context.req.valid('param').id };
        const survey = wholeOr(savedSurveyFromJson(given), 'request-not-valid', 'the survey');
        return context.json(savedSurveyToJson(await store.surveys.put(survey)), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/surveys/{id}',
        request: { params: documentId },
        responses: answers(z.object({ id: z.string() }), 'The survey that was removed'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        await store.surveys.remove(id);
        return context.json({ id }, 200);
      },
    );
}
