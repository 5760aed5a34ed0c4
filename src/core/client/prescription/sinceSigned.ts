import type { DecidedTarget } from '#core/client/record/decidedTarget.ts';
import { isAsProposed } from './asProposed.ts';
import type { Target } from './target.ts';

/**
 * Whether today's proposal says otherwise than what a signed target was decided on. What was signed as proposed is held against the proposal
 * of today; an own figure or another guideline's against what was proposed beside it then. Where that is not on record, it counts as
 * another one, and so does the same figure for another reason: the dietitian looks once more. Withheld for want of a result, then for 6.3 mmol/L: true.
 */
export function differsSinceSigned(signed: DecidedTarget, today: Target): boolean {
  // The same figure, or none, for another reason: no result then, 6.3 now.
  if (signed.line !== undefined && signed.line.why !== today.inShort) return true;
  if (signed.from === 'proposal') return !isAsProposed(signed, today);
  const { proposedThen } = signed;
  if (proposedThen === undefined) return true;
  const { item } = signed;
  const then = { item, from: 'proposal' as const, unit: signed.unit, says: '', ...proposedThen };
  return !isAsProposed(then, today);
}
