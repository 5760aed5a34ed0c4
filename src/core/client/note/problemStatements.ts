import { roundHalfUp } from '#core/quantity/rounding.ts';
import { type ClientFacts, labWords, latest } from '../clientFacts.ts';
import type { Proposal } from '../proposePrescription.ts';

/**
 * Problem, cause and signs, each from a number on record and in words of our own: "Protein eaten below need, with poor appetite, as shown
 * by 46 g a day against 66 – 79.2 g." Nothing is stated that no number supports.
 */
export function problemStatements(facts: ClientFacts, proposal: Proposal): readonly string[] {
  if (proposal.kind === 'barred') return [];
  const { assessment, today } = facts;
  const { intake, appetite, weightLoss } = assessment;
  const statements: string[] = [];
  const withAppetite = appetite === 'poor' || appetite === 'fair' ? `, with ${appetite} appetite` : '';
  for (const [item, eaten, unit] of [
    ['protein', intake?.proteinG, 'g'],
    ['energy', intake?.energyKcal, 'kcal'],
  ] as const) {
    const target = proposal.targets[item];
    if (eaten === undefined || target.kind !== 'proposed' || eaten >= target.range.lo) continue;
    statements.push(
      `${item === 'protein' ? 'Protein' : 'Energy'} eaten below need${withAppetite}, as shown by ${eaten} ${unit} a day against at least ${roundHalfUp(target.range.lo, 1)} ${unit}.`,
    );
  }
  if (proposal.wasting.criteria.wasting)
    statements.push('Protein-energy wasting by the published criteria, as shown by the numbers above.');
  // Bounds of the published criteria for protein-energy wasting (Fouque 2008): 5 % in 3 months, 10 % in 6.
  const lost = [
    { percent: weightLoss?.percent3Months ?? 0, months: 3, bound: 5 },
    { percent: weightLoss?.percent6Months ?? 0, months: 6, bound: 10 },
  ].filter(({ percent, bound }) => percent >= bound);
  if (lost.length > 0) {
    const shownBy = lost.map(({ percent, months }) => `${percent}% in ${months} months`).join(' and ');
    statements.push(`Unintended weight loss${withAppetite}, as shown by ${shownBy}.`);
  }
  for (const [item, analyte, words] of [
    ['phosphorus', 'phosphate', 'More phosphorus than is cleared'],
    ['potassium', 'potassium', 'More potassium than is cleared'],
  ] as const) {
    const target = proposal.targets[item];
    const lab = latest(facts, analyte);
    // A withheld target has other causes first; only a bound says that the number asks for one.
    if (target.kind === 'proposed' && target.limit !== 'at-least' && lab !== undefined) {
      statements.push(`${words}, with the kidney disease on record, as shown by ${labWords(lab, today)}.`);
    }
  }
  return statements;
}
