import type { ClientFacts, Weight } from '#core/client/assessment/clientFacts.ts';
import { isInDate, weightInDate } from '#core/client/assessment/factAges.ts';
import type { WeightKind } from '#core/client/assessment/vocabularies.ts';
import { interdialyticGain } from '#core/client/formulas/interdialyticGain.ts';
import { ultrafiltrationMlPerKgH } from '#core/client/formulas/ultrafiltrationRate.ts';
import type { Day } from '#core/quantity/calendarDay.ts';

/** A hemodialysis treatment in date, with what can be worked out of it. */
export interface SessionFigures {
  readonly on: Day;
  readonly gainKg?: number;
  /** In percent of the prescribed dry weight. */
  readonly gainPercent?: number;
  readonly removedL?: number;
  readonly mlPerKgH?: number;
}

/**
 * Treatments young enough to be used, newest first. The gain is as typed, else the weight before of that day over the dry weight; the rate
 * takes the hours of that treatment and the weight after it, else the dry weight. 3.5 L in 3.5 h, 70 kg after: 14.3 mL/kg/h.
 */
export function sessionsInDate(facts: ClientFacts): readonly SessionFigures[] {
  const { treatment } = facts.assessment;
  if (treatment.setting !== 'hemodialysis') return [];
  const dry = weightInDate(facts, 'dry');
  return (treatment.sessions ?? [])
    .filter(({ on }) => isInDate(facts, 'weight', on))
    .map(({ on, gainKg, removedL, hours }): SessionFigures => {
      const before = weightOf(facts, 'before-dialysis', on);
      const fromWeights = before && dry && interdialyticGain(before.kg, dry.kg);
      const gain = gainKg ?? (fromWeights?.kind === 'computed' ? fromWeights.value.gainKg : undefined);
      const after = (weightOf(facts, 'after-dialysis', on) ?? dry)?.kg;
      const rate =
        removedL === undefined || hours === undefined || after === undefined
          ? undefined
          : ultrafiltrationMlPerKgH(removedL * 1000, hours, after);
      return {
        on,
        ...(gain === undefined ? {} : { gainKg: gain }),
        ...(gain === undefined || dry === undefined ? {} : { gainPercent: (gain / dry.kg) * 100 }),
        ...(removedL === undefined ? {} : { removedL }),
        ...(rate?.kind === 'computed' ? { mlPerKgH: rate.value } : {}),
      };
    })
    .toSorted((a, b) => (a.on < b.on ? 1 : a.on > b.on ? -1 : (b.gainKg ?? 0) - (a.gainKg ?? 0) || (b.mlPerKgH ?? 0) - (a.mlPerKgH ?? 0)));
}

function weightOf({ weights }: ClientFacts, kind: WeightKind, on: Day): Weight | undefined {
  return weights.find(weight => weight.kind === kind && weight.on === on);
}

/** From here on fluid is taken off too fast (linked to harm, from memory); the team's own limit, where it is lower, stands before it. */
const fastMlPerKgH = 13;

/** The newest rate of fluid removal in words, where it is over the agreed limit or over 13 mL/kg/h. */
export function fastRemoval(facts: ClientFacts): string | undefined {
  const { treatment } = facts.assessment;
  const newest = sessionsInDate(facts).find(({ mlPerKgH }) => mlPerKgH !== undefined);
  if (treatment.setting !== 'hemodialysis' || newest?.mlPerKgH === undefined) return undefined;
  const agreed = treatment.ultrafiltrationLimitMlPerKgH;
  const isAgreed = agreed !== undefined && agreed < fastMlPerKgH;
  const bound = isAgreed ? agreed : fastMlPerKgH;
  return newest.mlPerKgH > bound + 1e-9
    ? `${newest.mlPerKgH.toFixed(1)} mL/kg/h on ${newest.on}, over ${isAgreed ? `the agreed ${bound}` : bound}`
    : undefined;
}
