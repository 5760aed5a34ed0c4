import { addDays, type Day, daysBetween } from './calendarDay.ts';
import { type ClientFacts, isOnDialysis, type Lab } from './clientFacts.ts';

/** Where the newest potassium stands. Hemolyzed samples are passed over. */
export type PotassiumState =
  | { readonly kind: 'missing'; readonly atMostDays: number }
  | { readonly kind: 'low' | 'in-range' | 'once-above' | 'high'; readonly lab: Lab; readonly upper: number };

/** A result older than this sets no target: 35 days on dialysis, else 90 (tool rule of the facts; transplants own decision). */
export function potassiumFreshDays(facts: ClientFacts): number {
  return isOnDialysis(facts) ? 35 : 90;
}

/** Upper end where the laboratory sends none (own default). On hemodialysis, before a session, high is over 5.5 (CJASN 2007;2:999). */
const usualUpper = 5.0;
const low = 3.5;
const alwaysHigh = 5.5;

/**
 * High is above range twice running, or once over 5.5 mmol/L; on hemodialysis over 5.5. Facts section 3.4.
 * 5.2 after 5.3 is high; 5.2 after 4.6 is above range once.
 */
export function potassiumState(facts: ClientFacts): PotassiumState {
  const atMostDays = potassiumFreshDays(facts);
  const results = facts.labs.filter(
    lab => lab.analyte === 'potassium' && !lab.hemolyzed && daysBetween(lab.takenOn, facts.today) <= atMostDays,
  );
  const [lab, before] = results;
  if (lab === undefined) return { kind: 'missing', atMostDays };
  const onHemodialysis = facts.setting === 'hemodialysis';
  const upperOf = (result: Lab) => (onHemodialysis ? alwaysHigh : (result.upperNormal ?? usualUpper));
  const upper = upperOf(lab);
  if (lab.value < low) return { kind: 'low', lab, upper };
  if (lab.value > alwaysHigh) return { kind: 'high', lab, upper };
  if (lab.value <= upper) return { kind: 'in-range', lab, upper };
  return { kind: before !== undefined && before.value > upperOf(before) ? 'high' : 'once-above', lab, upper };
}

/** What stands before a limit on potassium in food: the list of other causes first, then additives, then a result that is still high. */
export type PotassiumStep = 'check-causes' | 'cut-additives' | 'wait-for-result' | 'limit';

export function potassiumStep(facts: ClientFacts, high: Lab): PotassiumStep {
  const { causesCheckedOn, additivesCutOn } = facts.assessment.potassiumSteps ?? {};
  if (!isFresh(causesCheckedOn, facts)) return 'check-causes';
  if (facts.setting === 'hemodialysis') return 'limit';
  if (additivesCutOn === undefined) return 'cut-additives';
  return daysBetween(additivesCutOn, high.takenOn) > 0 ? 'limit' : 'wait-for-result';
}

/** Checked long ago is not checked: the same age as a potassium result. */
function isFresh(day: Day | undefined, facts: ClientFacts): boolean {
  return day !== undefined && daysBetween(addDays(day, potassiumFreshDays(facts)), facts.today) <= 0;
}

/** What to look at before food is restricted. Facts section 4.4; trimethoprim, heparin and catabolism from memory. */
export const otherCausesOfHighPotassium: readonly string[] = [
  'Sample: hemolysis, EDTA, delay, cold store, fist clenching, high platelets or white cells.',
  'Acidosis: bicarbonate under 22.',
  'Constipation: bowel record.',
  'Insulin lack, high glucose, a long fast before hemodialysis.',
  'RAAS inhibitor: recent start or dose.',
  'Mineralocorticoid antagonist or another potassium-sparing diuretic.',
  'Trimethoprim or pentamidine in the last 2 weeks.',
  'Heparin, calcineurin inhibitor, NSAID, non-selective beta-blocker, digoxin excess.',
  'Potassium tablets, citrate, potassium penicillin, salt substitute, herbal products: ask by name.',
  'Dialysis dose: low Kt/V, missed session, access trouble, dialysate potassium.',
  'Catabolism: infection, weight loss, rhabdomyolysis, tumor lysis, steroid.',
  'Bleeding in the gut, transfusion, hemolysis.',
  'Acute kidney injury, obstruction, dehydration, low aldosterone, adrenal failure.',
];
