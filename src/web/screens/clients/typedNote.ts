import { type GoalAnswer, noteHeadings, wholeNote } from '#core/client/note/writtenNote.ts';
import type { NoteKind, WrittenSection } from '#core/client/record/record.ts';
import type { KeptNote, KeptNoteShort, NoteToWrite } from '../../api.ts';
import type { Choices } from '../../ui/form/choices.ts';

export const kindChoices: Choices<NoteKind> = [
  ['full', 'Full note, by ADIME'],
  ['interval', 'Interval note, what changed'],
  ['lines', 'Three lines'],
];

const kindWords: Readonly<Record<NoteKind, string>> = { full: 'full note', interval: 'interval note', lines: 'three lines' };

/** How a kept note is called in a list: "2026-06-15, 14:02 UTC, interval note, by Ada Example, corrected by a later one" */
export function noteLine({ kind, on, writtenAt, by, corrects, isCorrected }: KeptNoteShort): string {
  return [
    on,
    `${writtenAt.slice(11, 16)} UTC`,
    kindWords[kind],
    ...(by === undefined ? [] : [`by ${by}`]),
    ...(corrects === undefined ? [] : ['corrects an earlier one']),
    ...(isCorrected ? ['corrected by a later one'] : []),
  ].join(', ');
}

export type Answer = GoalAnswer | 'not known yet';

export const answerChoices: Choices<Answer> = [
  ['not known yet', 'not known yet'],
  ['met', 'met'],
  ['partly met', 'partly'],
  ['not met', 'not met'],
];

/** A section with what was proposed for it when its text was begun. */
export interface TypedSection extends WrittenSection {
  readonly proposed: string;
}

/** A note while it is written. Every kind keeps its own text: choosing another one loses nothing. */
export interface TypedNote extends Readonly<Record<NoteKind, readonly TypedSection[]>> {
  readonly kind: NoteKind;
  readonly goals: readonly { readonly goal: string; readonly answer: Answer }[];
  readonly statements: readonly { readonly text: string }[];
  readonly monitoring: readonly { readonly text: string }[];
  readonly by: string;
  /** The id of the note that this one corrects; '' for none. */
  readonly corrects: string;
}

/** The kept note that is to be corrected, as it stands. */
export interface ToCorrect {
  readonly id: string;
  readonly note: KeptNote;
}

/** A note as it begins: as proposed, or with the text of the one that is corrected. */
export function typedNote(toWrite: NoteToWrite, by: string, toCorrect?: ToCorrect): TypedNote {
  const sections = (kind: NoteKind): readonly TypedSection[] => {
    const proposed = toWrite.kinds[kind].sections;
    if (toCorrect?.note.kind !== kind) return proposed.map(({ heading, text }) => ({ heading, text, proposed: text }));
    return noteHeadings[kind].flatMap(heading => {
      const [kept, now] = [textOf(toCorrect.note.sections, heading), textOf(proposed, heading)];
      return kept === '' && now === '' ? [] : [{ heading, text: kept, proposed: now }];
    });
  };
  // What was her own stands in the text of the note that is corrected already.
  const own = toCorrect === undefined ? toWrite.own : { statements: [], monitoring: [] };
  return {
    kind: toCorrect?.note.kind ?? 'full',
    full: sections('full'),
    interval: sections('interval'),
    lines: sections('lines'),
    goals: toCorrect === undefined ? toWrite.goals.map(goal => ({ goal, answer: 'not known yet' })) : [],
    statements: own.statements.map(text => ({ text })),
    monitoring: own.monitoring.map(text => ({ text })),
    by,
    corrects: toCorrect?.id ?? '',
  };
}

/** What is kept of it: the sections of its kind with what stands beside them. */
export function sectionsToKeep({ kind, goals, ...typed }: TypedNote): readonly WrittenSection[] {
  return wholeNote(kind, typed[kind], { ...ownToKeep(typed), goals });
}

export function ownToKeep({ statements, monitoring }: Pick<TypedNote, 'statements' | 'monitoring'>) {
  const told = (sentences: readonly { readonly text: string }[]) => sentences.map(({ text }) => text.trim()).filter(text => text !== '');
  return { statements: told(statements), monitoring: told(monitoring) };
}

/** A section that would be proposed otherwise now than when its text was begun. */
export interface ReadsOtherwise {
  readonly heading: string;
  /** '' where it would not be there any more. */
  readonly now: string;
}

/** Facts changed since the note was begun: which sections that touches. What reads like the new proposal already is left out. */
export function readsOtherwise(
  kind: NoteKind,
  typed: readonly TypedSection[],
  proposed: readonly WrittenSection[],
): readonly ReadsOtherwise[] {
  return noteHeadings[kind].flatMap(heading => {
    const section = typed.find(one => one.heading === heading);
    const now = textOf(proposed, heading);
    return now === (section?.proposed ?? '') || now === (section?.text ?? '') ? [] : [{ heading, now }];
  });
}

/** The sections after an offer was answered: the new text taken, or the typed one left as it is. */
export function afterOffer(
  kind: NoteKind,
  typed: readonly TypedSection[],
  { heading, now }: ReadsOtherwise,
  isTaken: boolean,
): readonly TypedSection[] {
  const before = typed.find(one => one.heading === heading) ?? { heading, text: '', proposed: '' };
  const after = { ...before, text: isTaken ? now : before.text, proposed: now };
  return noteHeadings[kind].flatMap(one => (one === heading ? [after] : typed.filter(section => section.heading === one)));
}

function textOf(sections: readonly WrittenSection[], heading: string): string {
  return sections.find(one => one.heading === heading)?.text ?? '';
}
