import type { Token } from '#core/statement/text/token.ts';
import { mayContainAt, oneOrMoreAt, solutionAt } from './clauses.ts';
import type { Level } from './level.ts';
import type { ReadState } from './readState.ts';
import { addRemark, allergenRunEnd } from './remarks.ts';
import { thresholdAt } from './threshold.ts';

/** The law allows these and no others: 21 CFR 101.4(a)(2). */
const allowedThresholds: ReadonlySet<number> = new Set([2, 1.5, 1, 0.5]);

/** "contains 2% or less of": holds for what follows on the level. True when the words were taken; so do all readers here. */
export function readThreshold(state: ReadState, level: Level, token: Token): boolean {
  const { tokens, report } = state;
  const clause = thresholdAt(tokens, state.at);
  if (clause === undefined) return false;
  level.finishItem();
  const clauseEnd = tokens[clause.end - 1]!.end;
  if (clause.damaged) report('threshold-damaged', token.start, clauseEnd, 'a percentage such as "2% or less of"');
  if (!allowedThresholds.has(clause.atMostPercent))
    report('threshold-not-allowed', token.start, clauseEnd, '2, 1.5, 1 or 0.5 percent (21 CFR 101.4(a)(2))');
  state.at = clause.end;
  if (standsAlone(tokens, clause.end)) level.limitLast(clause.atMostPercent);
  else {
    level.threshold = clause.atMostPercent;
    level.closeGroup();
  }
  readOneOrMore(state, level);
  return true;
}

/** "SALT (LESS THAN 2%)", "salt less than 2%.": nothing follows the clause, so it speaks of what stands before it. */
function standsAlone(tokens: readonly Token[], end: number): boolean {
  const next = tokens[end]?.kind;
  if (next !== 'comma') return next === undefined || next === 'close' || next === 'period';
  const last = tokens[end - 1]!;
  return last.kind !== 'colon' && last.text !== 'of' && last.text !== 'following';
}

/** "contains up to 12% of a solution of": a group of what was injected. */
export function readSolution(state: ReadState, level: Level, token: Token): boolean {
  const solution = solutionAt(state.tokens, state.at);
  if (solution === undefined) return false;
  level.finishItem();
  const name = `up to ${solution.percent}% of a solution`;
  const end = state.tokens[solution.end - 1]!.end;
  const group = level.openGroup({ name, start: token.start, end, takesOne: false, outOfOrder: false });
  group.solutionPercent = solution.percent;
  state.at = solution.end;
  return true;
}

/** "one or more of": alternatives to the end of the sentence. */
export function readOneOrMore(state: ReadState, level: Level): boolean {
  const end = oneOrMoreAt(state.tokens, state.at);
  if (end === undefined) return false;
  level.finishItem();
  level.presence = 'alternative';
  level.awaitsChoiceName = true;
  state.at = end;
  return true;
}

/** "may contain": of allergens a remark, of anything else optional ingredients to the end of the sentence. */
export function readMayContain(state: ReadState, level: Level): boolean {
  const end = mayContainAt(state.tokens, state.at);
  if (end === undefined) return false;
  level.finishItem();
  const allergens = allergenRunEnd(state.tokens, end);
  if (allergens !== undefined) {
    addRemark(state, 'may-contain-allergens', allergens);
    return true;
  }
  level.closeGroup();
  level.presence = 'may-contain';
  level.awaitsChoiceName = true;
  state.at = end;
  return true;
}
