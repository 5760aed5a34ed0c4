import type { DecidedTarget } from '#core/client/record/decidedTarget.ts';
import type { Target } from './target.ts';

/** Whether a decision is what is proposed. One figure for fluid may be picked anywhere in the range that was proposed, in its sense: an allowance is a limit, never a need. */
export function isAsProposed(
  { item, kind, range, limit = 'within' }: Pick<DecidedTarget, 'item' | 'kind' | 'range' | 'limit'>,
  target: Target,
): boolean {
  if (target.kind !== 'proposed') return range === undefined && kind === target.kind;
  if (range === undefined) return false;
  const isSame = range.lo === target.range.lo && range.hi === target.range.hi;
  if (item === 'fluid' && !(isSame && limit === target.limit)) {
    const figure = limit === 'at-least' ? range.lo : range.hi;
    const isInSense = limit === (target.limit === 'at-least' ? 'at-least' : 'at-most');
    return isInSense && target.range.lo <= figure && figure <= target.range.hi;
  }
  return limit === target.limit && isSame;
}
