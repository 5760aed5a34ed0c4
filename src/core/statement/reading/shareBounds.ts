import type { Interval } from '#core/quantity/interval.ts';
import type { StatementIssueCode } from '../statement.ts';
import type { Draft } from './draft.ts';

export type Report = (code: StatementIssueCode, start: number, end: number, expected: string) => void;

/**
 * Bounds on the shares of one list, ingredient after ingredient. They are on ingoing weights, as the law orders them;
 * loss of water in cooking is not in them.
 *
 * - The k-th ordered ingredient is at most whole ÷ k (descending order, 21 CFR 101.4(a)(1)).
 * - An ingredient behind "contains 2% or less of" is at most 2 %, in no order (101.4(a)(2)).
 * - The first is at least what the others cannot fill: (whole − all tail thresholds) ÷ number of ordered ones.
 * - A printed percentage holds to its rounding (101.4(e)) and bounds its neighbours.
 * - Alternatives and optional ingredients may be absent: from 0.
 * - An injected solution of p % of the raw weight is at most p ÷ (100 + p) of the product (9 CFR 317.2(e)(2)(i)).
 */
export class ShareBounds {
  private readonly whole: Interval;
  /** Components, products of a variety pack and alternatives stand in no order. */
  private readonly isFree: boolean;
  private readonly leastOfFirst: number;
  /** No later ingredient weighs more than this. */
  private ceiling: number;
  private ranked = 0;

  constructor(drafts: readonly Draft[], whole: Interval, unordered: boolean) {
    let hasComponent = false;
    let mostInTail = 0;
    let ordered = 0;
    for (const draft of drafts) {
      hasComponent ||= draft.kind === 'component';
      if (hasOwnPlace(draft)) mostInTail += whole.hi;
      else if (draft.atMostPercent !== undefined) mostInTail += draft.atMostPercent;
      else ordered += 1;
    }
    this.whole = whole;
    this.isFree = unordered || hasComponent;
    this.leastOfFirst = ordered === 0 ? 0 : (whole.lo - mostInTail) / ordered;
    this.ceiling = whole.hi;
  }

  /** The share of the next ingredient of the list; `declared` when its printed percentage is one of the whole food. */
  next(draft: Draft, declared: Interval | undefined, report: Report): Interval {
    const isRanked = !this.isFree && draft.atMostPercent === undefined && draft.presence === 'certain' && !hasOwnPlace(draft);
    let hi = this.most(draft);
    let lo = isRanked && this.ranked === 0 ? Math.max(0, Math.min(hi, this.leastOfFirst)) : 0;
    if (declared !== undefined) {
      if (declared.lo > hi || declared.hi < lo) {
        report('percent-out-of-order', draft.start, draft.end, `a share of ${lo} to ${hi} percent, as its place in the list implies`);
        ({ lo, hi } = declared);
      } else {
        lo = Math.max(lo, declared.lo);
        hi = Math.min(hi, declared.hi);
      }
    }
    if (isRanked) {
      this.ranked += 1;
      this.ceiling = Math.min(this.ceiling, hi);
    }
    return { lo: draft.presence === 'certain' ? lo : 0, hi };
  }

  private most(draft: Draft): number {
    const { whole } = this;
    const { atMostPercent, solutionPercent } = draft;
    const inOrder = Math.min(this.ceiling, whole.hi / (this.ranked + 1));
    const most = atMostPercent !== undefined ? Math.min(whole.hi, atMostPercent) : this.isFree || draft.outOfOrder ? whole.hi : inOrder;
    return solutionPercent === undefined ? most : Math.min(most, (solutionPercent / (100 + solutionPercent)) * 100);
  }
}

/** A treatment or a solution: its place in the list says nothing about its weight. */
function hasOwnPlace(draft: Draft): boolean {
  return draft.outOfOrder || draft.solutionPercent !== undefined;
}
