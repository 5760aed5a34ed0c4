import { createRoute, z } from '@hono/zod-openapi';
import { proposedNote } from '#app/clients/clientNotes.ts';
import { clinicFigures } from '#app/clients/clinicFigures.ts';
import { localDay } from '#app/clients/localDay.ts';
import { type CareBundle, careBundle } from '#core/client/fhir/careBundle.ts';
import type { ChartNote } from '#core/client/note/chartNote.ts';
import { noteText } from '#core/client/note/noteText.ts';
import { type NoteKind, noteKinds } from '#core/client/record/keptNote.ts';
import { Fault } from '#core/errors.ts';
import { recordOf } from '../clientRecords.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody } from './answers.ts';

/** The full note when missing. */
const query = z.object({ kind: z.enum(noteKinds).default('full') });
const params = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
/** What we write ourselves: described at hl7.org/fhir/R4, and never read back. */
const fhirBundle = z.custom<CareBundle>().openapi({ type: 'object' });
export const docxType = 'application/vnd.openxmlformats-officedocument.wordprocessingml.document';

/** What leaves the record of one client on paper or as a file. */
export function clientPaperRoutes({ vault, noteDocument, now, log }: World) {
  const noteOf = async (id: string, kind: NoteKind): Promise<ChartNote> =>
    proposedNote(await recordOf(id, vault), kind, localDay(now()), (await clinicFigures(vault)).rules);
  return newApi(log)
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/note',
        request: { params, query },
        responses: answers(z.object({ text: z.string() }), 'The chart note as it would be written now, as plain text'),
      }),
      async context => context.json({ text: noteText(await noteOf(context.req.valid('param').id, context.req.valid('query').kind)) }, 200),
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/note-docx',
        request: { params, query },
        responses: fileAnswer(docxType, 'The chart note as it would be written now, as a document'),
      }),
      async context => {
        const bytes = await noteDocument(await noteOf(context.req.valid('param').id, context.req.valid('query').kind));
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
