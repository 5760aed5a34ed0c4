import { wastingCriteria } from '#core/client/rules/sources.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import type { FormulaFacts } from './computed.ts';

export const proteinEnergyWastingFacts: FormulaFacts = {
  title: 'Protein-energy wasting',
  unit: 'groups met of 4',
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
  /** Nobody said whether the loss was wanted, or fluid: it is open and not met. */
  readonly lossIsOpen?: true;
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
  /** The tests that are met, with their figures: "albumin 3.4 g/dL". */
  readonly shownBy: readonly string[];
  /** 3 of 4 groups, as published. */
  readonly wasting: boolean;
}

/**
 * The ISRNM criteria (Fouque 2008): at least 3 of 4 groups, one test each. Albumin under 3.8 g/dL, prealbumin under 30 mg/dL (dialysis),
 * cholesterol under 100 mg/dL; BMI under 23, loss 5 % in 3 or 10 % in 6 months, fat under 10 %; muscle loss 5 % in 3 or 10 % in 6 months,
 * arm muscle area down over 10 %; protein under 0.8 (dialysis) or 0.6 g/kg, energy under 25 kcal/kg. A group with one low test is met; one
 * whose facts are missing is open ("not known"), not passed: blood without albumin, body mass without BMI, muscle without any loss figure,
 * intake without protein or without energy (care rules 3, own reading of which facts). Albumin 3.4, BMI 21, energy 22 kcal/kg: 3 groups, wasting.
 */
export function proteinEnergyWasting(facts: WastingFacts): Wasting {
  const loss = (percent: number | undefined, bound: number): Outcome => {
    const isOver = atLeast(percent, bound);
    return isOver && facts.lossIsOpen ? undefined : isOver;
  };
  const losses = [loss(facts.lossPercent3Months, 5), loss(facts.lossPercent6Months, 10)];
  const muscle = [
    atLeast(facts.muscleLossPercent3Months, 5),
    atLeast(facts.muscleLossPercent6Months, 10),
    over(facts.armMuscleAreaDownPercent, 10),
  ];
  const groups: Record<WastingGroup, GroupState> = {
    blood: join(
      [under(facts.albuminGPerDl, 3.8)],
      [under(facts.cholesterolMgPerDl, 100), facts.onDialysis ? under(facts.prealbuminMgPerDl, 30) : undefined],
    ),
    'body mass': join(
      [under(facts.bodyMassIndex, 23), ...(facts.lossIsOpen ? [undefined] : [])],
      [...losses, under(facts.bodyFatPercent, 10)],
    ),
    muscle: join(muscle.some(test => test !== undefined) ? [] : [undefined], muscle),
    intake: join([under(facts.proteinGPerKg, facts.onDialysis ? 0.8 : 0.6), under(facts.energyKcalPerKg, 25)], []),
  };
  const met = Object.values(groups).filter(state => state === 'met').length;
  return { groups, met, shownBy: shownBy(facts), wasting: met >= 3 };
}

function shownBy(facts: WastingFacts): readonly string[] {
  const tests: readonly (readonly [words: string, value: number | undefined, unit: string, isMet: Outcome])[] = [
    ['albumin', facts.albuminGPerDl, ' g/dL', under(facts.albuminGPerDl, 3.8)],
    ['prealbumin', facts.prealbuminMgPerDl, ' mg/dL', facts.onDialysis && under(facts.prealbuminMgPerDl, 30)],
    ['cholesterol', facts.cholesterolMgPerDl, ' mg/dL', under(facts.cholesterolMgPerDl, 100)],
    ['BMI', facts.bodyMassIndex, ' kg/m²', under(facts.bodyMassIndex, 23)],
    ['weight lost in 3 months', facts.lossPercent3Months, '%', !facts.lossIsOpen && atLeast(facts.lossPercent3Months, 5)],
    ['weight lost in 6 months', facts.lossPercent6Months, '%', !facts.lossIsOpen && atLeast(facts.lossPercent6Months, 10)],
    ['body fat', facts.bodyFatPercent, '%', under(facts.bodyFatPercent, 10)],
    ['muscle lost in 3 months', facts.muscleLossPercent3Months, '%', atLeast(facts.muscleLossPercent3Months, 5)],
    ['muscle lost in 6 months', facts.muscleLossPercent6Months, '%', atLeast(facts.muscleLossPercent6Months, 10)],
    ['arm muscle area under the median by', facts.armMuscleAreaDownPercent, '%', over(facts.armMuscleAreaDownPercent, 10)],
    ['protein eaten', facts.proteinGPerKg, ' g/kg a day', under(facts.proteinGPerKg, facts.onDialysis ? 0.8 : 0.6)],
    ['energy eaten', facts.energyKcalPerKg, ' kcal/kg a day', under(facts.energyKcalPerKg, 25)],
  ];
  return tests.flatMap(([words, value, unit, isMet]) => (isMet && value !== undefined ? [`${words} ${roundHalfUp(value, 1)}${unit}`] : []));
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

/** Met by one test of either list; open while a needed test is not known. */
function join(needed: readonly Outcome[], further: readonly Outcome[]): GroupState {
  if (needed.includes(true) || further.includes(true)) return 'met';
  return needed.includes(undefined) ? 'not known' : 'not met';
}
