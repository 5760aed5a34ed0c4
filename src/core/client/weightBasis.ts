import type { Day } from './calendarDay.ts';
import { type ClientFacts, has, isOnDialysis, latestWeightKg } from './clientFacts.ts';
import { adjustedEdemaFreeWeightKg } from './formulas/adjustedEdemaFreeWeight.ts';
import { adjustedWeightKg } from './formulas/adjustedWeight.ts';
import { weightKgBeforeAmputation } from './formulas/amputation.ts';
import { bodyMassIndex } from './formulas/bodyMassIndex.ts';
import { idealWeightKgHamwi } from './formulas/idealWeight.ts';
import type { Source } from './source.ts';
import { asQuoted, commonPractice, fromMemory, kdoqi2000, kdoqi2020 } from './sources.ts';

export type WeightBasisId = 'actual' | 'dry' | 'estimated-dry' | 'usual' | 'adjusted' | 'adjusted-edema-free' | 'ideal' | 'goal';

export interface WeightChoice {
  readonly id: WeightBasisId;
  readonly kg: number;
  /** When the weight under it was taken. */
  readonly on: Day;
  readonly why: string;
  readonly sources: readonly Source[];
}

/** The weight that targets per kg are set on, and what else could be chosen. */
export type WeightBasis =
  | {
      readonly kind: 'chosen';
      readonly chosen: WeightChoice;
      readonly others: readonly WeightChoice[];
      /** True where water hides the weight: screens say "uncertain". */
      readonly uncertain: boolean;
      /** True until the dietitian has picked where no source names one best weight (BMI over 30). */
      readonly needsChoice: boolean;
      readonly bmi?: number;
    }
  | { readonly kind: 'none'; readonly whatToCheck: string };

/**
 * The weight basis by facts section 2: dry weight on dialysis, estimated dry weight with edema, usual weight in hospital, for BMI over 30
 * the adjusted weights as a choice (KDOQI 2020 names no single best weight), else the actual weight. `pick` is the dietitian's choice.
 */
export function weightBasis(facts: ClientFacts, pick?: WeightBasisId): WeightBasis {
  const base = baseWeight(facts);
  if (typeof base === 'string') return { kind: 'none', whatToCheck: base };
  const bmi = bmiOf(facts);
  const others: WeightChoice[] = [];
  const add = (id: WeightBasisId, kg: number | undefined, why: string, sources: readonly Source[]) => {
    if (kg !== undefined) others.push({ id, kg, on: base.on, why, sources });
  };
  const ideal = facts.heightCm === undefined ? undefined : valueOrNone(idealWeightKgHamwi(facts.assessment.sex, facts.heightCm));
  const standard = latestWeightKg(facts, 'standard')?.kg;
  if (bmi !== undefined && bmi > 30) {
    const why = `BMI ${bmi.toFixed(1)} is over 30: no single best weight is named, so this is the dietitian’s choice.`;
    add('adjusted', ideal && valueOrNone(adjustedWeightKg(base.kg, ideal)), why, [fromMemory(kdoqi2020('OPINION')), commonPractice]);
    add('adjusted-edema-free', standard && valueOrNone(adjustedEdemaFreeWeightKg(base.kg, standard)), why, [kdoqi2000('OPINION')]);
  }
  const goal = bmi !== undefined && bmi < 18.5 ? latestWeightKg(facts, 'goal')?.kg : undefined;
  add('goal', goal, 'Underweight: the actual weight to start with, the goal weight to build up.', [commonPractice]);
  add('ideal', ideal, 'A low-protein diet is told per kg of ideal weight by some.', [
    asQuoted({ kind: 'paper', text: 'Molina 2021' }),
    commonPractice,
  ]);
  const all = [base, ...others];
  const chosen = all.find(({ id }) => id === pick) ?? others.find(({ id }) => id === 'adjusted') ?? base;
  return {
    kind: 'chosen',
    chosen,
    others: all.filter(choice => choice !== chosen),
    needsChoice: bmi !== undefined && bmi > 30 && chosen.id !== pick,
    uncertain: has(facts, 'edema', 'ascites', 'nephrotic-syndrome', 'overload'),
    ...(bmi === undefined ? {} : { bmi }),
  };
}

/** BMI in kg/m² of the weight without the water between sessions, with missing parts counted in; undefined without weight or height. */
export function bmiOf(facts: ClientFacts): number | undefined {
  const base = baseWeight(facts);
  const weighed = typeof base === 'string' ? latestWeightKg(facts, 'actual') : base;
  if (weighed === undefined || facts.heightCm === undefined) return undefined;
  const whole = weightKgBeforeAmputation(weighed.kg, facts.assessment.missingParts ?? []);
  return whole.kind === 'refused' ? undefined : valueOrNone(bodyMassIndex(whole.value, facts.heightCm));
}

/** The weight before any choice, or what is missing. */
function baseWeight(facts: ClientFacts): WeightChoice | string {
  const from = (id: WeightBasisId, why: string, sources: readonly Source[], ...kinds: Parameters<typeof latestWeightKg>[1][]) => {
    const found = latestWeightKg(facts, ...kinds);
    return found && { id, kg: found.kg, on: found.on, why, sources };
  };
  if (has(facts, 'in-hospital')) {
    return (
      from('usual', 'In hospital: the usual or earlier weight, not the one with extra fluid.', [espen], 'usual', 'before-admission') ??
      'Enter the usual weight, or the one from before admission.'
    );
  }
  if (isOnDialysis(facts)) {
    return (
      from('dry', 'On dialysis: dry weight, set by the renal team.', [commonPractice], 'dry') ??
      from(
        'dry',
        'On dialysis: weight after the session or after draining, for want of a dry weight.',
        [commonPractice],
        'after-dialysis',
        'after-drain',
      ) ??
      'Enter the dry weight, or a weight after dialysis or after draining.'
    );
  }
  if (has(facts, 'edema', 'ascites', 'nephrotic-syndrome', 'overload')) {
    return (
      from('estimated-dry', 'Edema: an estimated dry weight, uncertain.', [commonPractice], 'estimated-dry', 'dry') ??
      'There is edema: enter an estimated dry weight.'
    );
  }
  return from('actual', 'No edema: the actual weight.', [commonPractice], 'actual') ?? 'Enter a weight.';
}

const espen = asQuoted({ kind: 'guideline', text: 'ESPEN 2021' });

function valueOrNone(result: { kind: 'computed'; value: number } | { kind: 'refused' }): number | undefined {
  return result.kind === 'computed' ? result.value : undefined;
}
