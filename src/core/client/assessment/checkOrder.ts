import { analyteFacts } from '#core/client/labs/analytes.ts';
import { addMonths, type Day, isDay } from '#core/quantity/calendarDay.ts';
import type { Assessment } from './assessment.ts';
import type { AssessmentIssue } from './assessmentIssue.ts';
import { sessionsOf } from './checkAmounts.ts';

/**
 * Days and hours that contradict each other: something before birth, a treatment that began after the assessment of it, an hour that does
 * not exist. A day that is none or lies after today is for `checkAssessment`. Source: care rules 5, own decision.
 */
export function checkOrder(assessment: Assessment, today: Day): readonly AssessmentIssue[] {
  if (!isDay(assessment.on) || assessment.on > today) return [];
  const issues: AssessmentIssue[] = [];
  const wrongOrder = (field: string, told: string) => issues.push({ kind: 'question', code: 'wrong-order', field, told });

  const born = earliestBirth(assessment);
  if (born !== undefined) {
    const words = 'bornOn' in assessment.age ? `the day of birth (${born})` : `the birth of someone of that age`;
    for (const [field, day] of datedFacts(assessment))
      if (isDay(day) && day < born) wrongOrder(field, `${field} is dated ${day}, before ${words}: which of the two is right?`);
  }
  for (const [field, day] of begun(assessment)) {
    if (day !== undefined && isDay(day) && day <= today && day > assessment.on)
      wrongOrder(field, `${field} (${day}) lies after the assessment (${assessment.on}) that is about it: which of the two is right?`);
  }
  for (const { analyte, takenOn, takenAt } of assessment.labs) {
    if (takenAt !== undefined && !/^([01]\d|2[0-3]):[0-5]\d$/u.test(takenAt)) {
      const { name } = analyteFacts(analyte);
      const told = `${name} of ${takenOn}: “${takenAt}” is no time of day; expected HH:MM, from 00:00 to 23:59.`;
      issues.push({ kind: 'refusal', code: 'not-an-hour', field: name, told });
    }
  }
  return issues;
}

/** Nothing can be dated before it. Someone of 64 years was born less than 65 years before the assessment. */
function earliestBirth({ age, on }: Assessment): Day | undefined {
  if ('bornOn' in age) return isDay(age.bornOn) ? age.bornOn : undefined;
  return age.years >= 1 && age.years <= 120 ? addMonths(on, -12 * Math.ceil(age.years + 1)) : undefined;
}

function begun({ treatment, stage }: Assessment): readonly (readonly [string, Day | undefined])[] {
  return [
    ['transplant', treatment.setting === 'transplant' ? treatment.transplantedOn : undefined],
    ['start of dialysis', 'startedOn' in treatment ? treatment.startedOn : undefined],
    ['stage', stage?.on],
  ];
}

function datedFacts(assessment: Assessment): readonly (readonly [string, Day])[] {
  const { labs, weighings, urineMlPerDay, potassiumSteps, raasChangedOn, lastScreenedOn, lastFullAssessmentOn } = assessment;
  const named: readonly (readonly [string, Day | undefined])[] = [
    ...begun(assessment),
    ['urine volume', urineMlPerDay?.on],
    ['change of RAAS inhibitor', raasChangedOn],
    ['causes of high potassium checked', potassiumSteps?.causesCheckedOn],
    ['potassium additives cut', potassiumSteps?.additivesCutOn],
    ['screening', lastScreenedOn],
    ['full assessment', lastFullAssessmentOn],
    ...labs.map(({ analyte, takenOn }) => [analyteFacts(analyte).name, takenOn] as const),
    ...weighings.map(({ kind, on }) => [`${kind} weight`, on] as const),
    ...sessionsOf(assessment).map(({ on }) => ['dialysis treatment', on] as const),
  ];
  return named.flatMap(([field, day]) => (day === undefined ? [] : [[field, day] as const]));
}
