import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { changesFromSigned, missingToSign } from '#core/client/prescription/signPrescription.ts';
import { type Target, targetUnits } from '#core/client/prescription/target.ts';
import { targetLine } from '#core/client/prescription/targetLine.ts';
import { targetNames } from '#core/client/prescription/targetWords.ts';
import type { DecidedTarget, SentTarget } from '#core/client/record/decidedTarget.ts';
import { type ClientRecord, currentAssessment } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import { Fault } from '#core/errors.ts';

interface Draft {
  readonly record: ClientRecord;
  readonly assessmentId: string;
  readonly picked: WeightBasisId | undefined;
  readonly targets: readonly SentTarget[];
  readonly by: string;
  readonly acknowledgedChanges: boolean;
  readonly today: string;
  readonly rules: CareRules;
}

/**
 * The decisions of a draft, held against what is proposed for the assessment and against what was signed before. The faults name
 * targets, never figures.
 * @throws Fault prescription-not-complete, signed-choice-left-out
 */
export function decisionsToSign(draft: Draft): readonly DecidedTarget[] {
  const { record, assessmentId, picked, by, today } = draft;
  const current = currentAssessment(record);
  const kept = current?.id === assessmentId ? current : record.assessments.find(({ id }) => id === assessmentId);
  if (kept === undefined || record.assessments.some(({ corrects }) => corrects === kept.id))
    throw new Fault('prescription-not-complete', 'Still missing: the assessment that it is signed for.');
  const proposal = proposePrescription(kept.assessment, today, picked, draft.rules);
  if (proposal.kind === 'barred')
    throw new Fault('prescription-not-complete', 'Still missing: an answer to what bars every target of this assessment.');
  const { facts } = checkAssessment(kept.assessment, today, draft.rules);
  const decided = draft.targets.map(target => {
    const proposed = proposal.targets[target.item];
    return { ...decidedFrom(target, proposed), line: targetLine(proposed, facts, proposal.weight), proposedThen: figureOf(proposed) };
  });
  const missing = missingToSign(decided, by, proposal.targets);
  if (missing.length > 0) throw new Fault('prescription-not-complete', `Still missing: ${missing.join('; ')}.`);
  const lost = changesFromSigned(record.prescriptions[0]?.targets ?? [], decided);
  if (lost.length > 0 && !draft.acknowledgedChanges)
    throw new Fault(
      'signed-choice-left-out',
      `Signed before as your own decision, now otherwise: ${lost.map(({ item }) => targetNames[item]).join(', ')}.`,
    );
  return decided;
}

function figureOf(target: Target): NonNullable<DecidedTarget['proposedThen']> {
  return target.kind === 'proposed' ? { kind: 'bounded', range: target.range, limit: target.limit } : { kind: target.kind };
}

function decidedFrom({ range, limit, reason, kind, ...rest }: SentTarget, proposed: Target): DecidedTarget {
  const proposedKind = proposed.kind === 'proposed' ? 'bounded' : proposed.kind;
  const withoutRange = rest.from === 'proposal' ? proposedKind : 'no-limit';
  return {
    ...rest,
    says: rest.from === 'proposal' ? wordsOf(proposed, rest.says) : rest.says,
    unit: targetUnits[rest.item],
    kind: kind ?? (range === undefined ? withoutRange : 'bounded'),
    ...(range === undefined ? {} : { range: { lo: range[0], hi: range[1] ?? Number.POSITIVE_INFINITY } }),
    ...(limit === undefined ? {} : { limit }),
    ...(reason === undefined ? {} : { reason }),
  };
}

/** What is signed as proposed keeps the proposal's own words: also why there is no limit, or no figure. */
function wordsOf(proposed: Target, given: string): string {
  switch (proposed.kind) {
    case 'proposed':
      return given;
    case 'no-limit':
      return proposed.reasons.join(' ');
    case 'withheld':
      return proposed.why;
  }
}
