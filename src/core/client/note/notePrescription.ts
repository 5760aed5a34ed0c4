import type { Proposal } from '#core/client/prescription/proposePrescription.ts';
import { type Target, targetItems } from '#core/client/prescription/target.ts';
import { decidedWords, householdWords, rangeWords, targetNames } from '#core/client/prescription/targetWords.ts';
import type { ClientRecord, Prescription } from '#core/client/record/record.ts';
import { chartSources, chartWords } from '#core/client/rules/source.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { isolated, type NoteSection } from './noteSection.ts';

/** The day of the assessment that a prescription was signed for; "an assessment that is not on record" where it is gone. */
export function assessedOn({ assessments }: ClientRecord, prescription: Prescription | undefined): string | undefined {
  if (prescription === undefined) return undefined;
  const on = assessments.find(({ id }) => id === prescription.assessmentId)?.assessment.on;
  return on === undefined ? 'an assessment that is not on record' : `the assessment of ${on}`;
}

/** `earlier` says for which earlier assessment the prescription was signed, where it was not the newest. */
export function interventionSection(prescription: Prescription | undefined, proposal: Proposal, earlier?: string): NoteSection {
  const heading = 'Intervention: nutrition prescription';
  if (prescription === undefined) {
    if (proposal.kind === 'barred')
      return { heading, paragraphs: ['Nothing is proposed:', ...proposal.issues.map(({ told }) => chartWords(told))] };
    return {
      heading,
      paragraphs: ['Proposed, not signed.'],
      rows: [['Target', 'A day', 'Why'], ...targetItems.map(item => proposedRow(proposal.targets[item]))],
    };
  }
  const { by, credentials, at } = prescription.signed;
  return {
    heading,
    paragraphs: [
      `Signed by ${isolated(by)}${credentials === '' ? '' : `, ${isolated(credentials)}`}, ${at.slice(0, 10)}.`,
      ...(earlier === undefined ? [] : [`It was signed for ${earlier}, not for the newest one: look whether it still holds.`]),
    ],
    rows: [
      ['Target', 'A day', 'Basis and reason'],
      ...prescription.targets.map(({ from, reason, says, ...target }) => [
        targetNames[target.item],
        aDay(decidedWords(target), target),
        `${from === 'proposal' ? 'As proposed' : from === 'alternative' ? 'Another guideline chosen' : 'Own figure'}: ${chartWords(says)}${reason === undefined ? '' : ` Reason: ${isolated(reason)}`}`,
      ]),
    ],
  };
}

/** A signed prescription says what was chosen; here stands what other guidelines say of the same assessment. */
export function disagreement(prescription: Prescription | undefined, proposal: Proposal): NoteSection[] {
  if (prescription === undefined || proposal.kind === 'barred') return [];
  const paragraphs = targetItems.flatMap(item =>
    proposal.targets[item].alternatives.map(({ says, sources }) => `${targetNames[item]}: ${chartWords(says)}${chartSources(sources)}.`),
  );
  return paragraphs.length === 0 ? [] : [{ heading: 'Where guidelines disagree', paragraphs }];
}

function proposedRow(target: Target): readonly string[] {
  const sources = chartSources(target.sources);
  const elsewhere = target.alternatives.map(({ says, sources: from }) => ` Elsewhere: ${chartWords(says)}${chartSources(from)}.`).join('');
  switch (target.kind) {
    case 'proposed':
      return [
        targetNames[target.item],
        aDay(
          rangeWords(target.unit, target.range, target.limit) + (target.item === 'fluid' ? householdWords(target.range, target.limit) : ''),
          target,
        ),
        `${chartWords(target.says)}${basisOf(target)}${sources}.${elsewhere}`,
      ];
    case 'no-limit':
      return [targetNames[target.item], 'no limit proposed', `${chartWords(target.reasons.join(' '))}${sources}${elsewhere}`];
    case 'withheld':
      return [
        targetNames[target.item],
        'withheld, no figure until checked',
        `${chartWords(`${target.why} To check: ${target.whatToCheck.map(one => one.replace(/\.$/u, '')).join('; ')}`)}${sources}.${elsewhere}`,
      ];
  }
}

/** Amounts are for a day; what is named on a label is no amount. */
function aDay(figure: string, { unit, range }: { readonly unit: string; readonly range?: Interval }): string {
  return range === undefined || unit === 'named on the label' ? figure : `${figure} a day`;
}

/** The weight that a figure per kg was set on. */
function basisOf({ perKg, weightBasis }: Extract<Target, { kind: 'proposed' }>): string {
  return perKg === undefined || weightBasis === undefined ? '' : `, on the ${weightBasis.replaceAll('-', ' ')} weight`;
}
