import { analyteFacts } from '#core/client/labs/analytes.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';
import { sessionsOf } from './checkAmounts.ts';
import { ageWords, type ClientFacts, type Lab, labWords } from './clientFacts.ts';
import { ageLimitDays, isInDate, isWeightInDate } from './factAges.ts';
import { weightKinds } from './vocabularies.ts';

/** What stands on record and is not used, with why: shown beside the targets. */
export interface NotUsed {
  readonly what: string;
  readonly why: string;
}

/**
 * The newest results of each analyte where they are too old, every marked potassium in date, and the newest weight of each kind, urine and intake that are too old.
 * Older ones behind a newer one are history and are not listed.
 */
export function notUsed(facts: ClientFacts): readonly NotUsed[] {
  const { today, assessment } = facts;
  const isNewest = (lab: Lab): boolean => facts.labs.find(({ analyte }) => analyte === lab.analyte)?.takenOn === lab.takenOn;
  const newest = facts.labs.filter(lab => isNewest(lab) || (lab.analyte === 'potassium' && isInDate(facts, 'potassium', lab.takenOn)));
  const labs = newest.flatMap(lab => {
    const why = whyNot(facts, lab);
    return why === undefined ? [] : [{ what: labWords(lab, today), why }];
  });
  const weights = facts.weights
    .filter((weight, at) => facts.weights.findIndex(({ kind }) => kind === weight.kind) === at && !isWeightInDate(facts, weight))
    .map(({ kg, kind, on }) => ({
      what: `${weightKinds.words(kind)} weight ${Number(kg.toFixed(1))} kg (${ageWords(on, today)})`,
      why: `it counts for ${days(ageLimitDays(facts, kind === 'dry' ? 'dry-weight' : 'weight'))}`,
    }));
  const urine = assessment.urineMlPerDay;
  const agedSessions = sessionsOf(assessment).filter(({ on }) => !isInDate(facts, 'weight', on));
  return [
    ...labs,
    ...weights,
    ...(agedSessions.length === 0
      ? []
      : [
          {
            what: `${agedSessions.length === 1 ? '1 dialysis treatment' : `${agedSessions.length} dialysis treatments`} on record`,
            why: `gain and fluid count for ${days(ageLimitDays(facts, 'weight'))}`,
          },
        ]),
    ...(urine === undefined || isInDate(facts, 'urine', urine.on)
      ? []
      : [
          {
            what: `urine ${urine.value} mL a day (${ageWords(urine.on, today)})`,
            why: `it counts for ${days(ageLimitDays(facts, 'urine'))}`,
          },
        ]),
    ...((assessment.appetite === undefined && assessment.intake === undefined && assessment.addedFoods === undefined) ||
    isInDate(facts, 'intake', assessment.on)
      ? []
      : [
          { what: `appetite and intake (${ageWords(assessment.on, today)})`, why: `they count for ${days(ageLimitDays(facts, 'intake'))}` },
        ]),
  ];
}

function days(count: number): string {
  return count === 1 ? '1 day' : `${count} days`;
}

function whyNot(facts: ClientFacts, lab: Lab): string | undefined {
  if (daysBetween(lab.takenOn, facts.today) > ageLimitDays(facts, lab.analyte))
    return `${analyteFacts(lab.analyte).name} counts for ${days(ageLimitDays(facts, lab.analyte))}`;
  if (lab.analyte !== 'potassium') return undefined;
  if (lab.hemolyzed) return 'a hemolyzed sample is an upper bound: it sets no limit and is not in range';
  return lab.drawn === 'after-dialysis' ? 'after dialysis it is not in range, not low, and lifts no alarm' : undefined;
}
