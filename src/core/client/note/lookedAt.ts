import { type ClientFacts, labWords } from '#core/client/assessment/clientFacts.ts';
import type { Proposal } from '#core/client/prescription/proposePrescription.ts';
import { phosphateState } from '#core/client/states/phosphateState.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { weightLoss } from '#core/client/states/weightLoss.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';

/**
 * What was looked at and stands below the line of a problem, each with its number and the line. It is told as such, never as a finding: "weight
 * lost in 3 months 4.9%, under the line of 5%". What is not known is not in it.
 */
export function lookedAt(facts: ClientFacts, proposal: Proposal): readonly string[] {
  if (proposal.kind === 'barred') return [];
  return [...intakeEnough(facts, proposal), ...weightKept(facts), ...wastingNotMet(proposal), ...mineralsUnderLine(facts)];
}

function intakeEnough({ assessment: { intake } }: ClientFacts, { targets }: Extract<Proposal, { kind: 'proposal' }>): readonly string[] {
  return (['protein', 'energy'] as const).flatMap(item => {
    const eaten = item === 'protein' ? intake?.proteinG : intake?.energyKcal;
    const target = targets[item];
    if (eaten === undefined || target.kind !== 'proposed' || eaten < target.range.lo) return [];
    return [`${item} eaten ${eaten} ${target.unit} a day, not under ${roundHalfUp(target.range.lo, 1)} ${target.unit}`];
  });
}

function weightKept(facts: ClientFacts): readonly string[] {
  const { percent3Months, percent6Months } = weightLoss(facts);
  return [
    { percent: percent3Months, months: 3, line: 5 },
    { percent: percent6Months, months: 6, line: 10 },
  ].flatMap(({ percent, months, line }) => {
    if (percent === undefined || percent >= line) return [];
    if (percent <= 0) return [`no weight lost in ${months} months`];
    return [`weight lost in ${months} months ${roundHalfUp(percent, 1)}%, under the line of ${line}%`];
  });
}

/** Only where the groups that are not known could not make it three. */
function wastingNotMet({ wasting: { criteria } }: Extract<Proposal, { kind: 'proposal' }>): readonly string[] {
  const open = Object.values(criteria.groups).filter(state => state === 'not known').length;
  if (criteria.met + open >= 3) return [];
  return [
    `protein-energy wasting, ${criteria.met} of 4 groups of the published criteria met${open === 0 ? '' : `, ${open} not known`}, under the line of 3`,
  ];
}

function mineralsUnderLine(facts: ClientFacts): readonly string[] {
  const potassium = potassiumState(facts);
  const phosphate = phosphateState(facts);
  const told: string[] = [];
  if (potassium.kind === 'in-range') told.push(`${labWords(potassium.lab, facts.today)}, not above ${potassium.upper} mmol/L`);
  if (potassium.kind === 'once-above')
    told.push(`${labWords(potassium.lab, facts.today)}, above ${potassium.upper} mmol/L once, where twice running is a finding`);
  if (phosphate.kind === 'in-range' || phosphate.kind === 'above-normal')
    told.push(`${labWords(phosphate.lab, facts.today)}, not above the line`);
  if (phosphate.kind === 'once-above')
    told.push(`${labWords(phosphate.lab, facts.today)}, above the line once, where twice running is a finding`);
  return told;
}
