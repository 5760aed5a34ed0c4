import { randomUUID } from 'node:crypto';
import { createRoute, z } from '@hono/zod-openapi';
import { describeKeptNote, listNotes, noteOfRecord, noteToWrite, withNote } from '#app/clients/clientNotes.ts';
import { clinicFigures } from '#app/clients/clinicFigures.ts';
import { localDay } from '#app/clients/localDay.ts';
import { type DocumentReference, documentReference } from '#core/client/fhir/documentReference.ts';
import { noteText } from '#core/client/note/noteText.ts';
import { keptNoteOf } from '#core/client/note/writtenNote.ts';
import { noteKinds, ownSentencesSchema, writtenSectionSchema } from '#core/client/record/keptNote.ts';
import { changeRecord, recordOf } from '../clientRecords.ts';
import { newApi } from '../newApi.ts';
import type { World } from '../world.ts';
import { answers, fileAnswer, fileBody, jsonBody } from './answers.ts';
import { docxType } from './clientPapers.ts';

const params = z.object({ id: z.uuid().openapi({ param: { name: 'id', in: 'path' } }) });
const noteParams = params.extend({ noteId: z.uuid().openapi({ param: { name: 'noteId', in: 'path' } }) });

const kindToWrite = z.object({ title: z.string(), sections: z.array(writtenSectionSchema) });
const toWriteBody = z.object({
  kinds: z.object({ full: kindToWrite, interval: kindToWrite, lines: kindToWrite }),
  goals: z.array(z.string()),
  own: ownSentencesSchema,
});
const shortBody = z.object({
  id: z.string(),
  kind: z.enum(noteKinds),
  on: z.string(),
  writtenAt: z.string(),
  by: z.string().optional(),
  corrects: z.string().optional(),
  isCorrected: z.boolean(),
});
const ownSentence = z.string().trim().min(1).max(2_000);
const sentBody = z.object({
  version: z.number().int().positive(),
  kind: z.enum(noteKinds),
  sections: z.array(writtenSectionSchema).max(20),
  own: z.object({ statements: z.array(ownSentence).max(50), monitoring: z.array(ownSentence).max(50) }),
  by: z.string().trim().max(200),
  corrects: z.uuid().optional(),
});
/** What we write ourselves: described at hl7.org/fhir/R4, and never read back. */
const fhirDocument = z.custom<DocumentReference>().openapi({ type: 'object' });

/** Notes for the chart: what is written from, and what was kept. A kept note is never changed. */
export function clientNoteRoutes({ vault, noteDocument, now, log }: World) {
  const found = async ({ id, noteId }: z.output<typeof noteParams>) => {
    const record = await recordOf(id, vault);
    return { record, note: noteOfRecord(record, noteId) };
  };
  return newApi(log)
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/note-to-write',
        request: { params },
        responses: answers(
          toWriteBody,
          'Each kind of note as it would be written now, in sections, with what is asked and offered beside them',
        ),
      }),
      async context => {
        const record = await recordOf(context.req.valid('param').id, vault);
        return context.json(noteToWrite(record, localDay(now()), (await clinicFigures(vault)).rules), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/notes',
        request: { params },
        responses: answers(z.array(shortBody), 'The notes that were kept, newest first'),
      }),
      async context => context.json(listNotes(await recordOf(context.req.valid('param').id, vault)), 200),
    )
    .openapi(
      createRoute({
        method: 'post',
        path: '/clients/{id}/notes',
        request: { params, body: jsonBody(sentBody) },
        responses: answers(z.object({ id: z.string() }), 'The note is kept with the record; those before stay as they were'),
      }),
      async context => {
        const { version, ...sent } = context.req.valid('json');
        const noteId = randomUUID();
        await changeRecord(context.req.valid('param').id, version, vault, record => withNote(record, noteId, sent, now()));
        return context.json({ id: noteId }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/notes/{noteId}',
        request: { params: noteParams },
        responses: answers(
          z.object({
            title: z.string(),
            kind: z.enum(noteKinds),
            sections: z.array(writtenSectionSchema),
            own: ownSentencesSchema,
            text: z.string(),
          }),
          'A kept note in sections, the last of which says who wrote it when, and as plain text',
        ),
      }),
      async context => {
        const { record, note } = await found(context.req.valid('param'));
        return context.json(describeKeptNote(record, note), 200);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/notes/{noteId}/docx',
        request: { params: noteParams },
        responses: fileAnswer(docxType, 'A kept note as a document'),
      }),
      async context => {
        const { record, note } = await found(context.req.valid('param'));
        return fileBody(await noteDocument(keptNoteOf(record, note, record.name)), docxType);
      },
    )
    .openapi(
      createRoute({
        method: 'get',
        path: '/clients/{id}/notes/{noteId}/fhir',
        request: { params: noteParams },
        responses: answers(fhirDocument, 'A kept note as a FHIR R4 DocumentReference, without the client’s name in its title'),
      }),
      async context => {
        const { record, note } = await found(context.req.valid('param'));
        const base64 = Buffer.from(noteText(keptNoteOf(record, note))).toString('base64');
        return context.json(documentReference(note, record.notes ?? [], record.id, base64), 200);
      },
    );
}
