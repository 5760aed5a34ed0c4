import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { type ClientRecord, currentAssessment } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import { phosphateState } from '#core/client/states/phosphateState.ts';
import { potassiumState, potassiumStep } from '#core/client/states/potassiumState.ts';
import { wastingState } from '#core/client/states/wastingState.ts';
import type { Day } from '#core/quantity/calendarDay.ts';

/** What a client's checked facts say that bears on which food to pick first. Undefined is not known, or nothing to pick by. */
export interface AimStates {
  /** Wasting, or not ruled out, weight loss, poor appetite: no food is held back then, but additives are. */
  readonly isWasting?: boolean;
  /** `additives`: high, and only additives are to be left out so far; `food`: food as well. */
  readonly potassium?: 'additives' | 'food' | 'low';
  readonly phosphate?: 'additives' | 'food' | 'low';
}

/** The states of the newest assessment with the results added since. While a question about it is open nothing is picked by it. */
export function aimStates(record: ClientRecord, today: Day, rules?: CareRules): AimStates {
  const current = currentAssessment(record)?.assessment;
  const checked = current && checkAssessment(current, today, rules);
  if (checked === undefined || checked.issues.length > 0) return {};
  const { facts } = checked;
  const isWasting = wastingState(facts).blocks.length > 0;
  const potassium = potassiumOf(potassiumState(facts), isWasting, one => potassiumStep(facts, one) === 'limit');
  const phosphate = phosphateOf(phosphateState(facts), isWasting);
  return {
    isWasting,
    ...(potassium === undefined ? {} : { potassium }),
    ...(phosphate === undefined ? {} : { phosphate }),
  };
}

type High = Extract<ReturnType<typeof potassiumState>, { readonly upper: number }>['lab'];

/** Food only where a limit on it may be proposed (CLT-12): other causes come first, then additives. */
function potassiumOf(
  state: ReturnType<typeof potassiumState>,
  isWasting: boolean,
  isFoodNext: (high: High) => boolean,
): AimStates['potassium'] {
  if (state.kind === 'low') return 'low';
  if (state.kind !== 'high') return undefined;
  return !isWasting && isFoodNext(state.lab) ? 'food' : 'additives';
}

/** One result above: additives first (CLT-14). */
function phosphateOf({ kind }: ReturnType<typeof phosphateState>, isWasting: boolean): AimStates['phosphate'] {
  if (kind === 'low') return 'low';
  if (kind === 'once-above') return 'additives';
  if (kind === 'persistent') return isWasting ? 'additives' : 'food';
  return undefined;
}
