import { type ClientFacts, has, labWords, takes } from '#core/client/assessment/clientFacts.ts';
import { latest, latestLowest, resultsInDate } from '#core/client/assessment/factAges.ts';
import { reasonsToAsk } from '#core/client/prescription/targets/fluidTarget.ts';
import { asQuoted, commonPractice, kdoqi2020, ownRule } from '#core/client/rules/sources.ts';
import { calciumAbove } from '#core/client/states/calciumAbove.ts';
import { potassiumState } from '#core/client/states/potassiumState.ts';
import { refeedingSigns } from '#core/client/states/refeeding.ts';
import { stageFacts } from '#core/client/states/stage.ts';
import { wastingState } from '#core/client/states/wastingState.ts';
import { dryWeightAway, gainOverLine } from '#core/client/states/weightGain.ts';
import { weightLoss } from '#core/client/states/weightLoss.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';
import type { CautionRule } from './caution.ts';
import { own } from './cautionRule.ts';
import { potassiumBeforeHemodialysis } from './contactValues.ts';

/** From this client's own values or record; lines of facts section 8, in its order. */
export const recordRules: readonly CautionRule[] = [
  own(
    'salt-substitute-on-record',
    'First of all: a salt substitute or potassium salt is on record, and potassium is above range. Ask the kidney team before any more of it.',
    commonPractice,
    facts => {
      const state = potassiumState(facts);
      const found = [
        ...(facts.assessment.supplements.includes('salt-substitute') ? ['salt substitute'] : []),
        ...(takes(facts, 'potassium-salt') ? ['potassium salt'] : []),
      ];
      if (found.length === 0) return undefined;
      const [newest] = resultsInDate(facts, 'potassium');
      const isAbove = state.kind === 'high' || state.kind === 'once-above';
      // Marked or contradicting results set nothing; the substitute is told by the highest of the newest day all the same.
      const marked = state.kind === 'unknown' && newest !== undefined && newest.value > (newest.upperNormal ?? 5) ? newest : undefined;
      const lab = isAbove ? state.lab : marked;
      return lab && `${found.join(', ')}; ${labWords(lab, facts.today)}`;
    },
  ),
  potassiumBeforeHemodialysis,
  own(
    'stage-in-question',
    'Until it is answered the milder stage restricts, the lower one cautions.',
    ownRule,
    facts => stageFacts(facts).question,
  ),
  own('dry-weight-again', 'Ask the team for the dry weight again.', ownRule, dryWeightAway),
  own('weight-loss-in-question', 'Was the loss wanted, or fluid? Until it is answered nothing is restricted by it.', ownRule, facts => {
    const { isOpen, percent3Months, percent6Months } = weightLoss(facts);
    return isOpen ? `recorded weights: ${Math.max(percent3Months ?? 0, percent6Months ?? 0).toFixed(1)} % lost` : undefined;
  }),
  own(
    'calcium-above',
    'Calcium is above the limit: calcium in targets, binders and supplements is for the prescriber to look at.',
    ownRule,
    calciumAbove,
  ),
  own(
    'bicarbonate-22',
    'Bicarbonate is under 22: tell the kidney team; acid load and, where they agree, alkali.',
    asQuoted(kdoqi2020('OPINION')),
    facts => {
      const lab = latestLowest(facts, 'bicarbonate');
      return lab !== undefined && lab.value < 22 ? labWords(lab, facts.today) : undefined;
    },
  ),
  own('hba1c-10', 'HbA1c is over 10: tell the diabetes team.', ownRule, facts => {
    const lab = latest(facts, 'hba1c');
    return lab !== undefined && lab.value > 10 ? labWords(lab, facts.today) : undefined;
  }),
  own(
    'fluid-ask-first',
    'Ask the kidney team before a fluid figure is signed.',
    commonPractice,
    facts => reasonsToAsk(facts).join('. ') || undefined,
  ),
  own('salt-and-low-pressure', 'May need more salt: ask the kidney team before sodium is limited.', commonPractice, facts =>
    has(facts, 'hypotension') ? 'low blood pressure' : has(facts, 'ileostomy') ? 'ileostomy' : undefined,
  ),
  own(
    'refeeding',
    'Refeeding risk: a slow start, bloods and thiamine by the medical team.',
    asQuoted({ kind: 'guideline', text: 'NICE CG32, in PMC8672300 Table 2' }),
    facts => refeedingSigns(facts).join(', ') || undefined,
  ),
  own(
    'do-not-restrict',
    'Do not restrict further: loosen potassium, phosphorus and protein limits, dietitian review.',
    commonPractice,
    facts => [...wastingState(facts).blocks.map(({ why }) => why), ...fallingAlbumin(facts)].join(' ') || undefined,
  ),
  own(
    'gain-over-line',
    'The newest gain between treatments was over the line: tell the team, look at salt and fluid.',
    commonPractice,
    gainOverLine,
  ),
];

/** Albumin lower by 0.3 g/dL or more (own decision): a sign, never a reason to restrict. */
function fallingAlbumin(facts: ClientFacts): readonly string[] {
  const now = latestLowest(facts, 'albumin');
  const before =
    now && facts.labs.find(lab => lab.analyte === 'albumin' && lab.takenOn < now.takenOn && daysBetween(lab.takenOn, facts.today) <= 183);
  return now !== undefined && before !== undefined && before.value - now.value >= 0.3 - 1e-9
    ? [`Albumin fell from ${before.value} to ${now.value} g/dL.`]
    : [];
}
