import { createRoute, z } from '@hono/zod-openapi';
import type { Versioned } from '#app/documents.ts';
import { wholeOr } from '#app/wholeOr.ts';
import { type SavedSurvey, savedSurveyFromJson, savedSurveySchema, savedSurveyToJson } from '#core/yardstick/savedSurvey.ts';
import { edgeAnswer, edgeBody } from '../edge.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';
import { documentId, removalRoute } from './removal.ts';

const versionedSurvey = z.object({ survey: edgeAnswer(savedSurveySchema, 'SavedSurvey'), version: z.number() }).openapi('VersionedSurvey');
const keeping = z.object({
  version: z.number().int().nullable(),
  survey: edgeBody(savedSurveySchema.omit({ id: true }), 'NewSavedSurvey'),
});

function versioned({ value, version }: Versioned<SavedSurvey>) {
  return { survey: savedSurveyToJson(value), version };
}

export function savedSurveyRoutes({ store, log }: World) {
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/surveys', responses: answers(z.array(versionedSurvey), 'Saved surveys') }),
      async context => context.json((await store.surveys.list()).map(versioned), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/surveys/{id}',
        request: { params: documentId, body: jsonBody(keeping) },
        responses: answers(versionedSurvey, 'The survey that was saved'),
      }),
      async context => {
        const { survey: given, version } = context.req.valid('json');
        const id = context.req.valid('param').id;
        const survey = wholeOr(savedSurveyFromJson({ ...given, id }), 'request-not-valid', 'the survey');
        return context.json(versioned(await store.surveys.put(survey, version)), 200);
      },
    )
    .openapi(removalRoute('/surveys/{id}', 'survey'), async context => {
      const { id } = context.req.valid('param');
      await store.surveys.remove(id, context.req.valid('query').version);
      return context.json({ id }, 200);
    });
}
