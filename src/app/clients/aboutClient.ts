import type { Assessment } from '#core/client/assessment/assessment.ts';
import { dialysisPlaces, peritonealMethods } from '#core/client/assessment/vocabularies.ts';
import { type Day, isDay, yearsBetween } from '#core/quantity/calendarDay.ts';

/** Who it is about in one line: "61, on hemodialysis in center, 3 sessions of 4 hours a week", "67, CKD G3b, not on dialysis". */
export function aboutWords({ age, treatment, stage, diabetes }: Assessment, today: Day): string {
  const years = 'years' in age ? age.years : isDay(age.bornOn) ? yearsBetween(age.bornOn, today) : undefined;
  return [
    ...(years === undefined ? [] : [String(years)]),
    ...treatmentWords(treatment, stage?.value),
    ...(diabetes ? ['diabetes'] : []),
  ].join(', ');
}

function treatmentWords(treatment: Assessment['treatment'], stage: string | undefined): string[] {
  switch (treatment.setting) {
    case 'ckd-not-on-dialysis':
      return [stage === undefined ? 'CKD' : `CKD ${stage}`, treatment.conservative ? 'conservative care' : 'not on dialysis'];
    case 'hemodialysis': {
      const { place, sessionsPerWeek, sessionHours } = treatment;
      const hours = sessionHours === undefined ? '' : ` of ${sessionHours} ${sessionHours === 1 ? 'hour' : 'hours'}`;
      const often =
        sessionsPerWeek === undefined ? [] : [`${sessionsPerWeek} ${sessionsPerWeek === 1 ? 'session' : 'sessions'}${hours} a week`];
      return [`on hemodialysis ${place === 'home' ? 'at home' : dialysisPlaces.words(place).replace('-', ' ')}`, ...often];
    }
    case 'peritoneal-dialysis':
      return [`on peritoneal dialysis (${peritonealMethods.words(treatment.method)})`];
    case 'transplant':
      return [`transplanted ${treatment.transplantedOn}`, ...(stage === undefined ? [] : [`CKD ${stage} of the graft`])];
  }
}
