import { createRoute, z } from '@hono/zod-openapi';
import { clinicFigures } from '#app/clients/clinicFigures.ts';
import { describeClient } from '#app/clients/describeClient.ts';
import { localDay } from '#app/clients/localDay.ts';
import { clientHandout, handoutTold, wholePage } from '#app/handouts/builtHandout.ts';
import type { Previews } from '#app/previews.ts';
import type { ClientRecord } from '#core/client/record/record.ts';
import { handoutHtml } from '#core/handout/html/handoutHtml.ts';
import { clientBody } from '../clientBodies.ts';
import { changeRecord, recordOf } from '../clientRecords.ts';
import { exactDress, pageDress } from '../guideBodies.ts';
import { handoutAnswer, handoutJson, handoutPreview } from '../handoutBodies.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody, jsonBody } from './answers.ts';

const params = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
const written = z.object({
  handout: handoutJson,
  useEstimates: z.boolean().default(false),
  dress: pageDress.default({ largePrint: false }),
});

/** The file's name tells nothing of the client. */
const fileId = 'handout';

/** A client's handout: what is written for it is kept with the record, its numbers come from what is signed. */
export function clientHandoutRoutes(world: World, previews: Previews) {
  const { vault, now } = world;
  const build = async (id: string, { handout, useEstimates }: z.output<typeof written>) => {
    const record = await recordOf(id, vault);
    return clientHandout({ ...handout, id: fileId, writtenOn: localDay(now()) }, record, useEstimates, world);
  };
  return newApi(world.log)
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/handout',
        request: { params },
        responses: answers(
          z.object({ handout: handoutAnswer.nullable(), version: z.number().int().positive() }),
          'What was last written for this client, null where nothing was, with the version of the record that it was read from',
        ),
      }),
      async context => {
        const { handout, version } = await recordOf(context.req.valid('param').id, vault);
        return context.json({ handout: handout ?? null, version }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: '/clients/{id}/handout',
        request: { params, body: jsonBody(z.object({ handout: handoutJson, version: z.number().int().positive() })) },
        responses: answers(clientBody, 'The client, with what is written for the next handout'),
      }),
      async context => {
        const { handout, version } = context.req.valid('json');
        const keep = (record: ClientRecord): ClientRecord => ({ ...record, handout });
        const record = await changeRecord(context.req.valid('param').id, version, vault, keep);
        return context.json(describeClient(record, localDay(now()), undefined, (await clinicFigures(vault)).rules), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/handout',
        request: { params, body: jsonBody(written) },
        responses: answers(handoutPreview, 'What the handout comes to, and where its page can be looked at; keeps nothing'),
      }),
      async context => {
        const given = context.req.valid('json');
        return context.json(handoutTold(await build(context.req.valid('param').id, given), previews, given.dress.largePrint), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/handout-paper',
        request: { params, body: jsonBody(written) },
        responses: fileAnswer('application/pdf', 'The handout as paper will have it'),
      }),
      async context => {
        const given = context.req.valid('json');
        const print = world.pdfPrinter(context.req.raw.signal);
        const page = wholePage(await build(context.req.valid('param').id, given));
        const pdf = await print(handoutHtml(page, exactDress(given.dress)));
        return fileBody(pdf, 'application/pdf');
      },
    );
}
