import { type ClientFacts, type Lab, labWords } from '#core/client/assessment/clientFacts.ts';
import type { Proposal } from '#core/client/prescription/proposePrescription.ts';
import type { Target, TargetItem } from '#core/client/prescription/target.ts';
import { eatenADay } from '#core/client/states/eaten.ts';
import { phosphateCauses } from '#core/client/states/phosphateCauses.ts';
import { phosphateState } from '#core/client/states/phosphateState.ts';
import { type Cause, potassiumCauses } from '#core/client/states/potassiumCauses.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { weightLoss } from '#core/client/states/weightLoss.ts';
import type { Interval } from '#core/quantity/interval.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';

/**
 * Problem, cause and signs, each from a number on record and in words of our own: "Protein eaten below need, with poor appetite, as shown
 * by 46 g a day against 66 – 79.2 g." Nothing is stated that no number supports.
 */
export function problemStatements(facts: ClientFacts, proposal: Proposal): readonly string[] {
  if (proposal.kind === 'barred') return [];
  const { appetite } = facts.assessment;
  const loss = weightLoss(facts);
  const statements: string[] = [];
  const withAppetite = appetite === 'poor' || appetite === 'fair' ? `, with ${appetite} appetite` : '';
  for (const [item, eaten, unit] of [
    ['protein', eatenADay(facts, 'proteinG'), 'g'],
    ['energy', eatenADay(facts, 'energyKcal'), 'kcal'],
  ] as const) {
    const target = proposal.targets[item];
    if (eaten === undefined || target.kind !== 'proposed' || eaten.hi >= target.range.lo) continue;
    statements.push(
      `${item === 'protein' ? 'Protein' : 'Energy'} eaten below need${withAppetite}, as shown by ${eatenWords(eaten)} ${unit} a day against at least ${roundHalfUp(target.range.lo, 1)} ${unit}.`,
    );
  }
  if (proposal.wasting.criteria.wasting)
    statements.push(`Protein-energy wasting by the published criteria, as shown by ${proposal.wasting.criteria.shownBy.join(', ')}.`);
  // Bounds of the published criteria for protein-energy wasting (Fouque 2008): 5 % in 3 months, 10 % in 6.
  const lost = [
    { percent: loss.percent3Months ?? 0, months: 3, bound: 5 },
    { percent: loss.percent6Months ?? 0, months: 6, bound: 10 },
  ].filter(({ percent, bound }) => loss.isLost && !loss.isOpen && percent >= bound);
  if (lost.length > 0) {
    const shownBy = lost.map(({ percent, months }) => `${roundHalfUp(percent, 1)}% in ${months} months`).join(' and ');
    statements.push(`Unintended weight loss${withAppetite}, as shown by ${shownBy}.`);
  }
  statements.push(...mineralStatements(facts, proposal.targets));
  return statements;
}

/** "46", "58 to 66": what was told, with supplements and feeds. */
function eatenWords({ lo, hi }: Interval): string {
  const [low, high] = [roundHalfUp(lo, 1), roundHalfUp(hi, 1)];
  return low === high ? `${low}` : `${low} to ${high}`;
}

/** Too much of a mineral: the causes on this client's own record make the statement; without one, only a bound says that food is the cause. */
function mineralStatements(facts: ClientFacts, targets: Readonly<Record<TargetItem, Target>>): readonly string[] {
  const potassium = potassiumState(facts);
  const phosphate = phosphateState(facts);
  const stated = (words: string, lab: Lab, causes: readonly Cause[], target: Target): readonly string[] => {
    const shown = `as shown by ${labWords(lab, facts.today)}.`;
    const known = causes.flatMap(({ asCause }) => asCause ?? []);
    if (known.length > 0) return [`${words}, related to ${known.join('; ')}, ${shown}`];
    // A withheld target has other causes first; only a bound says that the number asks for one.
    return target.kind === 'proposed' && target.limit !== 'at-least' ? [`${words}, with the kidney disease on record, ${shown}`] : [];
  };
  return [
    ...(phosphate.kind === 'persistent'
      ? stated('More phosphorus than is cleared', phosphate.lab, phosphateCauses(facts), targets.phosphorus)
      : []),
    ...(potassium.kind === 'high'
      ? stated('More potassium than is cleared', potassium.lab, potassiumCauses(facts), targets.potassium)
      : []),
  ];
}
