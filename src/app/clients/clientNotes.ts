import type { ChartNote } from '#core/client/note/chartNote.ts';
import { chartNote } from '#core/client/note/chartNote.ts';
import { intervalNote } from '#core/client/note/intervalNote.ts';
import { cleanLine } from '#core/client/note/noteSection.ts';
import { noteText } from '#core/client/note/noteText.ts';
import { threeLineNote } from '#core/client/note/threeLineNote.ts';
import { cleanSections, keptNoteOf, longestNote, noteHeadings, noteLength, writtenSections } from '#core/client/note/writtenNote.ts';
import {
  assessmentsThatStand,
  type ClientRecord,
  currentAssessment,
  type KeptNote,
  type NoteKind,
  type OwnSentences,
  type WrittenSection,
} from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import { Fault } from '#core/errors.ts';

import { localDay } from './localDay.ts';

/** A note of one kind as it would be written now. @throws Fault assessment-not-valid */
export function proposedNote(record: ClientRecord, kind: NoteKind, today: string, rules: CareRules): ChartNote {
  const note =
    kind === 'full'
      ? chartNote(record, today, [], rules)
      : kind === 'interval'
        ? intervalNote(record, today, rules)
        : threeLineNote(record, today, rules);
  if (note === undefined) throw new Fault('assessment-not-valid', 'There is no assessment to write a note from.');
  return note;
}

/** What the dietitian begins to write from: each kind in sections, the goals that are asked about, her own sentences of the last note. */
export function noteToWrite(record: ClientRecord, today: string, rules: CareRules) {
  const sectionsOf = (kind: NoteKind) => {
    const note = proposedNote(record, kind, today, rules);
    return { title: note.title, sections: writtenSections(note).map(section => ({ ...section })) };
  };
  const [newest, before] = assessmentsThatStand(record);
  const { statements = [], monitoring = [] } = record.notes?.find(({ own }) => own !== undefined)?.own ?? {};
  return {
    kinds: { full: sectionsOf('full'), interval: sectionsOf('interval'), lines: sectionsOf('lines') },
    goals: [...new Set([...(before?.goals ?? []), ...(newest?.goals ?? [])])],
    own: { statements: [...statements], monitoring: [...monitoring] },
  };
}

export interface SentNote {
  readonly kind: NoteKind;
  readonly sections: readonly WrittenSection[];
  readonly own: OwnSentences;
  readonly by: string;
  readonly corrects?: string | undefined;
}

/** The record with one more note, made from what stands now. @throws Fault note-too-long, request-not-valid */
export function withNote(record: ClientRecord, id: string, sent: SentNote, now: Date): ClientRecord {
  const { kind, own, by, corrects } = sent;
  const length = noteLength(sent.sections);
  if (length > longestNote) throw new Fault('note-too-long', `A note holds up to ${longestNote} characters; this one has ${length}.`);
  const headings: readonly string[] = noteHeadings[kind];
  const named = sent.sections.map(({ heading }) => heading);
  if (named.length === 0 || named.some((heading, at) => !headings.includes(heading) || named.indexOf(heading) !== at))
    throw new Fault('request-not-valid', 'sections: expected the headings of this kind of note, each once');
  const notes = record.notes ?? [];
  if (corrects !== undefined && !notes.some(one => one.id === corrects))
    throw new Fault('request-not-valid', 'corrects: expected a note that was kept');
  const current = currentAssessment(record);
  if (current === undefined) throw new Fault('assessment-not-valid', 'There is no assessment to write a note from.');
  const [added] = record.addedResults ?? [];
  const [prescription] = record.prescriptions;
  const note: KeptNote = {
    id,
    kind,
    on: localDay(now),
    writtenAt: now.toISOString(),
    sections: cleanSections(sent.sections),
    ...(by === '' ? {} : { by: cleanLine(by) }),
    assessmentId: current.id,
    ...(added === undefined ? {} : { addedResultsId: added.id }),
    ...(prescription === undefined ? {} : { prescriptionId: prescription.id }),
    ...(own.statements.length + own.monitoring.length === 0
      ? {}
      : { own: { statements: own.statements.map(cleanLine), monitoring: own.monitoring.map(cleanLine) } }),
    ...(corrects === undefined ? {} : { corrects }),
  };
  return { ...record, notes: [note, ...notes] };
}

/** @throws Fault note-not-found */
export function noteOfRecord({ notes = [] }: ClientRecord, noteId: string): KeptNote {
  const note = notes.find(({ id }) => id === noteId);
  if (note === undefined) throw new Fault('note-not-found', 'The note is not in the record of this client.');
  return note;
}

/** A kept note as it is read again: its sections, the last of which says who wrote it when, and the whole as plain text. */
export function describeKeptNote(record: ClientRecord, note: KeptNote) {
  const whole = keptNoteOf(record, note, record.name);
  const { statements = [], monitoring = [] } = note.own ?? {};
  return {
    title: whole.title,
    kind: note.kind,
    sections: writtenSections(whole).map(section => ({ ...section })),
    own: { statements: [...statements], monitoring: [...monitoring] },
    text: noteText(whole),
  };
}

/** The kept notes without their text, newest first. */
export function listNotes({ notes = [] }: ClientRecord) {
  return notes.map(({ id, kind, on, writtenAt, by, corrects }) => ({
    id,
    kind,
    on,
    writtenAt,
    ...(by === undefined ? {} : { by }),
    ...(corrects === undefined ? {} : { corrects }),
    isCorrected: notes.some(one => one.corrects === id),
  }));
}
