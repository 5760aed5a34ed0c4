import { createRoute, z } from '@hono/zod-openapi';
import { readPlate } from '#app/findPlate.ts';
import { readYardstick } from '#app/findYardstick.ts';
import { companionsText } from '#app/survey/surveyForScreen.ts';
import { testInWords } from '#app/survey/testInWords.ts';
import { placesText } from '#app/wholeOr.ts';
import { Fault } from '#core/errors.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateFromJson, plateSchema } from '#core/plate/plateFromJson.ts';
import { plateToJson } from '#core/plate/plateToJson.ts';
import { portionText } from '#core/plate/portionText.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { savedSurveyFromJson, savedSurveySchema, savedSurveyToJson } from '#core/yardstick/savedSurvey.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { yardstickFromJson, yardstickSchema, yardstickToJson } from '#core/yardstick/yardstickFromJson.ts';
import { edgeAnswer, edgeBody } from '../edge.ts';
import { versionedPlate, versionedYardstick } from '../keptBodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../workbench.ts';
import { answers, jsonBody } from './answers.ts';

const params = z.object({
  id: z
    .string()
    .min(1)
    .max(200)
    .openapi({ param: { name: 'id', in: 'path' } }),
});
const seen = z.object({ version: z.number().int().nullable() });
const savedSurvey = edgeAnswer(savedSurveySchema, 'SavedSurvey');

function shownPlate(plate: Plate, version: number, isBuiltIn: boolean, isDemo: boolean) {
  return {
    plate: plateToJson(plate),
    version,
    isBuiltIn,
    isDemo,
    portionText: portionText(plate.portion),
    companionsText: companionsText(plate),
  };
}

function shownYardstick(yardstick: Yardstick, version: number, isBuiltIn: boolean) {
  return {
    yardstick: yardstickToJson(yardstick),
    version,
    isBuiltIn,
    tests: yardstick.tests.map(test => ({ ...testInWords(test), isOff: test.off === true })),
  };
}

export function keptRoutes(world: World) {
  const { store } = world;
  return newApi(world.log)
    .openapi(
      createRoute({ method: 'get', path: '/plates', responses: answers(z.array(versionedPlate), 'Plates, built-in ones among them') }),
      async context => {
        const kept = (await store.plates.list()).flatMap(({ value, version, isDemo }) => {
          const plate = plateFromJson(value).value;
          return plate === undefined ? [] : [shownPlate(plate, version, false, isDemo)];
        });
        return context.json([...kept, ...builtInPlates.map(plate => shownPlate(plate, 0, true, false))], 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/plates/{id}',
        request: { params, body: jsonBody(seen.extend({ plate: edgeBody(plateSchema, 'PlateJson') })) },
        responses: answers(versionedPlate, 'The plate that was kept'),
      }),
      async context => {
        const { plate: json, version } = context.req.valid('json');
        const id = context.req.valid('param').id;
        const plate = readPlate({ ...json, id });
        if (builtInPlates.some(one => one.id === id))
          throw new Fault('plate-not-valid', 'A built-in plate cannot be changed; give yours another name.');
        const kept = await store.plates.put({ ...json, id }, version);
        return context.json(shownPlate(plate, kept.version, false, kept.isDemo), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/plates/{id}',
        request: { params, query: z.object({ version: z.coerce.number() }) },
        responses: answers(z.object({ id: z.string() }), 'The plate that was removed'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        await store.plates.remove(id, context.req.valid('query').version);
        return context.json({ id }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/yardsticks',
        responses: answers(z.array(versionedYardstick), 'Yardsticks, built-in ones among them'),
      }),
      async context => {
        const kept = (await store.yardsticks.list()).flatMap(({ value, version }) => {
          const yardstick = yardstickFromJson(value).value;
          return yardstick === undefined ? [] : [shownYardstick(yardstick, version, false)];
        });
        return context.json([...kept, ...builtInYardsticks.map(one => shownYardstick(one, 0, true))], 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/yardsticks/{id}',
        request: { params, body: jsonBody(seen.extend({ yardstick: edgeBody(yardstickSchema, 'YardstickJson') })) },
        responses: answers(versionedYardstick, 'The yardstick that was kept'),
      }),
      async context => {
        const { yardstick: json, version } = context.req.valid('json');
        const id = context.req.valid('param').id;
        if (builtInYardsticks.some(one => one.id === id))
          throw new Fault('yardstick-not-valid', 'A built-in yardstick cannot be changed; copy it under another name.');
        const yardstick = readYardstick({ ...json, id });
        const kept = await store.yardsticks.put({ ...yardstickToJson(yardstick) }, version);
        return context.json(shownYardstick(yardstick, kept.version, false), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/yardsticks/{id}',
        request: { params, query: z.object({ version: z.coerce.number() }) },
        responses: answers(z.object({ id: z.string() }), 'The yardstick that was removed'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        await store.yardsticks.remove(id, context.req.valid('query').version);
        return context.json({ id }, 200);
      },
    )
    .openapi(createRoute({ method: 'get', path: '/surveys', responses: answers(z.array(savedSurvey), 'Saved surveys') }), async context =>
      context.json((await store.surveys.list()).map(savedSurveyToJson), 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/surveys/{id}',
        request: { params, body: jsonBody(edgeBody(savedSurveySchema.omit({ id: true }), 'NewSavedSurvey')) },
        responses: answers(savedSurvey, 'The survey that was saved'),
      }),
      async context => {
        const { value, issues } = savedSurveyFromJson({ ...context.req.valid('json'), id: context.req.valid('param').id });
        if (value === undefined) throw new Fault('request-not-valid', placesText(issues, 'the survey'));
        return context.json(savedSurveyToJson(await store.surveys.put(value)), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/surveys/{id}',
        request: { params },
        responses: answers(z.object({ id: z.string() }), 'The survey that was removed'),
      }),
      async context => {
        const { id } = context.req.valid('param');
        await store.surveys.remove(id);
        return context.json({ id }, 200);
      },
    );
}
