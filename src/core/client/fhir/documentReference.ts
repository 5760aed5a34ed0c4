import type { KeptNote } from '#core/client/record/record.ts';
import type { Concept, Reference } from './observations.ts';

/** The parts of an R4 DocumentReference that are written here. hl7.org/fhir/R4/documentreference.html */
export interface DocumentReference {
  readonly resourceType: 'DocumentReference';
  readonly id: string;
  readonly status: 'current' | 'superseded';
  readonly docStatus: 'final';
  readonly type: Concept;
  readonly subject: Reference;
  readonly date: string;
  readonly author?: readonly Reference[];
  readonly relatesTo?: readonly { readonly code: 'replaces'; readonly target: Reference }[];
  readonly content: readonly [{ readonly attachment: Attachment }];
}

interface Attachment {
  readonly contentType: string;
  readonly language: string;
  readonly data: string;
  readonly title: string;
  readonly creation: string;
}

/** "Nutrition and dietetics Note" in the value set c80-doc-typecodes of FHIR R4. LOINC: see `loinc.ts`. */
const noteType: Concept = { coding: [{ system: 'http://loinc.org', code: '34801-1' }], text: 'Nutrition note' };

/**
 * A kept note as a DocumentReference that holds its text. The person is an opaque id; a note that a later one corrects is superseded.
 * @param base64 the text in UTF-8, without the client's name in its title
 */
export function documentReference(note: KeptNote, all: readonly KeptNote[], clientId: string, base64: string): DocumentReference {
  const { id, writtenAt, by, corrects } = note;
  return {
    resourceType: 'DocumentReference',
    id,
    status: all.some(one => one.corrects === id) ? 'superseded' : 'current',
    docStatus: 'final',
    type: noteType,
    subject: { reference: `Patient/${clientId}` },
    date: writtenAt,
    ...(by === undefined ? {} : { author: [{ display: by }] }),
    ...(corrects === undefined ? {} : { relatesTo: [{ code: 'replaces', target: { reference: `DocumentReference/${corrects}` } }] }),
    content: [
      {
        attachment: {
          contentType: 'text/plain; charset=utf-8',
          language: 'en-US',
          data: base64,
          title: 'Nutrition note',
          creation: writtenAt,
        },
      },
    ],
  };
}
