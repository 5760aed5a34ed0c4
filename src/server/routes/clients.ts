import { randomUUID } from 'node:crypto';
import { createRoute, z } from '@hono/zod-openapi';
import { clinicFigures } from '#app/clients/clinicFigures.ts';
import { decisionsToSign } from '#app/clients/decisionsToSign.ts';
import { describeClient, describeClientShort } from '#app/clients/describeClient.ts';
import { localDay } from '#app/clients/localDay.ts';
import { whatFits } from '#app/clients/whatFits.ts';
import { withContact } from '#app/clients/withContact.ts';
import { findPlate } from '#app/findPlate.ts';
import { withSigned } from '#core/client/prescription/signPrescription.ts';
import { sentTargetSchema } from '#core/client/record/decidedTarget.ts';
import { evenPattern, typedPatternSchema } from '#core/client/record/mealPattern.ts';
import { type ClientRecord, withAssessment } from '#core/client/record/record.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import { Fault } from '#core/errors.ts';
import { assessmentBody, clientBody, clientShort, resultsBody, weightBasis } from '../clientBodies.ts';
import { addRecord, allRecords, changeRecord, readAssessment, readResults, recordOf } from '../clientRecords.ts';
import { fitsBody } from '../fitsBody.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, jsonBody } from './answers.ts';

const params = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
const seen = z.object({ version: z.number().int().positive() });

/** Clients one by one. Bodies carry what is personal; addresses carry an opaque id alone, and the log nothing. */
export function clientRoutes({ vault, shelf, store, minerals, now, log }: World) {
  const today = (): string => localDay(now());
  const whole = async (record: ClientRecord, pick?: WeightBasisId) =>
    describeClient(record, today(), pick, (await clinicFigures(vault)).rules);
  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/clients', responses: answers(z.array(clientShort), 'Clients, who waits first') }),
      async context => {
        const { rules } = await clinicFigures(vault);
        const short = (await allRecords(vault)).map(record => describeClientShort(record, today(), rules));
        return context.json(
          short.sort((a, b) => b.openContacts - a.openContacts || a.name.localeCompare(b.name, 'en')),
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients',
        request: { body: jsonBody(z.object({ name: z.string().trim().min(1).max(200) })) },
        responses: answers(clientShort, 'The new client'),
      }),
      async context => {
        const record: ClientRecord = {
          id: randomUUID(),
          version: 0,
          name: context.req.valid('json').name,
          isDemo: false,
          assessments: [],
          prescriptions: [],
          contacts: [],
        };
        return context.json(describeClientShort(await addRecord(record, vault), today()), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}',
        request: { params, query: z.object({ pick: weightBasis }) },
        responses: answers(clientBody, 'One client as of today'),
      }),
      async context => {
        const record = await recordOf(context.req.valid('param').id, vault);
        return context.json(await whole(record, context.req.valid('query').pick), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/assessments',
        request: {
          params,
          body: jsonBody(
            seen.extend({
              assessment: assessmentBody,
              /** The newest assessment, which this one takes the place of; it stays as it was. */
              corrects: z.string().optional(),
            }),
          ),
        },
        responses: answers(clientBody, 'The client with the new assessment'),
      }),
      async context => {
        const { version, assessment, corrects } = context.req.valid('json');
        const read = readAssessment(assessment);
        const record = await changeRecord(context.req.valid('param').id, version, vault, one =>
          withAssessment(one, { id: randomUUID(), assessment: read, ...(corrects === undefined ? {} : { corrects }) }),
        );
        return context.json(await whole(record), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/results',
        request: { params, body: jsonBody(seen.extend(resultsBody)) },
        responses: answers(clientBody, 'The client with results and weights that came in since the newest assessment'),
      }),
      async context => {
        const { version, labs, weighings } = context.req.valid('json');
        const read = readResults({ labs, weighings });
        if (read.labs.length + read.weighings.length === 0)
          throw new Fault('assessment-not-valid', 'the results: expected at least one result or weight');
        const record = await changeRecord(context.req.valid('param').id, version, vault, one => {
          const [newest] = one.assessments;
          if (newest === undefined) throw new Fault('assessment-not-valid', 'the results: expected an assessment before them');
          const added = { id: randomUUID(), on: today(), assessmentId: newest.id, ...read };
          return { ...one, addedResults: [added, ...(one.addedResults ?? [])] };
        });
        return context.json(await whole(record), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/prescriptions',
        request: {
          params,
          body: jsonBody(
            seen.extend({
              assessmentId: z.string(),
              weightBasis,
              targets: z.array(sentTargetSchema).max(20),
              /** That own figures and other guidelines of the prescription before, which this one leaves out, were seen. */
              acknowledgedChanges: z.boolean().default(false),
              by: z.string().max(200),
              credentials: z.string().max(200),
            }),
          ),
        },
        responses: answers(clientBody, 'The client with the signed prescription; what was signed before stays as it was'),
      }),
      async context => {
        const { version, assessmentId, weightBasis: picked, targets, by, credentials, acknowledgedChanges } = context.req.valid('json');
        const { id } = context.req.valid('param');
        const decided = decisionsToSign({
          record: await recordOf(id, vault),
          assessmentId,
          picked,
          targets,
          by,
          acknowledgedChanges,
          today: today(),
          rules: (await clinicFigures(vault)).rules,
        });
        const signed = {
          id: randomUUID(),
          assessmentId,
          ...(picked === undefined ? {} : { weightBasis: picked }),
          targets: decided,
          signed: { by, credentials, at: now().toISOString() },
        };
        const record = await changeRecord(id, version, vault, one => withSigned(one, signed));
        return context.json(await whole(record), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/contacts',
        request: {
          params,
          body: jsonBody(
            seen.extend({ cautionId: z.string(), told: z.string().trim().min(1).max(300), note: z.string().max(1_000).optional() }),
          ),
        },
        responses: answers(clientBody, 'The client, with who was told and when'),
      }),
      async context => {
        const { version, cautionId, told, note } = context.req.valid('json');
        const { rules } = await clinicFigures(vault);
        const contact = { cautionId, told, on: today(), at: now().toISOString(), ...(note === undefined ? {} : { note }) };
        const record = await changeRecord(context.req.valid('param').id, version, vault, one => withContact(one, contact, today(), rules));
        return context.json(await whole(record), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/clients/{id}/meals',
        request: {
          params,
          body: jsonBody(seen.extend({ pattern: typedPatternSchema })),
        },
        responses: answers(clientBody, 'The client with the meal pattern'),
      }),
      async context => {
        const { version, pattern } = context.req.valid('json');
        const record = await changeRecord(context.req.valid('param').id, version, vault, one => ({ ...one, mealPattern: pattern }));
        return context.json(await whole(record), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/fits',
        request: {
          params,
          body: jsonBody(
            z.object({
              /** Each category on its plate; without a category the whole shelf. */
              served: z
                .array(z.object({ category: z.string().optional(), plate: z.string() }))
                .min(1)
                .max(200),
              /** One food of it alone. */
              foodId: z.string().optional(),
              meal: z.string().default(evenPattern[0]!.name),
              useEstimates: z.boolean().default(false),
            }),
          ),
        },
        responses: answers(fitsBody, 'The shelf judged for this client by the signed prescription'),
      }),
      async context => {
        const { served: asked, foodId, meal, useEstimates } = context.req.valid('json');
        const record = await recordOf(context.req.valid('param').id, vault);
        const { rules } = await clinicFigures(vault);
        const served = [];
        for (const { category, plate } of asked) {
          const read = async () => (await shelf.foods(category)).filter(({ row }) => foodId === undefined || row.id === foodId);
          if (useEstimates) await minerals.want((await read()).map(({ label }) => label));
          served.push({ plate: await findPlate(plate, store), foods: await read() });
        }
        if (foodId !== undefined && served.every(({ foods }) => foods.length === 0)) {
          throw new Fault('food-not-found', 'The food has no label that stands.');
        }
        return context.json(whatFits({ record, served, meal, useEstimates, today: today(), rules }), 200);
      },
    );
}
