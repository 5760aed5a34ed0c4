import { Fhir } from 'fhir/fhir.js';
import type { DocumentReference } from 'fhir/r4.js';
import { expect, test } from 'vitest';
import type { KeptNote } from '#core/client/record/record.ts';
import { documentReference } from './documentReference.ts';

const validator = new Fhir();

/** The validator holds the value set of types of documents, with this code of LOINC in it; that of media types it lacks. */
function faultsOf(resource: unknown): readonly string[] {
  const { valid, messages } = validator.validate(JSON.parse(JSON.stringify(resource)), { errorOnUnexpected: true });
  const told = messages.filter(({ message = '' }) => !message.includes('ValueSet/mimetypes" could not be found'));
  const faults = told.map(({ message, location, severity }) => `${severity} ${location}: ${message}`);
  return valid ? faults : ['not valid', ...faults];
}

type Writable<T> = { -readonly [Key in keyof T]: Writable<T[Key]> };

const note: KeptNote = {
  ...{ id: '0d6f9a52-7a3e-4a4e-8a54-0f1f0c2e7c1f', kind: 'full', on: '2026-06-15', writtenAt: '2026-06-15T12:00:00.000Z' },
  ...{ assessmentId: 'assessment-2', sections: [{ heading: 'Assessment', text: 'Well.' }], by: 'Ada Example, RDN' },
};
const later: KeptNote = { ...note, id: '1d6f9a52-7a3e-4a4e-8a54-0f1f0c2e7c1f', corrects: note.id };
const base64 = Buffer.from('Nutrition note: ½ cup').toString('base64');

test('[FHR-1] [FHR-14] a kept note is a valid R4 DocumentReference that holds its text', () => {
  const document = documentReference(note, [note], 'client-1', base64);
  expect(faultsOf(document)).toEqual([]);
  const typed: DocumentReference = structuredClone(document) as Writable<typeof document>;
  expect(Buffer.from(typed.content[0]!.attachment.data!, 'base64').toString()).toBe('Nutrition note: ½ cup');
  expect(document).toMatchObject({
    status: 'current',
    docStatus: 'final',
    type: { coding: [{ system: 'http://loinc.org', code: '34801-1' }] },
    subject: { reference: 'Patient/client-1' },
    author: [{ display: 'Ada Example, RDN' }],
    date: '2026-06-15T12:00:00.000Z',
  });
  const { by: _, ...unsigned } = note;
  expect(documentReference(unsigned, [], 'client-1', base64)).not.toHaveProperty('author');
});

test('[FHR-14] a note that corrects another replaces it, and the other is superseded', () => {
  const document = documentReference(later, [later, note], 'client-1', base64);
  expect(faultsOf(document)).toEqual([]);
  expect(document.relatesTo).toEqual([{ code: 'replaces', target: { reference: `DocumentReference/${note.id}` } }]);
  expect(document.status).toBe('current');
  const earlier = documentReference(note, [later, note], 'client-1', base64);
  expect(earlier.status).toBe('superseded');
  expect(earlier).not.toHaveProperty('relatesTo');
});

test('[FHR-1] the validator would have said so: an unknown property, a wrong status, no content', () => {
  const document = documentReference(note, [note], 'client-1', base64);
  expect(faultsOf({ ...document, mood: 'good' })).not.toEqual([]);
  expect(faultsOf({ ...document, status: 'kept' })).not.toEqual([]);
  expect(faultsOf({ ...document, content: undefined })).not.toEqual([]);
  expect(faultsOf({ ...document, type: { coding: [{ system: 'http://loinc.org', code: '34801-2' }] } })).not.toEqual([]);
  expect(faultsOf({ ...document, relatesTo: [{ code: 'corrects', target: {} }] })).not.toEqual([]);
});
