import { randomUUID } from 'node:crypto';
import { createRoute, z } from '@hono/zod-openapi';
import { describeClient, describeClientShort, describeProposal } from '#app/clients/describeClient.ts';
import { localDay } from '#app/clients/localDay.ts';
import { whatFits } from '#app/clients/whatFits.ts';
import { labsFromCsv } from '#app/labsFromCsv.ts';
import { assessmentFromJson } from '#core/client/assessmentFromJson.ts';
import type { Assessment } from '#core/client/client.ts';
import { careBundle } from '#core/client/fhir/careBundle.ts';
import { labsFromFhir } from '#core/client/fhir/labsFromFhir.ts';
import { type ChartNote, chartNote } from '#core/client/note/chartNote.ts';
import { noteText } from '#core/client/note/noteText.ts';
import { type ClientRecord, type DecidedTarget, evenPattern } from '#core/client/record.ts';
import { missingToSign, withSigned } from '#core/client/signPrescription.ts';
import { targetUnits } from '#core/client/target.ts';
import type { WeightBasisId } from '#core/client/weightBasis.ts';
import { Fault } from '#core/errors.ts';
import { assessmentJson, clientBody, clientShort, decidedTarget, fitsBody, lockBody, proposalBody } from '../clientBodies.ts';
import { newApi } from '../newApi.ts';
import { plateOf, type World } from '../workbench.ts';
import { answers, jsonBody } from './answers.ts';

const params = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
const seen = z.object({ version: z.number().int().positive() });
const pick = z.enum(['actual', 'dry', 'estimated-dry', 'usual', 'adjusted', 'adjusted-edema-free', 'ideal', 'goal']).optional();
const docxType = 'application/vnd.openxmlformats-officedocument.wordprocessingml.document';
const noContent = z.object({ done: z.literal(true) });

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    throw new Fault('assessment-not-valid', 'The results are no readable JSON.');
  }
}

/** Everything about clients. Bodies carry what is personal; addresses carry an opaque id alone, and the log nothing. */
export function clientRoutes({ vault, shelf, store, minerals, noteDocument, readTable, now, log }: World) {
  const today = (): string => localDay(now());

  async function recordOf(id: string): Promise<ClientRecord> {
    const json = await vault.get(id);
    if (json === undefined) throw new Fault('client-not-found', 'The client is not in this workspace.');
    return json as unknown as ClientRecord;
  }
  /** Changes a record that nobody else has changed meanwhile. */
  async function change(id: string, seenVersion: number, edit: (record: ClientRecord) => ClientRecord): Promise<ClientRecord> {
    const record = await recordOf(id);
    return (await vault.put({ ...edit(record) }, seenVersion)) as unknown as ClientRecord;
  }
  async function noteOf(id: string): Promise<ChartNote> {
    const note = chartNote(await recordOf(id), today());
    if (note === undefined) throw new Fault('assessment-not-valid', 'There is no assessment to write a note from.');
    return note;
  }
  function readable(json: unknown): Assessment {
    const { value, issues } = assessmentFromJson(json);
    if (value === undefined) {
      // The places, never the values: what was typed is the client's.
      const places = issues.map(({ place, expected }) => `${place.heading ?? 'the assessment'}: expected ${expected}`);
      throw new Fault('assessment-not-valid', places.slice(0, 5).join('; '));
    }
    return value;
  }

  return newApi(log)
    .openapi(
      createRoute({ method: 'get', path: '/clients/lock', responses: answers(lockBody, 'Whether client data can be read') }),
      context => context.json({ state: vault.state(), hasPassphrase: vault.hasPassphrase() }, 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/lock',
        request: { body: jsonBody(z.object({ open: z.boolean(), passphrase: z.string().max(1_000).optional() })) },
        responses: answers(lockBody, 'Locked, or open after the passphrase'),
      }),
      async context => {
        const { open, passphrase } = context.req.valid('json');
        if (open) await vault.unlock(passphrase ?? '');
        else vault.lock();
        return context.json({ state: vault.state(), hasPassphrase: vault.hasPassphrase() }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/clients/passphrase',
        request: { body: jsonBody(z.object({ current: z.string().max(1_000).optional(), next: z.string().max(1_000).optional() })) },
        responses: answers(lockBody, 'Set, changed or taken off'),
      }),
      async context => {
        const { current, next } = context.req.valid('json');
        await vault.changePassphrase(current, next);
        return context.json({ state: vault.state(), hasPassphrase: vault.hasPassphrase() }, 200);
      },
    )
    .openapi(
      createRoute({ method: 'get', path: '/clients', responses: answers(z.array(clientShort), 'Clients, who waits first') }),
      async context => {
        const records = (await vault.list()) as unknown as readonly ClientRecord[];
        const short = records.map(record => describeClientShort(record, today()));
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
        const kept = (await vault.put({ ...record }, null)) as unknown as ClientRecord;
        return context.json(describeClientShort(kept, today()), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/clients',
        request: { body: jsonBody(z.object({ confirm: z.literal('erase every client') })) },
        responses: answers(noContent, 'Every client is erased'),
      }),
      async context => {
        await vault.eraseAll();
        return context.json({ done: true as const }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/export',
        responses: answers(z.array(z.record(z.string(), z.unknown())), 'Every client, whole'),
      }),
      async context =>
        context.json(
          (await vault.exportAll()).map(record => ({ ...record })),
          200,
        ),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/propose',
        request: { body: jsonBody(z.object({ assessment: assessmentJson, pick })) },
        responses: answers(proposalBody, 'What an assessment proposes, while it is typed; keeps nothing'),
      }),
      async context => {
        const given = context.req.valid('json');
        return context.json(describeProposal(readable(given.assessment), today(), given.pick), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/labs',
        request: { body: jsonBody(z.object({ text: z.string().max(5_000_000) })) },
        responses: answers(
          z.object({ labs: z.array(z.record(z.string(), z.unknown())), issues: z.array(z.string()) }),
          'Results read from CSV or from FHIR R4 Observations, with what could not be read; keeps nothing',
        ),
      }),
      async context => {
        const { text } = context.req.valid('json');
        const { value, issues } = /^\s*[[{]/.test(text)
          ? labsFromFhir(parsedJson(text))
          : labsFromCsv(await readTable(new TextEncoder().encode(text)));
        const told = issues.map(
          ({ place, found, expected }) =>
            `${place.row === undefined ? (place.heading ?? '') : `row ${place.row}`}: found ${found}, expected ${expected}`,
        );
        return context.json({ labs: value.map(lab => ({ ...lab })) as unknown as Record<string, string>[], issues: told }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}',
        request: { params, query: z.object({ pick }) },
        responses: answers(clientBody, 'One client as of today'),
      }),
      async context => {
        const record = await recordOf(context.req.valid('param').id);
        return context.json(describeClient(record, today(), context.req.valid('query').pick as WeightBasisId | undefined), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: '/clients/{id}',
        request: { params, query: z.object({ version: z.coerce.number() }) },
        responses: answers(noContent, 'The client is erased'),
      }),
      async context => {
        await vault.remove(context.req.valid('param').id, context.req.valid('query').version);
        return context.json({ done: true as const }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/note',
        request: { params },
        responses: answers(z.object({ text: z.string() }), 'The chart note as plain text'),
      }),
      async context => context.json({ text: noteText(await noteOf(context.req.valid('param').id)) }, 200),
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/note-docx',
        request: { params },
        responses: {
          200: { description: 'The chart note as a document', content: { [docxType]: { schema: z.string() } } },
          default: answers(lockBody, '').default,
        },
      }),
      async context => {
        const bytes = await noteDocument(await noteOf(context.req.valid('param').id));
        return context.body(bytes as Uint8Array<ArrayBuffer>, 200, { 'content-type': docxType }) as never;
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/fhir',
        request: { params },
        responses: answers(z.record(z.string(), z.unknown()), 'The signed prescription and the results as a FHIR R4 bundle'),
      }),
      async context => {
        const bundle = careBundle(await recordOf(context.req.valid('param').id));
        if (bundle === undefined) throw new Fault('prescription-not-complete', 'Nothing is signed yet.');
        return context.json({ ...bundle } as Record<string, unknown>, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/assessments',
        request: { params, body: jsonBody(seen.extend({ assessment: assessmentJson })) },
        responses: answers(clientBody, 'The client with the new assessment'),
      }),
      async context => {
        const { version, assessment } = context.req.valid('json');
        const read = readable(assessment);
        const record = await change(context.req.valid('param').id, version, one => ({
          ...one,
          assessments: [{ id: randomUUID(), assessment: read }, ...one.assessments],
        }));
        return context.json(describeClient(record, today()), 200);
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
              targets: z.array(decidedTarget).max(20),
              by: z.string().max(200),
              credentials: z.string().max(200),
            }),
          ),
        },
        responses: answers(clientBody, 'The client with the signed prescription; what was signed before stays as it was'),
      }),
      async context => {
        const { version, assessmentId, targets, by, credentials } = context.req.valid('json');
        const decided = targets.map((target): DecidedTarget => {
          const { range, limit, reason, ...rest } = target;
          return {
            ...rest,
            unit: targetUnits[target.item],
            ...(range === undefined ? {} : { range: { lo: range[0], hi: range[1] ?? Number.MAX_SAFE_INTEGER } }),
            ...(limit === undefined ? {} : { limit }),
            ...(reason === undefined ? {} : { reason }),
          };
        });
        const missing = missingToSign(decided, by);
        if (missing.length > 0) throw new Fault('prescription-not-complete', `Still missing: ${missing.join('; ')}.`);
        const signed = { id: randomUUID(), assessmentId, targets: decided, signed: { by, credentials, at: now().toISOString() } };
        const record = await change(context.req.valid('param').id, version, one => withSigned(one, signed));
        return context.json(describeClient(record, today()), 200);
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
        const contact = { cautionId, told, on: today(), at: now().toISOString(), ...(note === undefined ? {} : { note }) };
        const record = await change(context.req.valid('param').id, version, one => ({ ...one, contacts: [contact, ...one.contacts] }));
        return context.json(describeClient(record, today()), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/clients/{id}/meals',
        request: {
          params,
          body: jsonBody(
            seen.extend({
              pattern: z
                .array(z.object({ name: z.string().trim().min(1).max(60), percent: z.number().min(1).max(100) }))
                .min(1)
                .max(8),
            }),
          ),
        },
        responses: answers(clientBody, 'The client with the meal pattern'),
      }),
      async context => {
        const { version, pattern } = context.req.valid('json');
        const record = await change(context.req.valid('param').id, version, one => ({ ...one, mealPattern: pattern }));
        return context.json(describeClient(record, today()), 200);
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
              category: z.string(),
              plate: z.string(),
              meal: z.string().default(evenPattern[0]!.name),
              useEstimates: z.boolean().default(false),
            }),
          ),
        },
        responses: answers(fitsBody, 'The shelf judged for this client by the signed prescription'),
      }),
      async context => {
        const { category, plate, meal, useEstimates } = context.req.valid('json');
        const record = await recordOf(context.req.valid('param').id);
        if (useEstimates) await minerals.want((await shelf.foods(category)).map(({ label }) => label));
        const foods = await shelf.foods(category);
        return context.json(whatFits({ record, foods, plate: await plateOf(plate, store), meal, useEstimates }), 200);
      },
    );
}
