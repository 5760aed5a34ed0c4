import { wastingCriteria } from '#core/client/sources.ts';
import type { FormulaFacts } from './computed.ts';

export const proteinEnergyWastingFacts: FormulaFacts = {
  title: 'Protein-energy wasting',
  unit: 'groups met of 4',
  decimals: 0,
  sources: [wastingCriteria],
  cautions: [
    'Met by at least 3 of 4 groups, one test each. Some authors used 2 of 4 (PMC3848406, Table 2).',
    'Albumin falls with inflammation and fluid.',
  ],
};

/** What the four groups look at; whatever is not known is left out and never counts as normal or as met. */
export interface WastingFacts {
  /** On dialysis: prealbumin counts, and low protein intake is under 0.8 g/kg instead of 0.6. */
  readonly onDialysis: boolean;
  readonly albuminGPerDl?: number;
  readonly prealbuminMgPerDl?: number;
  readonly cholesterolMgPerDl?: number;
  readonly bodyMassIndex?: number;
  /** Unintended loss of weight, % over 3 and over 6 months. */
  readonly lossPercent3Months?: number;
  readonly lossPercent6Months?: number;
  readonly bodyFatPercent?: number;
  readonly muscleLossPercent3Months?: number;
  readonly muscleLossPercent6Months?: number;
  /** How far arm muscle area is under the median of the reference population, %. */
  readonly armMuscleAreaDownPercent?: number;
  /** Unintended low intake for at least 2 months, per kg a day. */
  readonly proteinGPerKg?: number;
  readonly energyKcalPerKg?: number;
}

export type WastingGroup = 'blood' | 'body mass' | 'muscle' | 'intake';

export type GroupState = 'met' | 'not met' | 'not known';

export interface Wasting {
  readonly groups: Readonly<Record<WastingGroup, GroupState>>;
  readonly met: number;
  /** 3 of 4 groups, as published. */
  readonly wasting: boolean;
  /** Two other groups are met and the blood group is not fully known: missing results could make it wasting. */
  readonly bloodCouldDecide: boolean;
}

/**
 * The ISRNM criteria (Fouque 2008): at least 3 of 4 groups, one test each. Albumin under 3.8 g/dL, prealbumin under 30 mg/dL (dialysis),
 * cholesterol under 100 mg/dL; BMI under 23, loss 5 % in 3 or 10 % in 6 months, fat under 10 %; muscle loss 5 % in 3 or 10 % in 6 months,
 * arm muscle area down over 10 %; protein under 0.8 (dialysis) or 0.6 g/kg, energy under 25 kcal/kg. A group with one low test is met; one
 * without any result is not known. Albumin 3.4, BMI 21, energy 22 kcal/kg: 3 groups, wasting.
 */
export function proteinEnergyWasting(facts: WastingFacts): Wasting {
  const blood = [under(facts.albuminGPerDl, 3.8), under(facts.cholesterolMgPerDl, 100)];
  if (facts.onDialysis) blood.push(under(facts.prealbuminMgPerDl, 30));
  const groups: Record<WastingGroup, GroupState> = {
    blood: join(blood),
    'body mass': join([
      under(facts.bodyMassIndex, 23),
      atLeast(facts.lossPercent3Months, 5),
      atLeast(facts.lossPercent6Months, 10),
      under(facts.bodyFatPercent, 10),
    ]),
    muscle: join([
      atLeast(facts.muscleLossPercent3Months, 5),
      atLeast(facts.muscleLossPercent6Months, 10),
      over(facts.armMuscleAreaDownPercent, 10),
    ]),
    intake: join([under(facts.proteinGPerKg, facts.onDialysis ? 0.8 : 0.6), under(facts.energyKcalPerKg, 25)]),
  };
  const met = Object.values(groups).filter(state => state === 'met').length;
  const bloodOpen = groups.blood !== 'met' && blood.some(test => test === undefined);
  return { groups, met, wasting: met >= 3, bloodCouldDecide: bloodOpen && met === 2 };
}

type Outcome = boolean | undefined;

function under(value: number | undefined, bound: number): Outcome {
  return value === undefined ? undefined : value < bound;
}

function over(value: number | undefined, bound: number): Outcome {
  return value === undefined ? undefined : value > bound;
}

function atLeast(value: number | undefined, bound: number): Outcome {
  return value === undefined ? undefined : value >= bound;
}

function join(tests: readonly Outcome[]): GroupState {
  if (tests.includes(true)) return 'met';
  return tests.includes(false) ? 'not met' : 'not known';
}
