import { type ClientFacts, isOnDialysis } from '#core/client/assessment/clientFacts.ts';
import { isInDate, isWeightInDate, latestLowest } from '#core/client/assessment/factAges.ts';
import { absorbedGlucose, absorbedShareByMethod } from '#core/client/formulas/dialysateGlucose.ts';
import {
  type GroupState,
  proteinEnergyWasting,
  type Wasting,
  type WastingFacts,
  type WastingGroup,
} from '#core/client/formulas/proteinEnergyWasting.ts';
import type { Analyte } from '#core/client/labs/analytes.ts';
import type { Source } from '#core/client/rules/source.ts';
import { commonPractice, ownRule, wastingCriteria } from '#core/client/rules/sources.ts';
import { add, exactly, type Interval, interval } from '#core/quantity/interval.ts';
import { eatenADay, isAddedOpen } from './eaten.ts';
import { bmiOf, weightBasis } from './weightBasis.ts';
import { weightLoss } from './weightLoss.ts';

/** Whether protein, energy, and potassium and phosphorus in food may be restricted at all, and why not. Additives are never protected by it. */
export interface WastingState {
  readonly criteria: Wasting;
  /** The reasons that block a restriction; empty when nothing does. */
  readonly blocks: readonly { readonly why: string; readonly whatToCheck: string; readonly source: Source }[];
}

/**
 * Wasting by the published criteria, or not ruled out: met and open groups together three or more with at least one met, or BMI under 18.5
 * (care rules 3). A fact that is too old leaves its group open, and what it last showed still counts as a sign: nothing gets
 * stricter because a fact grows old. Weight loss and poor appetite block as well (facts 8, common practice).
 */
export function wastingState(facts: ClientFacts): WastingState {
  const ever = wastingFacts(facts, () => true);
  const lastKnown = proteinEnergyWasting(ever);
  const criteria = reopened(proteinEnergyWasting(wastingFacts(facts, isCurrent => isCurrent)), lastKnown);
  const open = Object.entries(criteria.groups).filter(([, state]) => state === 'not known');
  const { bodyMassIndex } = ever;
  const blocks: WastingState['blocks'][number][] = [];
  const stop = (why: string, whatToCheck: string, source: Source) => blocks.push({ why, whatToCheck, source });
  if (criteria.wasting) {
    const why = `Protein-energy wasting: ${criteria.met} of 4 groups are met (${criteria.shownBy.join(', ')}). No food is restricted until that is corrected.`;
    stop(why, 'Raise intake first; review when it is corrected.', wastingCriteria);
  } else if (criteria.met + open.length >= 3 && Math.max(criteria.met, lastKnown.met) > 0) {
    const told =
      criteria.met === 0
        ? ` (${lastKnown.shownBy.join(', ')}: too old to count, and no newer figure says otherwise)`
        : ` (${criteria.shownBy.join(', ')})`;
    const why = `Wasting is not ruled out: ${criteria.met} of 4 groups met${told}, ${open.length} open.`;
    stop(why, `To settle it: ${open.map(([group]) => neededFor[group as keyof typeof neededFor](facts)).join('; ')}.`, wastingCriteria);
  } else if (bodyMassIndex !== undefined && bodyMassIndex < 18.5) {
    stop(`Wasting is not ruled out: BMI ${bodyMassIndex.toFixed(1)} is under 18.5.`, 'Dietitian review of intake and muscle.', ownRule);
  }
  const { isLost, isOpen } = weightLoss(facts);
  if (isLost || facts.assessment.appetite === 'poor') {
    stop(
      `${isLost ? 'Weight loss' : 'Poor appetite'}: do not restrict further.`,
      isOpen ? 'Ask whether the loss was wanted, or fluid.' : 'Dietitian review of intake; loosen limits first.',
      commonPractice,
    );
  }
  return { criteria, blocks };
}

/** A group that a fact met which is too old now is open again, whatever its other facts say. */
function reopened(current: Wasting, lastKnown: Wasting): Wasting {
  const groups = Object.entries(current.groups).map(([group, state]): [string, GroupState] => [
    group,
    state === 'not met' && lastKnown.groups[group as WastingGroup] === 'met' ? 'not known' : state,
  ]);
  return { ...current, groups: Object.fromEntries(groups) as Wasting['groups'] };
}

const neededFor = {
  blood: (facts: ClientFacts) => `albumin${isOnDialysis(facts) ? ' or prealbumin' : ''} in date`,
  'body mass': () => 'weight and height, and whether a loss of weight was wanted or fluid',
  muscle: () => 'loss of muscle in 3 or 6 months',
  intake: (facts: ClientFacts) =>
    isAddedOpen(facts) ? 'whether the energy and protein that were told have the supplements in them' : 'a day’s protein and energy eaten',
} as const;

/** `counts` says of each fact whether it is used, given whether it is in date. */
function wastingFacts(facts: ClientFacts, counts: (isCurrent: boolean) => boolean): WastingFacts {
  const { assessment } = facts;
  const isTold = counts(isInDate(facts, 'intake', assessment.on));
  const lowest = (analyte: Analyte): number | undefined => {
    const lab = latestLowest(facts, analyte);
    if (lab !== undefined || !counts(false)) return lab?.value;
    const [newest, ...earlier] = facts.labs.filter(one => one.analyte === analyte);
    return newest && Math.min(newest.value, ...earlier.filter(({ takenOn }) => takenOn === newest.takenOn).map(({ value }) => value));
  };
  const loss = weightLoss(facts);
  const basis = weightBasis(facts);
  const kg = basis.kind === 'chosen' ? basis.chosen.kg : counts(false) ? facts.weights[0]?.kg : undefined;
  /** Per kg; of a range the end that decides on which side of the bound it lies, and none where it lies on both. */
  const decided = (perDay: Interval | undefined, bound: number): number | undefined => {
    if (perDay === undefined || kg === undefined || !isTold) return undefined;
    const [lo, hi] = [perDay.lo / kg, perDay.hi / kg];
    return lo >= bound ? lo : hi < bound ? hi : undefined;
  };
  const unwanted = loss.isLost || assessment.weightLoss?.cause === undefined || assessment.weightLoss.cause === 'unintended';
  return {
    onDialysis: isOnDialysis(facts),
    ...given('albuminGPerDl', lowest('albumin')),
    ...given('prealbuminMgPerDl', lowest('prealbumin')),
    ...given('cholesterolMgPerDl', lowest('cholesterol')),
    ...given('bodyMassIndex', bmiOf(facts) ?? (counts(false) ? lastBmi(facts) : undefined)),
    ...(loss.isOpen ? { lossIsOpen: true } : {}),
    ...given('lossPercent3Months', unwanted && counts(!loss.isOld) ? loss.percent3Months : undefined),
    ...given('lossPercent6Months', unwanted && counts(!loss.isOld) ? loss.percent6Months : undefined),
    ...given('muscleLossPercent3Months', isTold ? assessment.muscleLoss?.percent3Months : undefined),
    ...given('muscleLossPercent6Months', isTold ? assessment.muscleLoss?.percent6Months : undefined),
    ...given('proteinGPerKg', decided(eatenADay(facts, 'proteinG'), enoughProteinGPerKg(facts))),
    ...given('energyKcalPerKg', decided(energyIn(facts), enoughKcalPerKg)),
  };
}

/** The bounds of the criteria for what is eaten. */
const enoughKcalPerKg = 25;
const enoughProteinGPerKg = (facts: ClientFacts): number => (isOnDialysis(facts) ? 0.8 : 0.6);

/** All energy of a day with that of the dialysate (care rules 3); where the bags are not known it is what is eaten or more. */
function energyIn(facts: ClientFacts): Interval | undefined {
  const { treatment } = facts.assessment;
  const eaten = eatenADay(facts, 'energyKcal');
  if (eaten === undefined || treatment.setting !== 'peritoneal-dialysis') return eaten;
  if (treatment.bags === undefined) return interval(eaten.lo, Number.POSITIVE_INFINITY);
  const glucose = absorbedGlucose(treatment.bags, treatment.absorbedShare ?? absorbedShareByMethod[treatment.method]);
  return glucose.kind === 'computed' ? add(eaten, exactly(glucose.value.energyKcal)) : undefined;
}

/** The BMI of weights that are too old to count. */
function lastBmi(facts: ClientFacts): number | undefined {
  const aged = facts.weights.find(weight => !isWeightInDate(facts, weight) && weight.kind !== 'before-dialysis');
  return aged === undefined || facts.heightCm === undefined ? undefined : aged.kg / (facts.heightCm / 100) ** 2;
}

function given<Key extends string>(key: Key, value: number | undefined): { [K in Key]?: number } {
  return (value === undefined ? {} : { [key]: value }) as { [K in Key]?: number };
}
