import { createRoute, z } from '@hono/zod-openapi';
import type { PlateFile } from '#app/store.ts';
import { companionsText } from '#app/surveyForScreen.ts';
import { Fault } from '#core/errors.ts';
import { builtInPlates } from '#core/plate/builtInPlates.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateFromJson } from '#core/plate/plateFromJson.ts';
import { portionText } from '#core/plate/portionText.ts';
import { builtInYardsticks } from '#core/yardstick/builtInYardsticks.ts';
import { sourceText } from '#core/yardstick/sourceText.ts';
import { testText } from '#core/yardstick/testText.ts';
import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { yardstickFromJson } from '#core/yardstick/yardstickFromJson.ts';
import { plateJson, setting, versionedPlate, versionedYardstick, yardstickJson } from '../bodies.ts';
import { newApi } from '../newApi.ts';
import { readPlate, readYardstick, type World } from '../workbench.ts';
import { answers, jsonBody } from './answers.ts';

const params = z.object({
  id: z
    .string()
    .min(1)
    .max(200)
    .openapi({ param: { name: 'id', in: 'path' } }),
});
const seen = z.object({ version: z.number().int().nullable() });
const savedSurvey = z
  .object({
    id: z.string(),
    title: z.string().min(1).max(300),
    category: z.string(),
    plateId: z.string(),
    yardstickId: z.string(),
    setting: setting.optional(),
    switchedOn: z.array(z.string()).default([]),
    /** In the place of the plate's own portion. */
    servings: z.number().positive().optional(),
  })
  .openapi('SavedSurvey');

function shownPlate(plate: Plate, json: Readonly<Record<string, unknown>>, version: number, isBuiltIn: boolean, isDemo: boolean) {
  return { plate: { ...json }, version, isBuiltIn, isDemo, portionText: portionText(plate.portion), companionsText: companionsText(plate) };
}

/** A built-in plate as its JSON: companions with their labels as printed. */
function plateToJson({ id, title, portion, companions }: Plate): Record<string, unknown> {
  const food = ({ id: foodId, name, label, densityGPerMl, gramsPerMeasure }: Plate['companions'][number]['food']) => ({
    id: foodId,
    name,
    label: label.printed,
    ...(densityGPerMl === undefined ? {} : { densityGPerMl }),
    ...(gramsPerMeasure === undefined ? {} : { gramsPerMeasure }),
  });
  return {
    id,
    title,
    portion,
    companions: companions.map(one => ({
      food: food(one.food),
      portion: one.portion,
      ...(one.withoutSalt === undefined ? {} : { withoutSalt: food(one.withoutSalt) }),
    })),
  };
}

function shownYardstick(yardstick: Yardstick, version: number, isBuiltIn: boolean) {
  return {
    yardstick: { ...yardstick } as Record<string, unknown>,
    version,
    isBuiltIn,
    tests: yardstick.tests.map(test => ({ id: test.id, text: testText(test), source: sourceText(test.source), isOff: test.off === true })),
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
          return plate === undefined ? [] : [shownPlate(plate, value, version, false, isDemo)];
        });
        return context.json([...kept, ...builtInPlates.map(plate => shownPlate(plate, plateToJson(plate), 0, true, false))], 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/plates/{id}',
        request: { params, body: jsonBody(seen.extend({ plate: plateJson })) },
        responses: answers(versionedPlate, 'The plate that was kept'),
      }),
      async context => {
        const { plate: json, version } = context.req.valid('json');
        const id = context.req.valid('param').id;
        const plate = readPlate({ ...json, id });
        if (builtInPlates.some(one => one.id === id))
          throw new Fault('plate-not-valid', 'A built-in plate cannot be changed; give yours another name.');
        const kept = await store.plates.put({ ...json, id } as PlateFile, version);
        return context.json(shownPlate(plate, kept.value, kept.version, false, kept.isDemo), 200);
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
        request: { params, body: jsonBody(seen.extend({ yardstick: yardstickJson })) },
        responses: answers(versionedYardstick, 'The yardstick that was kept'),
      }),
      async context => {
        const { yardstick: json, version } = context.req.valid('json');
        const id = context.req.valid('param').id;
        if (builtInYardsticks.some(one => one.id === id))
          throw new Fault('yardstick-not-valid', 'A built-in yardstick cannot be changed; copy it under another name.');
        const yardstick = readYardstick({ ...json, id });
        const kept = await store.yardsticks.put({ ...yardstick }, version);
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
      context.json((await store.surveys.list()) as z.input<typeof savedSurvey>[] as never, 200),
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/surveys/{id}',
        request: { params, body: jsonBody(savedSurvey.omit({ id: true })) },
        responses: answers(savedSurvey, 'The survey that was saved'),
      }),
      async context => {
        const { setting: forSetting, servings, ...survey } = context.req.valid('json');
        const saved = await store.surveys.put({
          ...survey,
          id: context.req.valid('param').id,
          ...(forSetting === undefined ? {} : { setting: forSetting }),
          ...(servings === undefined ? {} : { servings }),
        });
        return context.json(saved as never, 200);
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
