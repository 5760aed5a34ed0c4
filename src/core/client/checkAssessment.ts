import { analyteFacts, analyteKeys } from './analytes.ts';
import { type Day, daysBetween, isDay, yearsBetween } from './calendarDay.ts';
import { type CareRules, usualCareRules } from './careRules.ts';
import type { Assessment, LabResult, Weighing } from './client.ts';
import type { ClientFacts, Lab } from './clientFacts.ts';
import { ageLimitDays } from './factAges.ts';
import { bodyMassIndex } from './formulas/bodyMassIndex.ts';
import { heightCmFrom, kilogramsPerPound, weightKgFrom } from './formulas/bodyUnits.ts';
import { firstImpossible, heightCmInput, type Refused, weightKgInput } from './formulas/computed.ts';
import { labInCanonicalUnit } from './labValue.ts';

/** Why no target is proposed at all. Permanent codes. */
export type BarCode =
  | 'under-18'
  | 'pregnant'
  | 'breastfeeding'
  | 'acute-kidney-injury'
  | 'impossible-value'
  | 'not-a-day'
  | 'from-the-future'
  | 'unit-not-known'
  | 'unit-in-question'
  | 'assessment-too-old';

/** A refusal says why; a question waits for an answer. Either way there is no target, and nothing is corrected silently. */
export interface Bar {
  readonly kind: 'refusal' | 'question';
  readonly code: BarCode;
  readonly field: string;
  readonly told: string;
}

export interface CheckedAssessment {
  /** What could be read; impossible values are left out. */
  readonly facts: ClientFacts;
  readonly bars: readonly Bar[];
}

/** Reads an assessment as of `today`: converts once, leaves out what cannot be, and says so. */
export function checkAssessment(assessment: Assessment, today: Day, rules: CareRules = usualCareRules): CheckedAssessment {
  const bars: Bar[] = [];
  const refuse = (code: BarCode, field: string, told: string) => bars.push({ kind: 'refusal', code, field, told });

  /** True for a day that exists and is not after today. */
  const dayStands = (day: Day, field: string): boolean => {
    if (!isDay(day)) refuse('not-a-day', field, `${field}: “${day}” is no day; expected YYYY-MM-DD.`);
    else if (daysBetween(day, today) < 0) refuse('from-the-future', field, `${field} is dated ${day}, after today (${today}).`);
    else return true;
    return false;
  };

  for (const [field, day] of otherDays(assessment)) if (day !== undefined) dayStands(day, field);
  const ageYears =
    'years' in assessment.age
      ? assessment.age.years
      : dayStands(assessment.age.bornOn, 'born on')
        ? yearsBetween(assessment.age.bornOn, today)
        : Number.NaN;
  const oddAge = firstImpossible(['age', ageYears, 0, 120, 'years']);
  if (oddAge) refuse('impossible-value', 'age', oddAge.told);
  if (ageYears < 18)
    refuse('under-18', 'age', `The client is ${ageYears}: under 18 is outside what this program may propose. Refer to a specialist.`);
  if (assessment.pregnant) refuse('pregnant', 'pregnant', 'Pregnancy is outside what this program may propose. Refer to a specialist.');
  if (assessment.breastfeeding)
    refuse('breastfeeding', 'breastfeeding', 'Breastfeeding is outside what this program may propose. Refer to a specialist.');
  if (assessment.acuteKidneyInjury) {
    refuse(
      'acute-kidney-injury',
      'acute kidney injury',
      'Acute kidney injury is outside what this program may propose. Follow your local protocol.',
    );
  }

  const heightCm = assessment.height === undefined ? undefined : heightCmFrom(assessment.height);
  const oddHeight = heightCm === undefined ? undefined : firstImpossible(heightCmInput(heightCm));
  if (oddHeight) refuse('impossible-value', 'height', oddHeight.told);

  const weights = [];
  for (const weighing of assessment.weighings) {
    const kg = weightKgFrom(weighing.weight);
    const odd = firstImpossible(weightKgInput(kg, `${weighing.kind} weight`));
    if (odd) refuse('impossible-value', `${weighing.kind} weight`, odd.told);
    else if (dayStands(weighing.on, `${weighing.kind} weight`)) weights.push({ kg, kind: weighing.kind, on: weighing.on });
    const told = poundsQuestion(weighing, assessment.weighings, oddHeight ? undefined : heightCm);
    if (told !== undefined) bars.push({ kind: 'question', code: 'unit-in-question', field: `${weighing.kind} weight`, told });
  }
  const urine = assessment.urineMlPerDay;
  const oddUrine = urine && firstImpossible(['urine', urine.value, 0, 15_000, 'mL a day']);
  if (oddUrine) refuse('impossible-value', 'urine', oddUrine.told);

  const labs: Lab[] = [];
  for (const result of assessment.labs) {
    const read = labInCanonicalUnit(result.analyte, result.value, result.unit);
    const field = analyteFacts(result.analyte).name;
    if (read.kind === 'refused') bars.push(barOf(read, field));
    else if (dayStands(result.takenOn, field)) labs.push(labOf(result, read.value));
  }
  const facts: ClientFacts = {
    today,
    assessment,
    setting: assessment.treatment.setting,
    ageYears,
    ...(heightCm === undefined || oddHeight ? {} : { heightCm }),
    weights: weights.sort((a, b) => laterFirst(a.on, b.on) || a.kg - b.kg),
    // Of one day the highest first: the order of a file decides nothing.
    labs: labs.sort((a, b) => laterFirst(a.takenOn, b.takenOn) || placeOf(a) - placeOf(b) || b.value - a.value),
    questioned: [],
    rules,
  };
  const assessedDays = ageLimitDays(facts, 'assessment');
  if (isDay(assessment.on) && daysBetween(assessment.on, today) > assessedDays) {
    const told = `The assessment of ${assessment.on} is ${daysBetween(assessment.on, today)} days old; here it counts for ${assessedDays}. Assess anew.`;
    bars.push({ kind: 'question', code: 'assessment-too-old', field: 'assessment', told });
  }
  return { facts, bars };
}

/** Analytes in the order of their list. */
function placeOf({ analyte }: Lab): number {
  return analyteKeys.indexOf(analyte);
}

/** Days, and times of a day, sort as they are written. */
function laterFirst(a: string, b: string): number {
  return a < b ? 1 : a > b ? -1 : 0;
}

function barOf({ why, told }: Refused, field: string): Bar {
  if (why === 'unit-in-question') return { kind: 'question', code: 'unit-in-question', field, told };
  const code = why === 'no-unit' || why === 'unit-not-known' ? 'unit-not-known' : 'impossible-value';
  return { kind: 'refusal', code, field, told };
}

function labOf(result: LabResult, value: number): Lab {
  const limit = (end: number | undefined): number | undefined => {
    const read = end === undefined ? undefined : labInCanonicalUnit(result.analyte, end, result.unit);
    return read?.kind === 'computed' ? read.value : undefined;
  };
  const [lowerNormal, upperNormal] = [limit(result.lowerNormal), limit(result.upperNormal)];
  return {
    analyte: result.analyte,
    value,
    entered: { value: result.value, unit: result.unit },
    takenOn: result.takenOn,
    ...(result.takenAt === undefined ? {} : { takenAt: result.takenAt }),
    ...(lowerNormal === undefined ? {} : { lowerNormal }),
    ...(upperNormal === undefined ? {} : { upperNormal }),
    ...(result.drawn === undefined ? {} : { drawn: result.drawn }),
    hemolyzed: result.hemolyzed === true,
  };
}

function otherDays({
  on,
  treatment,
  stage,
  urineMlPerDay,
  raasChangedOn,
  potassiumSteps,
  lastScreenedOn,
  lastFullAssessmentOn,
}: Assessment): readonly (readonly [string, Day | undefined])[] {
  return [
    ['assessment', on],
    ['stage', stage?.on],
    ['urine volume', urineMlPerDay?.on],
    ['transplant', treatment.setting === 'transplant' ? treatment.transplantedOn : undefined],
    ['start of dialysis', 'startedOn' in treatment ? treatment.startedOn : undefined],
    ['change of RAAS inhibitor', raasChangedOn],
    ['causes of high potassium checked', potassiumSteps?.causesCheckedOn],
    ['potassium additives cut', potassiumSteps?.additivesCutOn],
    ['screening', lastScreenedOn],
    ['full assessment', lastFullAssessmentOn],
  ];
}

/** BMI over this in kg, with a usual one in lb, looks like pounds in a kg field (own decision). */
const suspectBmi = 45;
const usualBmi = { lo: 16, hi: 40 };

/** A kg figure that is 2.2 times another of the client's weights, or gives a BMI that only pounds explain. 165 "kg" at 165 cm is asked about. */
function poundsQuestion(
  { weight, kind, unitConfirmed }: Weighing,
  all: readonly Weighing[],
  heightCm: number | undefined,
): string | undefined {
  if (weight.unit === 'lb' || unitConfirmed) return undefined;
  const ask = `${kind} weight ${weight.value} kg: was it lb? ${weight.value} lb is ${(weight.value * kilogramsPerPound).toFixed(1)} kg.`;
  const likeOther = all.some(other => {
    const ratio = (weight.value * kilogramsPerPound) / weightKgFrom(other.weight);
    return other.weight !== weight && other.kind !== 'goal' && other.kind !== 'standard' && ratio > 0.93 && ratio < 1.07;
  });
  if (likeOther) return ask;
  if (heightCm === undefined) return undefined;
  const inKg = bodyMassIndex(weight.value, heightCm);
  const inLb = bodyMassIndex(weight.value * kilogramsPerPound, heightCm);
  const suspect =
    inKg.kind === 'computed' &&
    inLb.kind === 'computed' &&
    inKg.value > suspectBmi &&
    inLb.value >= usualBmi.lo &&
    inLb.value <= usualBmi.hi;
  return suspect ? ask : undefined;
}
