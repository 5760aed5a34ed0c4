import type { WeightKind } from '#core/client/assessment/assessment.ts';
import { ageWords, type ClientFacts, has, isOnDialysis, type Weight, weightWords } from '#core/client/assessment/clientFacts.ts';
import { weightInDate } from '#core/client/assessment/factAges.ts';
import { adjustedEdemaFreeWeightKg } from '#core/client/formulas/adjustedEdemaFreeWeight.ts';
import { adjustedWeightKg } from '#core/client/formulas/adjustedWeight.ts';
import { missingPartPercent, weightKgBeforeAmputation } from '#core/client/formulas/amputation.ts';
import { bodyMassIndex } from '#core/client/formulas/bodyMassIndex.ts';
import type { EnteredWeight } from '#core/client/formulas/bodyUnits.ts';
import { idealWeightKgHamwi, isShort } from '#core/client/formulas/idealWeight.ts';
import type { Source } from '#core/client/rules/source.ts';
import { asQuoted, commonPractice, fromMemory, kdoqi2000, kdoqi2020 } from '#core/client/rules/sources.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';

export const weightBasisIds = [
  'actual',
  'dry',
  'after-treatment',
  'estimated-dry',
  'usual',
  'adjusted',
  'adjusted-edema-free',
  'ideal',
  'goal',
] as const;

export type WeightBasisId = (typeof weightBasisIds)[number];

export interface WeightChoice {
  readonly id: WeightBasisId;
  readonly kg: number;
  /** The weight as typed, where it is one and no formula's. */
  readonly entered?: EnteredWeight;
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
      /** True until the dietitian has picked where no source names one best weight (BMI over 29). */
      readonly needsChoice: boolean;
      readonly bmi?: number;
    }
  | { readonly kind: 'none'; readonly whatToCheck: string };

/**
 * The weight basis by facts section 2: dry weight on dialysis, estimated dry weight with edema, usual weight in hospital, for BMI over 30
 * the adjusted weights as a choice (KDOQI 2020 names no single best weight), within 1 kg/m² of 30 both with the actual one first, so that the
 * bound is no cliff; else the actual weight. Weights that are too old are not used (care rules 1, 4). `pick` is the dietitian's choice.
 */
export function weightBasis(facts: ClientFacts, pick?: WeightBasisId): WeightBasis {
  const base = baseWeight(facts);
  if (typeof base === 'string') return { kind: 'none', whatToCheck: base };
  const bmi = bmiOf(facts);
  const others: WeightChoice[] = [];
  const add = (id: WeightBasisId, kg: number | undefined, why: string, sources: readonly Source[]) => {
    if (kg !== undefined) others.push({ id, kg, on: base.on, why, sources });
  };
  const ideal = idealKg(facts);
  const standard = weightInDate(facts, 'standard')?.kg;
  const isNear30 = bmi !== undefined && Math.abs(bmi - 30) <= 1;
  if (bmi !== undefined && (bmi > 30 || isNear30)) {
    const where = isNear30 ? 'is within 1 of 30' : 'is over 30';
    const short = facts.heightCm !== undefined && isShort(facts.heightCm) ? ' Under 5 feet the ideal weight is uncertain.' : '';
    const why = `BMI ${bmi.toFixed(1)} ${where}: no single best weight is named, so this is the dietitian’s choice.${short}`;
    add('adjusted', ideal && valueOrNone(adjustedWeightKg(base.kg, ideal)), why, [fromMemory(kdoqi2020('OPINION')), commonPractice]);
    add('adjusted-edema-free', standard && valueOrNone(adjustedEdemaFreeWeightKg(base.kg, standard)), why, [kdoqi2000('OPINION')]);
  }
  const goal = bmi !== undefined && bmi < 18.5 ? weightInDate(facts, 'goal')?.kg : undefined;
  add('goal', goal, 'Underweight: the actual weight to start with, the goal weight to build up.', [commonPractice]);
  add('ideal', ideal, 'A low-protein diet is told per kg of ideal weight by some.', [
    asQuoted({ kind: 'paper', text: 'Molina 2021' }),
    commonPractice,
  ]);
  const all = [base, ...others];
  const chosen = all.find(({ id }) => id === pick) ?? (isNear30 ? base : (others.find(({ id }) => id === 'adjusted') ?? base));
  return {
    kind: 'chosen',
    chosen,
    others: all.filter(choice => choice !== chosen),
    needsChoice: bmi !== undefined && (bmi > 30 || isNear30) && chosen.id !== pick,
    uncertain: has(facts, 'edema', 'ascites', 'nephrotic-syndrome', 'overload'),
    ...(bmi === undefined ? {} : { bmi }),
  };
}

/** The weight that targets are set on, as it was entered where it was. */
export function basisWords({ kg, entered }: WeightChoice): string {
  return entered === undefined ? `${roundHalfUp(kg, 1)} kg` : weightWords({ kg, entered });
}

/** Where a choice of weight is open, what else the figure could be set on: a sentence each. */
export function otherBases(weight: WeightBasis): readonly string[] {
  if (weight.kind === 'none' || !weight.needsChoice) return [];
  return weight.others
    .filter(({ id }) => id !== 'ideal' && id !== 'goal')
    .map(({ id, kg }) => `Could be set on the ${id.replaceAll('-', ' ')} weight of ${kg.toFixed(1)} kg: choose.`);
}

/** BMI in kg/m² of the weight without the water between sessions, with missing parts counted in; undefined without weight or height. */
export function bmiOf(facts: ClientFacts): number | undefined {
  const base = baseWeight(facts);
  const weighed = typeof base === 'string' ? weightInDate(facts, 'actual') : base;
  if (weighed === undefined || facts.heightCm === undefined) return undefined;
  const whole = weightKgBeforeAmputation(weighed.kg, facts.assessment.missingParts ?? []);
  return whole.kind === 'refused' ? undefined : valueOrNone(bodyMassIndex(whole.value, facts.heightCm));
}

/** Hamwi's ideal weight, after amputation less the missing share (common practice). */
function idealKg({ heightCm, assessment: { sex, missingParts = [] } }: ClientFacts): number | undefined {
  const whole = heightCm === undefined ? undefined : valueOrNone(idealWeightKgHamwi(sex, heightCm));
  const missing = missingParts.reduce((sum, part) => sum + missingPartPercent[part], 0);
  return whole === undefined ? undefined : whole * (1 - missing / 100);
}

/** The weight before any choice, or what is missing. On dialysis: the dry weight in date, else one after treatment, else the actual one. */
function baseWeight(facts: ClientFacts): WeightChoice | string {
  const from = (id: WeightBasisId, why: string, sources: readonly Source[], ...kinds: readonly WeightKind[]) => {
    const found = weightInDate(facts, ...kinds);
    return found && { id, kg: found.kg, entered: found.entered, on: found.on, why, sources };
  };
  const none = (ask: string, ...kinds: readonly WeightKind[]): string => {
    const old = facts.weights.find(({ kind }) => kinds.includes(kind));
    return old === undefined ? ask : `${ask} ${oldWords(old, facts)}`;
  };
  if (has(facts, 'in-hospital')) {
    return (
      from('usual', 'In hospital: the usual or earlier weight, not the one with extra fluid.', [espen], 'usual', 'before-admission') ??
      from('dry', 'In hospital: the prescribed dry weight, not the one with extra fluid.', [espen], 'dry') ??
      'Enter the usual weight, or the one from before admission.'
    );
  }
  if (isOnDialysis(facts)) {
    const after = ['after-dialysis', 'after-drain'] as const;
    return (
      from('dry', 'On dialysis: dry weight, set by the renal team.', [commonPractice], 'dry') ??
      from(
        'after-treatment',
        'On dialysis: weight after the session or after draining, for want of a dry weight.',
        [commonPractice],
        ...after,
      ) ??
      from('actual', 'On dialysis: the actual weight, for want of a dry weight or one after treatment.', [commonPractice], 'actual') ??
      none('Enter the dry weight, or a weight after dialysis or after draining.', 'dry', ...after, 'actual')
    );
  }
  if (has(facts, 'edema', 'ascites', 'nephrotic-syndrome', 'overload')) {
    return (
      from('estimated-dry', 'Edema: an estimated dry weight, uncertain.', [commonPractice], 'estimated-dry', 'dry') ??
      none('There is edema: enter an estimated dry weight.', 'estimated-dry', 'dry')
    );
  }
  return from('actual', 'No edema: the actual weight.', [commonPractice], 'actual') ?? none('Enter a weight.', 'actual');
}

function oldWords({ kg, on }: Weight, { today }: ClientFacts): string {
  return `${kg.toFixed(1)} kg ${ageWords(on, today)} is too old.`;
}

const espen = asQuoted({ kind: 'guideline', text: 'ESPEN 2021' });

function valueOrNone(result: { kind: 'computed'; value: number } | { kind: 'refused' }): number | undefined {
  return result.kind === 'computed' ? result.value : undefined;
}
