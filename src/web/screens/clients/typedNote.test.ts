import { describe, expect, test } from 'vitest';
import type { KeptNote, NoteToWrite } from '../../api.ts';
import { afterOffer, noteLine, ownToKeep, readsOtherwise, sectionsToKeep, typedNote } from './typedNote.ts';

const kind = (...sections: readonly [heading: string, text: string][]) => ({
  title: 'Nutrition note',
  sections: sections.map(([heading, text]) => ({ heading, text })),
});
const toWrite: NoteToWrite = {
  kinds: {
    full: kind(['Assessment', 'Well.'], ['Diagnosis', 'Consider: thirst.']),
    interval: kind(['What changed', 'Nothing.']),
    lines: kind(['State', 'Well.'], ['Next', 'Call.']),
  },
  goals: ['walk'],
  own: { statements: ['Little time to cook.'], monitoring: [] },
};

describe('a note as it is typed', () => {
  test('[NOTE-24] begins as proposed, with her own sentences of the last note; what is kept has them in their place', () => {
    const typed = typedNote(toWrite, 'Ada Example, RDN');
    expect(typed).toMatchObject({ kind: 'full', by: 'Ada Example, RDN', corrects: '', goals: [{ goal: 'walk', answer: 'not known yet' }] });
    expect(typed.full[0]).toEqual({ heading: 'Assessment', text: 'Well.', proposed: 'Well.' });
    expect(sectionsToKeep(typed)).toEqual([
      { heading: 'Assessment', text: 'Well.' },
      { heading: 'Diagnosis', text: 'Consider: thirst.\nLittle time to cook.' },
    ]);
    expect(sectionsToKeep({ ...typed, kind: 'lines' }).map(({ heading }) => heading)).toEqual(['State', 'Next']);
    expect(ownToKeep({ statements: [{ text: ' a ' }, { text: ' ' }], monitoring: [{ text: 'b' }] })).toEqual({
      statements: ['a'],
      monitoring: ['b'],
    });
  });

  test('[NOTE-25] a correction begins with the text of the note that it corrects, without its own sentences a second time', () => {
    const note: KeptNote = {
      ...{ title: '', kind: 'full', own: toWrite.own, text: '' },
      sections: kind(['Diagnosis', 'Thirst.\nLittle time to cook.'], ['Written', 'By Ada Example.']).sections,
    };
    const typed = typedNote(toWrite, '', { id: 'n1', note });
    expect(typed).toMatchObject({ kind: 'full', corrects: 'n1', statements: [], goals: [] });
    expect(typed.full).toEqual([
      { heading: 'Assessment', text: '', proposed: 'Well.' },
      { heading: 'Diagnosis', text: 'Thirst.\nLittle time to cook.', proposed: 'Consider: thirst.' },
    ]);
    expect(typed.lines[0]!.text).toBe('Well.');
    expect(readsOtherwise('full', typed.full, toWrite.kinds.full.sections)).toEqual([]);
    expect(sectionsToKeep(typed)).toEqual([{ heading: 'Diagnosis', text: 'Thirst.\nLittle time to cook.' }]);
  });

  test('[NOTE-28] what would read otherwise is named: changed, new, or gone; what reads like it already is not', () => {
    const typed = [
      { heading: 'Assessment', text: 'Well. She sings.', proposed: 'Well.' },
      { heading: 'Diagnosis', text: 'new', proposed: 'old' },
      { heading: 'Cautions', text: 'Mine.', proposed: 'Call.' },
      { heading: 'Notice', text: 'Mine.', proposed: 'As before.' },
    ];
    const now = kind(['Assessment', 'Ill.'], ['Diagnosis', 'new'], ['Who was told', 'Nurse B.'], ['Notice', 'As before.']).sections;
    expect(readsOtherwise('full', typed, now)).toEqual([
      { heading: 'Assessment', now: 'Ill.' },
      { heading: 'Cautions', now: '' },
      { heading: 'Who was told', now: 'Nurse B.' },
    ]);
  });

  test('[NOTE-28] the new text is taken or left, in its own section alone, and is then not offered again', () => {
    const typed = [
      { heading: 'Assessment', text: 'Mine.', proposed: 'Well.' },
      { heading: 'Notice', text: 'N.', proposed: 'N.' },
    ];
    const offer = { heading: 'Assessment', now: 'Ill.' };
    expect(afterOffer('full', typed, offer, true)).toEqual([{ heading: 'Assessment', text: 'Ill.', proposed: 'Ill.' }, typed[1]]);
    const left = afterOffer('full', typed, offer, false);
    expect(left).toEqual([{ heading: 'Assessment', text: 'Mine.', proposed: 'Ill.' }, typed[1]]);
    expect(readsOtherwise('full', left, kind(['Assessment', 'Ill.'], ['Notice', 'N.']).sections)).toEqual([]);
    // A new one stands where the order of the note has it.
    const added = afterOffer('full', typed, { heading: 'Diagnosis', now: 'Thirst.' }, true);
    expect(added.map(({ heading }) => heading)).toEqual(['Assessment', 'Diagnosis', 'Notice']);
  });

  test('[NOTE-25] a kept note is called by day, time, kind and writer', () => {
    const note = { id: 'n', kind: 'interval', on: '2026-06-15', writtenAt: '2026-06-15T14:02:00.000Z', isCorrected: false } as const;
    expect(noteLine(note)).toBe('2026-06-15, 14:02 UTC, interval note');
    expect(noteLine({ ...note, by: 'A. B.', corrects: 'm', isCorrected: true })).toBe(
      '2026-06-15, 14:02 UTC, interval note, by A. B., corrects an earlier one, corrected by a later one',
    );
  });
});
