import { type ClientFacts, type Lab, labWords } from '#core/client/assessment/clientFacts.ts';
import { ageLimitDays, resultsInDate } from '#core/client/assessment/factAges.ts';
import { daysBetween, hourOfDay } from '#core/quantity/calendarDay.ts';

/** Where the newest potassium that counts stands; `unknown` says why none does. */
export type PotassiumState =
  | { readonly kind: 'unknown'; readonly why: string; readonly whatToCheck: string }
  | { readonly kind: 'low' | 'in-range' | 'once-above' | 'high'; readonly lab: Lab; readonly upper: number };

/** Upper end where the laboratory sends none (own default). On hemodialysis, before a session, high is over 5.5 (CJASN 2007;2:999). */
const usualUpper = 5.0;
const usualLower = 3.5;
export const alwaysHigh = 5.5;

/**
 * High is above range on two days running, or once over 5.5 mmol/L; on hemodialysis over 5.5 (facts 3.4). A hemolyzed sample and one after
 * dialysis are never in range and never low; one drawn before a RAAS change is not in range after it; results of one day that
 * contradict each other set nothing (care rules 1, 2). 5.2 after 5.3 is high; 5.2 after 4.6 is above range once.
 */
export function potassiumState(facts: ClientFacts): PotassiumState {
  const isHemodialysis = facts.setting === 'hemodialysis';
  const upperOf = (lab: Lab): number => (isHemodialysis ? alwaysHigh : Math.min(lab.upperNormal ?? usualUpper, alwaysHigh));
  const inDate = resultsInDate(facts, 'potassium');
  const counted = inDate.filter(lab => !lab.hemolyzed && (lab.drawn !== 'after-dialysis' || lab.value > upperOf(lab)));
  const [newest] = counted;
  if (newest === undefined) return noneCounts(facts, inDate);
  const sameDay = counted.filter(({ takenOn }) => takenOn === newest.takenOn);
  const lab = latestOfDay(sameDay);
  const kindOf = (one: Lab) =>
    one.value < (one.lowerNormal ?? usualLower) ? 'low' : one.value > upperOf(one) ? 'above' : ('in-range' as const);
  if (lab === undefined || (!hasHours(sameDay) && new Set(sameDay.map(kindOf)).size > 1))
    return unknown(
      `Potassium results of ${newest.takenOn} contradict each other: ${sameDay.map(({ value }) => value).join(' and ')} mmol/L.`,
    );
  const upper = upperOf(lab);
  const kind = kindOf(lab);
  if (kind === 'low') return { kind, lab, upper };
  const { raasChangedOn } = facts.assessment;
  if (kind === 'in-range') {
    if (raasChangedOn !== undefined && daysBetween(lab.takenOn, raasChangedOn) >= 0)
      return unknown(`${labWords(lab, facts.today)} was drawn not after the RAAS change of ${raasChangedOn}: it is not in range any more.`);
    return { kind, lab, upper };
  }
  const bound = inDate.find(one => one.hemolyzed && daysBetween(lab.takenOn, one.takenOn) >= 0 && one.value <= upper);
  if (bound !== undefined)
    return unknown(`${labWords(bound, facts.today)} is at most that, so the higher one of ${lab.takenOn} may no longer stand.`);
  if (lab.value > alwaysHigh || isHemodialysis) return { kind: 'high', lab, upper };
  const dayBefore = counted.find(({ takenOn }) => takenOn !== lab.takenOn)?.takenOn;
  const before = counted.filter(({ takenOn }) => takenOn === dayBefore);
  return { kind: before.length > 0 && before.every(one => one.value > upperOf(one)) ? 'high' : 'once-above', lab, upper };
}

function hasHours(labs: readonly Lab[]): boolean {
  return labs.every(({ takenAt }) => takenAt !== undefined) && new Set(labs.map(({ takenAt }) => takenAt)).size === labs.length;
}

/** The last of a day by its hour; without hours the highest. */
function latestOfDay(labs: readonly Lab[]): Lab | undefined {
  return hasHours(labs) ? labs.toSorted((a, b) => hourOfDay(b.takenAt) - hourOfDay(a.takenAt))[0] : labs[0];
}

function unknown(why: string): PotassiumState {
  return { kind: 'unknown', why, whatToCheck: 'A new potassium result.' };
}

function noneCounts(facts: ClientFacts, inDate: readonly Lab[]): PotassiumState {
  const days = ageLimitDays(facts, 'potassium');
  const [newest] = inDate;
  if (newest !== undefined) return unknown(`${labWords(newest, facts.today)} does not count as in range nor as low.`);
  const older = facts.labs.find(({ analyte }) => analyte === 'potassium');
  const told = older === undefined ? '' : ` ${labWords(older, facts.today)} is too old.`;
  return { kind: 'unknown', why: `There is no potassium result of the last ${days} days.${told}`, whatToCheck: 'A potassium result.' };
}

/** What stands before a limit on potassium in food: the list of other causes first, then additives, then a result that is still high. */
export type PotassiumStep = 'check-causes' | 'cut-additives' | 'wait-for-result' | 'limit';

/** "Causes checked" counts for results up to its day: a newer one above the line asks again (care rules 1). */
export function potassiumStep(facts: ClientFacts, high: Lab): PotassiumStep {
  const { causesCheckedOn, additivesCutOn } = facts.assessment.potassiumSteps ?? {};
  if (causesCheckedOn === undefined || daysBetween(causesCheckedOn, high.takenOn) > 0) return 'check-causes';
  if (facts.setting === 'hemodialysis') return 'limit';
  if (additivesCutOn === undefined) return 'cut-additives';
  return daysBetween(additivesCutOn, high.takenOn) > 0 ? 'limit' : 'wait-for-result';
}
