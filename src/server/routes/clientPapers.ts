import { createRoute, z } from '@hono/zod-openapi';
import { clinicFigures } from '#app/clients/clinicFigures.ts';
import { localDay } from '#app/clients/localDay.ts';
import { type CareBundle, careBundle } from '#core/client/fhir/careBundle.ts';
import { type ChartNote, chartNote } from '#core/client/note/chartNote.ts';
import { noteText } from '#core/client/note/noteText.ts';
import { Fault } from '#core/errors.ts';
import { recordOf } from '../clientRecords.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody } from './answers.ts';

const params = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
/** What we write ourselves: described at hl7.org/fhir/R4, and never read back. */
const fhirBundle = z.custom<CareBundle>().openapi({ type: 'object' });
const docxType = 'application/vnd.openxmlformats-officedocument.wordprocessingml.document';

/** What leaves the record of one client on paper or as a file. */
export function clientPaperRoutes({ vault, noteDocument, now, log }: World) {
  async function noteOf(id: string): Promise<ChartNote> {
    const note = chartNote(await recordOf(id, vault), localDay(now()), [], (await clinicFigures(vault)).rules);
    if (note === undefined) throw new Fault('assessment-not-valid', 'There is no assessment to write a note from.');
    return note;
  }
  return newApi(log)
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
        responses: fileAnswer(docxType, 'The chart note as a document'),
      }),
      async context => {
        const bytes = await noteDocument(await noteOf(context.req.valid('param').id));
        return fileBody(bytes, docxType);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/fhir',
        request: { params },
        responses: answers(fhirBundle, 'The signed prescription and the results as a FHIR R4 bundle'),
      }),
      async context => {
        const bundle = careBundle(await recordOf(context.req.valid('param').id, vault));
        if (bundle === undefined) throw new Fault('prescription-not-complete', 'Nothing is signed yet.');
        return context.json(bundle, 200);
      },
    );
}
