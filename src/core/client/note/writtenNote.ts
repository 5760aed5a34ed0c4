import type { ClientRecord, KeptNote, NoteKind, OwnSentences, WrittenSection } from '#core/client/record/record.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { noStatement } from './noteFollowUp.ts';
import { type ChartNote, cleaned, cleanLine, isolated, type NoteSection } from './noteSection.ts';

/** In characters of all sections together. Own decision: many times a long note. */
export const longestNote = 50_000;

/** The headings of each kind, in the order of the note. */
export const noteHeadings = {
  full: [
    'Assessment',
    'Laboratory results',
    'Diagnosis',
    'Intervention: nutrition prescription',
    'Where guidelines disagree',
    'Cautions',
    'Who was told',
    'Monitoring and evaluation',
    'Notice',
  ],
  interval: [
    'What changed',
    'Goals and figures followed',
    'Diagnosis',
    'Nutrition prescription',
    'Cautions',
    'Who was told',
    'Monitoring and evaluation',
    'Notice',
  ],
  lines: ['State', 'Decided', 'Next'],
} as const satisfies Readonly<Record<NoteKind, readonly string[]>>;

const titles: Readonly<Record<NoteKind, string>> = {
  full: 'Nutrition note',
  interval: 'Interval nutrition note',
  lines: 'Nutrition note in three lines',
};

/** "Nutrition note, A.B., 2026-06-15"; without the name where it leaves the record for another program. */
export function noteTitle(kind: NoteKind, on: Day, name?: string): string {
  return [titles[kind], ...(name === undefined ? [] : [isolated(name)]), on].join(', ');
}

/** A note as it is edited: each section one text, a paragraph or a row of its table on a line. */
export function writtenSections({ sections }: ChartNote): readonly WrittenSection[] {
  return sections.map(({ heading, paragraphs, rows = [] }) => ({
    heading,
    text: [...paragraphs, ...rows.slice(1).map(([name, figure, why]) => `${name}: ${figure}. ${why}`)].join('\n'),
  }));
}

export function noteLength(sections: readonly WrittenSection[]): number {
  return sections.reduce((sum, { text }) => sum + text.length, 0);
}

export const goalAnswers = ['met', 'partly met', 'not met'] as const;
export type GoalAnswer = (typeof goalAnswers)[number];

/** What is typed beside the sections: sentences of the dietitian's own, and how far each goal was met. */
export interface WrittenBeside extends OwnSentences {
  readonly goals: readonly { readonly goal: string; readonly answer: GoalAnswer | 'not known yet' }[];
}

/** The sections with what is typed beside them in its place, and without those that are empty. A statement of her own takes the place of "no statement". */
export function wholeNote(kind: NoteKind, sections: readonly WrittenSection[], beside: WrittenBeside): readonly WrittenSection[] {
  const statements = told(beside.statements);
  const added: Readonly<Record<string, readonly string[]>> =
    kind === 'lines'
      ? {}
      : {
          Diagnosis: statements,
          'Monitoring and evaluation': told(beside.monitoring),
          ...(kind === 'interval'
            ? { 'Goals and figures followed': beside.goals.map(({ goal, answer }) => `Goal “${isolated(goal)}”: ${answer}.`) }
            : {}),
        };
  const texts = new Map(sections.map(({ heading, text }) => [heading, text]));
  return noteHeadings[kind].flatMap(heading => {
    const lines = (texts.get(heading) ?? '').split('\n').filter(line => statements.length === 0 || line !== noStatement);
    const text = [...lines, ...(added[heading] ?? [])].join('\n').trim();
    return text === '' ? [] : [{ heading, text }];
  });
}

function told(sentences: readonly string[]): readonly string[] {
  return sentences.map(one => one.trim()).filter(one => one !== '');
}

/** Each line without control characters. */
export function cleanSections(sections: readonly WrittenSection[]): readonly WrittenSection[] {
  return sections.map(({ heading, text }) => ({
    heading,
    text: text
      .split(/\r\n?|\n/u)
      .map(cleanLine)
      .join('\n'),
  }));
}

/** Written sections as a note that can be printed or filed. */
export function noteOf(title: string, sections: readonly WrittenSection[]): ChartNote {
  return cleaned({ title, sections: sections.map(({ heading, text }) => ({ heading, paragraphs: text.split('\n') })) });
}

/** A kept note, with who wrote it when, what it corrects and what corrects it. `name` is left out where it leaves the record for another program. */
export function keptNoteOf({ notes = [] }: Pick<ClientRecord, 'notes'>, note: KeptNote, name?: string): ChartNote {
  const { title, sections } = noteOf(noteTitle(note.kind, note.on, name), note.sections);
  const corrected = notes.find(({ id }) => id === note.corrects);
  const laterOnes = notes.filter(({ corrects }) => corrects === note.id);
  const written: NoteSection = {
    heading: 'Written',
    paragraphs: [
      `${note.by === undefined ? '' : `By ${note.by.split(', ').map(isolated).join(', ')}, `}${moment(note.writtenAt)}.`,
      ...(corrected === undefined ? [] : [`It corrects the note written ${moment(corrected.writtenAt)}.`]),
      ...laterOnes.map(({ writtenAt }) => `It is corrected by the note written ${moment(writtenAt)}.`),
    ],
  };
  return cleaned({ title, sections: [...sections, written] });
}

function moment(at: string): string {
  return `${at.slice(0, 16).replace('T', ' ')} UTC`;
}
