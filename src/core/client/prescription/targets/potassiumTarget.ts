import { type ClientFacts, labWords, takes } from '#core/client/assessment/clientFacts.ts';
import { asQuoted, commonPractice, ebpg2007, fromMemory, ijnrd2016, kdigoCkd2024, kdoqi2020, ownRule } from '#core/client/rules/sources.ts';
import { causeWords, potassiumCauses } from '#core/client/states/potassiumCauses.ts';
import { potassiumState, potassiumStep } from '#core/client/states/potassiumState.ts';
import type { WastingState } from '#core/client/states/wastingState.ts';
import type { WeightBasis } from '#core/client/states/weightBasis.ts';
import { interval } from '#core/quantity/interval.ts';
import { noLimit, position, proposed, type Target, withheld } from '../target.ts';

/** KDOQI gives no mg figure; potassium follows the blood result and never the stage. */
const follow = kdoqi2020('OPINION');

/** A day's potassium in mg. Facts section 3.4: no limit from the stage alone, none before the other causes are checked. */
export function potassiumTarget(facts: ClientFacts, weight: WeightBasis, wasting: WastingState): Target {
  const state = potassiumState(facts);
  if (state.kind === 'unknown') return withheld('potassium', 'no result that counts', state.why, [state.whatToCheck], [ownRule]);
  const told = `${labWords(state.lab, facts.today)}.`;
  if (state.kind === 'low') {
    const words = facts.setting === 'peritoneal-dialysis' ? 'foods with potassium are added' : 'nothing is limited; look for the cause';
    return noLimit('potassium', 'low: nothing is limited', [told, `Low: ${words}.`], [follow, commonPractice]);
  }
  if (state.kind === 'in-range') {
    const rest = inRangeWords(facts, state.lab.value);
    return noLimit('potassium', 'in range', [told, rest], [follow, ijnrd2016]);
  }
  if (state.kind === 'once-above')
    return noLimit(
      'potassium',
      'above range once: repeat first',
      [told, 'Above range once: repeat before anything is limited.'],
      [commonPractice],
    );
  return whenHigh(facts, weight, wasting, state.lab, told);
}

function whenHigh(
  facts: ClientFacts,
  weight: WeightBasis,
  { blocks }: WastingState,
  lab: Parameters<typeof labWords>[0],
  told: string,
): Target {
  const figures = figuresOnRecord(facts, weight, lab.value);
  const hold = (inShort: string, why: string, checks: readonly string[]) =>
    withheld('potassium', inShort, `${told} ${why}`, checks, [follow, commonPractice], figures);
  if (blocks.length > 0)
    return hold('wasting not ruled out', blocks.map(({ why }) => why).join(' '), [
      ...blocks.map(({ whatToCheck }) => whatToCheck),
      ...(potassiumStep(facts, lab) === 'check-causes' ? potassiumCauses(facts).map(causeWords) : []),
    ]);
  switch (potassiumStep(facts, lab)) {
    case 'check-causes':
      return hold('other causes come before food', 'The other causes come before food.', potassiumCauses(facts).map(causeWords));
    case 'cut-additives':
      return hold('additives and portions first', 'First additives, salt substitutes, juices and portions.', [
        'Mark when these were gone through.',
      ]);
    case 'wait-for-result':
      return hold('a later result decides', 'Additives and the like were cut: a later result decides.', [
        'A potassium result from after that day.',
      ]);
    case 'limit':
      break;
  }
  const [main, ...others] = figures;
  const range = main?.range;
  if (main === undefined || range === undefined) {
    const why =
      facts.setting === 'transplant'
        ? 'Calcineurin inhibitors and trimethoprim raise potassium: by results, with the team.'
        : 'Individual: no figure is on record.';
    return withheld(
      'potassium',
      'a figure for the team to set',
      `${told} ${why}`,
      ['A figure set by the dietitian with the team.'],
      [follow],
    );
  }
  const reasons = [
    told,
    'The other causes were checked.',
    ...(takes(facts, 'raas-inhibitor') ? ['A RAAS inhibitor raises potassium: its dose is the prescriber’s.'] : []),
  ];
  return proposed('potassium', 'high, other causes checked', { ...main, range }, reasons, [
    position('KDOQI 2020 and KDIGO 2024: no figure; adjust to keep the blood result normal', [
      follow,
      fromMemory(kdigoCkd2024('practice point')),
    ]),
    ...others,
  ]);
}

/** Figures for a high result by setting, the one to propose first; none for peritoneal dialysis and transplants. */
function figuresOnRecord({ setting }: ClientFacts, weight: WeightBasis, valueMmolPerL: number) {
  if (setting === 'ckd-not-on-dialysis') {
    return [position('Practice: 2000-3000 mg', [asQuoted(commonPractice)], { range: interval(2000, 3000), limit: 'within' })];
  }
  if (setting !== 'hemodialysis') return [];
  const european = position('European 2007: up to 2730 mg (70 mmol)', [asQuoted(ebpg2007())], {
    range: interval(0, 2730),
    limit: 'at-most',
  });
  const strict = position('European 2007, over 6 mmol/L: 50-70 mmol', [fromMemory(ebpg2007())], {
    range: interval(1955, 2737),
    limit: 'within',
  });
  const older = position('Older practice: 2-4 g', [ijnrd2016], { range: interval(2000, 4000), limit: 'within' });
  const perKg =
    weight.kind === 'none'
      ? []
      : [position('Older practice: 40 mg/kg', [ijnrd2016], { range: interval(0, 40 * weight.chosen.kg), limit: 'at-most' })];
  return [european, ...(valueMmolPerL > 6 ? [strict] : []), older, ...perKg];
}

function inRangeWords({ setting }: ClientFacts, mmolPerL: number): string {
  if (setting === 'ckd-not-on-dialysis') return 'In range: no limit; fruit and vegetables are encouraged.';
  if (setting === 'hemodialysis' && mmolPerL < 4)
    return 'Under 4.0 before a session is linked to harm (CJASN 2007;2:999): nothing is limited.';
  return 'In range: no number unless the team sets one.';
}
