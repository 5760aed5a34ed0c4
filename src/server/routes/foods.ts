import { createRoute, z } from '@hono/zod-openapi';
import { describeDraft, describeHistory, describeRow, describeShort } from '#app/describeFood.ts';
import { describeMinerals } from '#app/describeMinerals.ts';
import { allPlates, platesWith } from '#app/findPlate.ts';
import { foodOf } from '#app/matchFood.ts';
import { largestPhoto, photoType } from '#app/photoType.ts';
import type { FoodRow, NewLabel } from '#app/store.ts';
import { wholeOr } from '#app/wholeOr.ts';
import { Fault } from '#core/errors.ts';
import { labelFromJson } from '#core/label/labelFromJson.ts';
import { labelSchema } from '#core/label/labelJson.ts';
import { edgeBody } from '../edge.ts';
import { foodBody, foodShort, mineralsBody, readLabelBody } from '../foodBodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, fileBody, jsonBody } from './answers.ts';

const version = z.number().int().positive();
const day = z.iso.date();
const newLabel = z.object({
  version,
  label: edgeBody(labelSchema, 'LabelJson'),
  kind: z.enum(['read', 'correction']).default('read'),
  correctsLabelId: z.string().exactOptional(),
  reason: z.string().max(1_000).exactOptional(),
  recheckOn: day.exactOptional(),
});
const params = z.object({ id: z.string().openapi({ param: { name: 'id', in: 'path' } }) });
const change = z.object({
  version,
  name: z.string().min(1).max(300).exactOptional(),
  maker: z.string().max(300).exactOptional(),
  category: z.string().max(300).exactOptional(),
  densityGPerMl: z.number().positive().max(25).exactOptional(),
  gramsPerMeasure: z.record(z.string(), z.number().positive()).exactOptional(),
});
const ok = z.object({ id: z.string(), version: z.number() });

/** The label of a form, ready to be kept. @throws Fault label-not-readable */
function readable(json: unknown): NewLabel['printed'] {
  return wholeOr(labelFromJson(json), 'label-not-readable', 'the label');
}

export function foodRoutes(world: World) {
  const { store, shelf } = world;

  async function foodDetail(row: FoodRow) {
    const labels = await store.labelsOf(row.id);
    const standing = await shelf.food(row.id);
    const short =
      standing === undefined
        ? { ...describeRow(row), labels: labels.length, energyKcal: null, sodiumMg: null, additives: [], statementRead: false, findings: 0 }
        : describeShort(standing, labels.length);
    const plates = platesWith(row.id, await allPlates(store)).map(({ title }) => title);
    return {
      ...short,
      ...(row.densityGPerMl === undefined ? {} : { densityGPerMl: row.densityGPerMl }),
      ...(row.gramsPerMeasure === undefined ? {} : { gramsPerMeasure: row.gramsPerMeasure }),
      history: describeHistory(labels, standing?.label.id, shelf),
      plates,
    };
  }

  return newApi(world.log)
    .openapi(
      createRoute({
        method: 'get',
        path: '/foods/{id}/minerals',
        request: { params },
        responses: answers(
          mineralsBody,
          'What the label does not print: phosphorus and potassium, sure and likely, from additives, absorbed, why, and what to ask the maker',
        ),
      }),
      async context => {
        const { id } = context.req.valid('param');
        const found = await shelf.food(id);
        if (found === undefined) throw new Fault('food-not-found', 'The food has no label that stands.');
        return context.json(
          describeMinerals(found.row, found.label, shelf.reading(found.label), await world.minerals.of(found.label)),
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/foods',
        request: { query: z.object({ category: z.string().exactOptional(), search: z.string().max(300).exactOptional() }) },
        responses: answers(z.array(foodShort), 'Foods with their standing label in short'),
      }),
      async context => {
        const { category, search } = context.req.valid('query');
        const standing = new Map((await shelf.foods()).map(one => [one.row.id, one]));
        const rows = await store.listFoods({
          ...(category === undefined || category === '' ? {} : { category }),
          ...(search === undefined ? {} : { search }),
        });
        return context.json(
          rows.flatMap(row => {
            const one = standing.get(row.id);
            return one === undefined ? [] : [describeShort(one)];
          }),
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/foods/{id}',
        request: { params },
        responses: answers(foodBody, 'A food: its labels newest first, each read, and what changed between them'),
      }),
      async context => {
        const row = await store.getFood(context.req.valid('param').id);
        if (row === undefined) throw new Fault('food-not-found', 'The food is not in the workspace.');
        return context.json(await foodDetail(row), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/foods',
        request: { body: jsonBody(z.object({ label: edgeBody(labelSchema, 'LabelJson'), recheckOn: day.exactOptional() })) },
        responses: answers(ok, 'The food that was added'),
      }),
      async context => {
        const { label, recheckOn } = context.req.valid('json');
        const printed = readable(label);
        if (printed.name === undefined || printed.name.trim() === '')
          throw new Fault('label-not-readable', 'name: found nothing, expected the name of the food.');
        const { food } = await store.addFood(foodOf(printed), { kind: 'read', printed, ...(recheckOn === undefined ? {} : { recheckOn }) });
        return context.json({ id: food.id, version: food.version }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'patch',
        path: '/foods/{id}',
        request: { params, body: jsonBody(change) },
        responses: answers(ok, 'The food after the change'),
      }),
      async context => {
        const { version: seen, ...given } = context.req.valid('json');
        const food = await store.changeFood(context.req.valid('param').id, seen, given);
        return context.json({ id: food.id, version: food.version }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/foods/{id}/labels',
        request: { params, body: jsonBody(newLabel) },
        responses: answers(ok, 'The food with its further label'),
      }),
      async context => {
        const { version: seen, label, kind, correctsLabelId, reason, recheckOn } = context.req.valid('json');
        if (kind === 'correction' && (correctsLabelId === undefined || !reason?.trim()))
          throw new Fault('request-not-valid', 'A correction names the label it corrects and says why.');
        const { food } = await store.addLabel(context.req.valid('param').id, seen, {
          kind,
          printed: readable(label),
          ...(kind === 'correction' && correctsLabelId !== undefined ? { correctsLabelId } : {}),
          ...(reason === undefined ? {} : { reason }),
          ...(recheckOn === undefined ? {} : { recheckOn }),
        });
        return context.json({ id: food.id, version: food.version }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/labels/{id}/withdraw',
        request: { params, body: jsonBody(z.object({ version, reason: z.string().min(1).max(1_000) })) },
        responses: answers(ok, 'The food without the label'),
      }),
      async context => {
        const { version: seen, reason } = context.req.valid('json');
        const food = await store.withdrawLabel(context.req.valid('param').id, seen, reason);
        return context.json({ id: food.id, version: food.version }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/labels/{id}/recheck',
        request: { params, body: jsonBody(z.object({ seenDueOn: z.string().max(40).nullable(), dueOn: day.nullable() })) },
        responses: answers(
          z.object({ dueOn: z.string().nullable() }),
          'The day by which it must be read again, set or cleared in the place of the one that was seen',
        ),
      }),
      async context => {
        const { seenDueOn, dueOn } = context.req.valid('json');
        await store.setRecheck(context.req.valid('param').id, seenDueOn, dueOn);
        return context.json({ dueOn }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/labels/read',
        request: { body: jsonBody(z.object({ label: edgeBody(labelSchema, 'LabelJson') })) },
        responses: answers(readLabelBody, 'The draft read: ranges, additives, findings, issues; nothing is kept'),
      }),
      context => {
        const { reading, issues } = describeDraft(context.req.valid('json').label);
        const body = reading ?? { amounts: [], per100G: [], additives: [], statementRead: false, findings: [], issues };
        return context.json(body, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/labels/{id}/photos',
        request: { params, body: { content: { 'image/*': { schema: z.string().openapi({ format: 'binary' }) } } } },
        responses: answers(z.object({ id: z.string() }), 'The photo that was kept'),
      }),
      async context => {
        const bytes = new Uint8Array(await context.req.arrayBuffer());
        if (bytes.length > largestPhoto) throw new Fault('request-too-large', 'A photo may have up to 10 MB.');
        // By its bytes: whoever sends it may call it what they like.
        const mime = photoType(bytes);
        if (mime === undefined) throw new Fault('photo-not-shown', 'By its content the file is no whole JPEG, PNG or WebP picture.');
        const { id } = await store.addPhoto(context.req.valid('param').id, { mime, bytes });
        return context.json({ id }, 200);
      },
    );
}

/** Where a picture is opened by its address it stands alone: nothing in it may run, load or be framed. */
const photoPolicy = "default-src 'none'; sandbox";

/** A photo's bytes, as what they are and never as what a row says they are; not JSON, so outside the typed routes. */
export async function photoResponse(id: string, { store }: World): Promise<Response> {
  const photo = await store.getPhoto(id);
  if (photo === undefined) throw new Fault('not-found', 'The photo is not in the workspace.');
  const mime = photoType(photo.bytes);
  if (mime === undefined)
    throw new Fault('photo-not-shown', 'What is kept as this photo is no picture, so it is not shown; it is left as it is.');
  return fileBody(photo.bytes, mime, {
    'cache-control': 'private, max-age=31536000, immutable',
    'content-disposition': `inline; filename="photo.${mime.slice('image/'.length)}"`,
    'content-security-policy': photoPolicy,
    'x-content-type-options': 'nosniff',
  });
}
