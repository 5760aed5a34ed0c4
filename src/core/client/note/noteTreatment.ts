import type { Assessment } from '#core/client/assessment/assessment.ts';
import { dialysisPlaces, peritonealMethods } from '#core/client/assessment/vocabularies.ts';
import { absorbedGlucose, absorbedShareByMethod } from '#core/client/formulas/dialysateGlucose.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { settingWords } from '../setting.ts';

type Treatment = Assessment['treatment'];

/** What is on record of the schedule, in words: "in center, 3 sessions a week, 4 hours each". Empty where nothing is. */
export function scheduleWords(treatment: Treatment): string {
  switch (treatment.setting) {
    case 'ckd-not-on-dialysis':
      return treatment.conservative ? 'conservative care' : '';
    case 'transplant':
      return `transplanted ${treatment.transplantedOn}`;
    case 'peritoneal-dialysis':
      return listed(peritonealMethods.words(treatment.method), treatment.startedOn && `since ${treatment.startedOn}`);
    case 'hemodialysis': {
      const { place, sessionsPerWeek, sessionHours, startedOn, ultrafiltrationLimitMlPerKgH: most } = treatment;
      return listed(
        dialysisPlaces.words(place),
        sessionsPerWeek && `${sessionsPerWeek} ${sessionsPerWeek === 1 ? 'session' : 'sessions'} a week`,
        sessionHours && `${sessionHours} ${sessionHours === 1 ? 'hour' : 'hours'} each`,
        startedOn && `since ${startedOn}`,
        most && `ultrafiltration up to ${most} mL/kg an hour`,
      );
    }
  }
}

/** Setting and schedule together. */
export function treatmentWords(treatment: Treatment): string {
  return listed(settingWords[treatment.setting], scheduleWords(treatment));
}

function listed(...parts: readonly (string | number | undefined)[]): string {
  return parts.filter(part => part !== undefined && part !== '' && part !== 0).join(', ');
}

/**
 * On peritoneal dialysis what the dialysate gives, beside what is eaten: 8 L, 195 g dextrose, 60 % absorbed: "about 398 kcal a day". Without
 * bags it is not known, and said so: it is no zero.
 */
export function dialysateWords({ treatment, intake }: Assessment): readonly string[] {
  if (treatment.setting !== 'peritoneal-dialysis') return [];
  const { bags = [], icodextrin, method } = treatment;
  const beside = icodextrin ? ' Icodextrin is used; its energy is not counted.' : '';
  if (bags.length === 0) return [`Dialysate: no bags on record; what energy it gives is not known.${beside}`];
  const named = bags.map(({ liters, percent, labeledAs }) => `${liters} L of ${percent} % ${labeledAs}`).join(', ');
  const share = treatment.absorbedShare ?? absorbedShareByMethod[method];
  const glucose = absorbedGlucose(bags, share);
  if (glucose.kind === 'refused') return [`Dialysate: ${named}; what energy it gives is not known.${beside}`];
  const { energyKcal, infusedG } = glucose.value;
  const eaten = intake?.energyKcal;
  const together = eaten === undefined ? '' : ` With ${eaten} kcal eaten: about ${roundHalfUp(eaten + energyKcal, 0)} kcal a day.`;
  return [
    `Dialysate: ${named}; about ${roundHalfUp(energyKcal, 0)} kcal a day from it (${roundHalfUp(share * 100, 0)} % of ${roundHalfUp(infusedG, 0)} g absorbed; 40 to 80 % is real).${together}${beside}`,
  ];
}
