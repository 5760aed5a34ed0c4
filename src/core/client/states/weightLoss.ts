import type { ClientFacts, Weight } from '#core/client/assessment/clientFacts.ts';
import { isInDate, isWeightInDate } from '#core/client/assessment/factAges.ts';
import { daysBetween } from '#core/quantity/calendarDay.ts';

/** What is known of lost weight, typed or computed from recorded weights of one kind. */
export interface WeightLoss {
  /** Percent; the greater of what was typed and what the weights show. Undefined where neither tells. */
  readonly percent3Months?: number;
  readonly percent6Months?: number;
  /** 5 % in 3 months or 10 % in 6, unwanted or not yet asked about. */
  readonly isLost: boolean;
  /** Nobody said whether the loss was wanted, or fluid. */
  readonly isOpen: boolean;
  /** The newest weight or the typed figure is too old to count as of now. */
  readonly isOld: boolean;
}

/**
 * Loss of weight in percent over 3 and 6 months (care rules 3): from the typed figure, and from every pair of recorded weights of one
 * kind, the newest against the heaviest within the window. 62.0 kg today after 68.0 kg 80 days ago: 8.8 % in 3 months.
 * A loss that was wanted, or fluid, is none.
 */
export function weightLoss(facts: ClientFacts): WeightLoss {
  const typed = facts.assessment.weightLoss ?? {};
  const within3 = lossWithin(facts, 92);
  const within6 = lossWithin(facts, 183);
  const [percent3Months, percent6Months] = [greater(typed.percent3Months, within3), greater(typed.percent6Months, within6)];
  const over = (three: number | undefined, six: number | undefined) => (three ?? 0) >= 5 || (six ?? 0) >= 10;
  const isUnwanted = typed.cause === undefined || typed.cause === 'unintended';
  const isLost = isUnwanted && over(percent3Months, percent6Months);
  const newest = facts.weights.find(({ kind }) => tissueKinds.has(kind));
  return {
    ...(percent3Months === undefined ? {} : { percent3Months }),
    ...(percent6Months === undefined ? {} : { percent6Months }),
    isLost,
    isOpen: isLost && typed.cause === undefined,
    isOld: !isInDate(facts, 'intake', facts.assessment.on) && (newest === undefined || !isWeightInDate(facts, newest)),
  };
}

/** Weights without the water between two treatments. A dry weight is prescribed and follows late; it counts all the same. */
const tissueKinds: ReadonlySet<Weight['kind']> = new Set(['actual', 'dry', 'after-dialysis', 'after-drain', 'estimated-dry']);

function lossWithin({ weights }: ClientFacts, days: number): number | undefined {
  const losses = [...tissueKinds].flatMap(kind => {
    const ofKind = weights.filter(weight => weight.kind === kind);
    const [newest] = ofKind;
    if (newest === undefined) return [];
    const sameDay = ofKind.filter(({ on }) => on === newest.on).map(({ kg }) => kg);
    const earlier = ofKind.filter(({ on }) => on !== newest.on && daysBetween(on, newest.on) <= days).map(({ kg }) => kg);
    const heaviest = Math.max(...earlier);
    return earlier.length === 0 ? [] : [((heaviest - Math.min(...sameDay)) / heaviest) * 100];
  });
  return losses.length === 0 ? undefined : Math.max(...losses);
}

function greater(a: number | undefined, b: number | undefined): number | undefined {
  return a === undefined ? b : b === undefined ? a : Math.max(a, b);
}
