import type { Interval } from '#core/quantity/interval.ts';
import type { Draft } from './draft.ts';
import type { Ingredient, StatementIssueCode } from './statement.ts';

type Report = (code: StatementIssueCode, start: number, end: number, expected: string) => void;

/**
 * Gives every ingredient the bounds on its share of the whole food that the statement implies, and turns offsets into
 * code points. The bounds are on ingoing weights, as the law orders them; loss of water in cooking is not in them.
 *
 * - The k-th ordered ingredient is at most whole ÷ k (descending order, 21 CFR 101.4(a)(1)).
 * - An ingredient behind "contains 2% or less of" is at most 2 %, in no order (101.4(a)(2)).
 * - The first is at least what the others cannot fill: (whole − all tail thresholds) ÷ number of ordered ones.
 * - A printed percentage holds to its rounding (101.4(e)) and bounds its neighbours.
 * - Alternatives and optional ingredients may be absent: from 0.
 * - An injected solution of p % of the raw weight is at most p ÷ (100 + p) of the product (9 CFR 317.2(e)(2)(i)).
 */
export function finishDrafts(drafts: readonly Draft[], position: (offset: number) => number, report: Report): Ingredient[] {
  return shareOut(drafts, { lo: 100, hi: 100 }, true, false, position, report);
}

function shareOut(
  drafts: readonly Draft[],
  whole: Interval,
  isWholeFood: boolean,
  unordered: boolean,
  position: (offset: number) => number,
  report: Report,
): Ingredient[] {
  const shares = shareBounds(drafts, whole, isWholeFood, unordered, report);
  const finished: Ingredient[] = [];
  for (let index = 0; index < drafts.length; index++) {
    const draft = drafts[index]!;
    const share = shares[index]!;
    const parts = draft.parts.length === 0 ? noParts : shareOut(draft.parts, share, false, draft.unordered, position, report);
    const ingredient: { -readonly [Key in keyof Ingredient]: Ingredient[Key] } = {
      kind: draft.kind === 'group' && parts.length === 0 ? 'ingredient' : draft.kind,
      name: draft.name,
      start: Math.min(position(draft.start), parts[0]?.start ?? Number.POSITIVE_INFINITY),
      end: Math.max(position(draft.end), parts.at(-1)?.end ?? 0),
      presence: draft.presence,
      organic: draft.organic,
      notes: draft.notes,
      sharePercent: share,
      parts,
    };
    if (draft.declaredPercent !== undefined) ingredient.declaredPercent = draft.declaredPercent;
    if (draft.atMostPercent !== undefined) ingredient.atMostPercent = draft.atMostPercent;
    finished.push(ingredient);
  }
  return finished;
}
const noParts: readonly Ingredient[] = [];

function shareBounds(drafts: readonly Draft[], whole: Interval, isWholeFood: boolean, unordered: boolean, report: Report): Interval[] {
  const free = unordered || drafts.some(draft => draft.kind === 'component');
  const shares: Interval[] = [];
  let before = 0;
  let ceiling = whole.hi;
  let tailSum = 0;
  let orderedCount = 0;
  for (const draft of drafts) {
    if (draft.solutionPercent !== undefined || draft.outOfOrder) tailSum += whole.hi;
    else if (draft.atMostPercent !== undefined) tailSum += draft.atMostPercent;
    else orderedCount += 1;
  }
  let firstOrdered = true;
  for (const draft of drafts) {
    const tail = draft.atMostPercent;
    const ranked = tail === undefined && !free && draft.presence === 'certain' && draft.solutionPercent === undefined && !draft.outOfOrder;
    let hi =
      tail !== undefined ? Math.min(whole.hi, tail) : free || draft.outOfOrder ? whole.hi : Math.min(ceiling, whole.hi / (before + 1));
    let lo = 0;
    if (draft.solutionPercent !== undefined) hi = Math.min(hi, (draft.solutionPercent / (100 + draft.solutionPercent)) * 100);
    if (ranked) {
      if (firstOrdered) lo = Math.max(0, Math.min(hi, (whole.lo - tailSum) / orderedCount));
      firstOrdered = false;
      before += 1;
    }
    if (draft.declaredPercent !== undefined && isWholeFood) {
      const half = 0.5 * 10 ** -draft.declaredDecimals;
      const declared = { lo: Math.max(0, draft.declaredPercent - half), hi: Math.min(100, draft.declaredPercent + half) };
      if (declared.lo > hi || declared.hi < lo) {
        report('percent-out-of-order', draft.start, draft.end, `a share of ${lo} to ${hi} percent, as its place in the list implies`);
        lo = declared.lo;
        hi = declared.hi;
      } else {
        lo = Math.max(lo, declared.lo);
        hi = Math.min(hi, declared.hi);
      }
    }
    if (draft.presence !== 'certain') lo = 0;
    if (ranked) ceiling = Math.min(ceiling, hi);
    shares.push({ lo, hi });
  }
  return shares;
}
