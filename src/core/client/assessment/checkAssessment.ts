import { weightKgFrom } from '#core/client/formulas/bodyUnits.ts';
import { firstImpossible } from '#core/client/formulas/computed.ts';
import { analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import { labConverted, labInCanonicalUnit, labQuestion, possibleReadings } from '#core/client/labs/labValue.ts';
import { type CareRules, usualCareRules } from '#core/client/rules/careRules.ts';
import { type Day, daysBetween, isDay, yearsBetween } from '#core/quantity/calendarDay.ts';
import type { Assessment, LabResult } from './assessment.ts';
import type { AssessmentIssue, AssessmentIssueCode } from './assessmentIssue.ts';
import { checkAmounts, sessionsOf } from './checkAmounts.ts';
import { checkBody, plausibleHeight, plausibleWeightKg } from './checkBody.ts';
import { checkLabs } from './checkLabs.ts';
import { checkOrder } from './checkOrder.ts';
import type { ClientFacts, Lab, Weight } from './clientFacts.ts';
import { ageLimitDays } from './factAges.ts';

export interface CheckedAssessment {
  /** What could be read; impossible values are left out. */
  readonly facts: ClientFacts;
  readonly issues: readonly AssessmentIssue[];
}

/** Reads an assessment as of `today`: converts once, leaves out what cannot be, and says so. */
export function checkAssessment(assessment: Assessment, today: Day, rules: CareRules = usualCareRules): CheckedAssessment {
  const issues: AssessmentIssue[] = [];
  const refuse = (code: AssessmentIssueCode, field: string, told: string) => issues.push({ kind: 'refusal', code, field, told });

  /** True for a day that exists and is not after today. */
  const dayStands = (day: Day, field: string): boolean => {
    if (day === '') refuse('not-a-day', field, `${field}: its day is missing.`);
    else if (!isDay(day)) refuse('not-a-day', field, `${field}: “${day}” is no day; expected YYYY-MM-DD.`);
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

  issues.push(...checkBody(assessment), ...checkAmounts(assessment), ...checkLabs(assessment), ...checkOrder(assessment, today));

  const heightCm = plausibleHeight(assessment);
  const weights: Weight[] = [];
  for (const { weight, kind, on } of assessment.weighings) {
    const kg = weightKgFrom(weight);
    const [lo, hi] = plausibleWeightKg;
    if (dayStands(on, `${kind} weight`) && kg >= lo && kg <= hi) weights.push({ kg, entered: weight, kind, on });
  }
  const labs: Lab[] = [];
  const questioned: Lab[] = [];
  for (const result of assessment.labs) {
    const { analyte, value, unit, takenOn } = result;
    const read = labInCanonicalUnit(analyte, value, unit);
    if (!dayStands(takenOn, analyteFacts(analyte).name)) continue;
    const isAsked =
      !result.confirmed && (read.kind === 'refused' || labQuestion(analyte, value, unit, assessment.treatment.setting) !== undefined);
    if (isAsked) {
      // It sets and lifts nothing; a contact value that it would be, as typed or as likely meant, is told all the same.
      for (const reading of possibleReadings(analyte, value, unit, assessment.treatment.setting))
        questioned.push({ ...labOf(result, reading), inQuestion: true });
    } else if (read.kind === 'computed') labs.push(labOf(result, read.value));
  }
  const facts: ClientFacts = {
    today,
    assessment,
    setting: assessment.treatment.setting,
    ageYears,
    ...(heightCm === undefined ? {} : { heightCm }),
    weights: weights.sort((a, b) => laterFirst(a.on, b.on) || a.kg - b.kg || laterFirst(a.kind, b.kind)),
    // Of one day the highest first: the order of a file decides nothing.
    labs: labs.sort(
      (a, b) => laterFirst(a.takenOn, b.takenOn) || placeOf(a) - placeOf(b) || b.value - a.value || laterFirst(marksOf(b), marksOf(a)),
    ),
    questioned,
    rules,
  };
  const assessedDays = ageLimitDays(facts, 'assessment');
  if (isDay(assessment.on) && daysBetween(assessment.on, today) > assessedDays) {
    const told = `The assessment of ${assessment.on} is ${daysBetween(assessment.on, today)} days old; here it counts for ${assessedDays}. Assess anew.`;
    issues.push({ kind: 'question', code: 'assessment-too-old', field: 'assessment', told });
  }
  return { facts, issues };
}

/** Analytes in the order of their list. */
function placeOf({ analyte }: Lab): number {
  return analyteKeys.indexOf(analyte);
}

/** What tells two results of one value and day apart; clean ones first. */
function marksOf({ hemolyzed, drawn, takenAt, upperNormal = 0, lowerNormal = 0, entered }: Lab): string {
  return `${hemolyzed} ${drawn ?? ''} ${takenAt ?? ''} ${upperNormal} ${lowerNormal} ${entered.unit}`;
}

/** Days, and times of a day, sort as they are written. */
function laterFirst(a: string, b: string): number {
  return a < b ? 1 : a > b ? -1 : 0;
}

function labOf(result: LabResult, value: number): Lab {
  const limit = (end: number | undefined): number | undefined =>
    end === undefined ? undefined : labConverted(result.analyte, end, result.unit);
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

function otherDays(assessment: Assessment): readonly (readonly [string, Day | undefined])[] {
  const { on, treatment, stage, urineMlPerDay, raasChangedOn, potassiumSteps, lastScreenedOn, lastFullAssessmentOn } = assessment;
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
    ...sessionsOf(assessment).map((session): [string, Day] => ['dialysis treatment', session.on]),
  ];
}
