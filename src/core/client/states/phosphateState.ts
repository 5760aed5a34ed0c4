import { type ClientFacts, isOnDialysis, type Lab, labWords } from '#core/client/assessment/clientFacts.ts';
import { ageLimitDays, latest } from '#core/client/assessment/factAges.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';

/** Where phosphate stands. `once-above`: one result alone is above; `persistent`: decisions on serial values (KDIGO CKD-MBD 2017). */
export type PhosphateState =
  | { readonly kind: 'missing'; readonly why: string }
  | {
      readonly kind: 'low' | 'in-range' | 'above-normal' | 'once-above' | 'persistent';
      readonly lab: Lab;
      /** The results that make it persistent, newest first. */
      readonly series: readonly Lab[];
      readonly pthHigh: boolean;
    };

/** mg/dL, where the laboratory sends no limits. Off dialysis CJASN 2010;5:519; on dialysis the old 5.5 of KDOQI 2003 (from memory). */
const usual = { lower: 2.5, upper: 4.5, upperOnDialysis: 5.5 };
/** Nine times an upper normal of 65 pg/mL (KDIGO CKD-MBD 2017, as quoted). */
const highPthPgPerMl = 585;

/**
 * Persistently raised is two results of different days running above the laboratory's own upper limit, or three rising ones with the
 * last above; the first no older than twice the age limit (care rules 2). 6.1 after 5.9 mg/dL on hemodialysis is persistent; 6.1 alone is not.
 */
export function phosphateState(facts: ClientFacts): PhosphateState {
  const atMostDays = ageLimitDays(facts, 'phosphate');
  const days = highestOfDays(facts.labs.filter(({ analyte }) => analyte === 'phosphate'));
  const [lab] = days;
  if (lab === undefined || daysBetween(lab.takenOn, facts.today) > atMostDays) {
    const told = lab === undefined ? '' : ` ${labWords(lab, facts.today)} is too old.`;
    return { kind: 'missing', why: `There is no phosphate result of the last ${atMostDays} days.${told}` };
  }
  const pth = latest(facts, 'pth');
  const standing = { lab, pthHigh: pth !== undefined && pth.value > highPthPgPerMl };
  const isAbove = (one: Lab): boolean => one.value > (one.upperNormal ?? (isOnDialysis(facts) ? usual.upperOnDialysis : usual.upper));
  if (!isAbove(lab)) {
    if (lab.value < (lab.lowerNormal ?? usual.lower)) return { kind: 'low', series: [], ...standing };
    const differs = lab.upperNormal === undefined && lab.value > usual.upper;
    return { kind: differs ? 'above-normal' : 'in-range', series: [], ...standing };
  }
  const serial = days.filter(({ takenOn }) => daysBetween(takenOn, facts.today) <= 2 * atMostDays);
  const [, second, third] = serial;
  if (second !== undefined && isAbove(second)) return { kind: 'persistent', series: [lab, second], ...standing };
  const isRising = second !== undefined && third !== undefined && lab.value > second.value && second.value > third.value;
  return isRising ? { kind: 'persistent', series: [lab, second, third], ...standing } : { kind: 'once-above', series: [lab], ...standing };
}

/** One result a day, the highest, newest first. */
function highestOfDays(newestFirst: readonly Lab[]): readonly Lab[] {
  return newestFirst.filter((lab, at) => newestFirst.findIndex(({ takenOn }) => takenOn === lab.takenOn) === at);
}
