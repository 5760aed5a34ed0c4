import { mayContainAt, oneOrMoreAt, solutionAt } from './clauses.ts';
import type { Level, ReadState } from './level.ts';
import { nameOf } from './nameOf.ts';
import { addRemark, allergenRunEnd, claimEnd, facilityEnd } from './remarks.ts';
import { thresholdAt } from './threshold.ts';
import type { Token } from './token.ts';
import { treatments, wordRole } from './vocabulary.ts';

/** The law allows these and no others: 21 CFR 101.4(a)(2). */
const allowedThresholds: ReadonlySet<number> = new Set([2, 1.5, 1, 0.5]);

/** Reads a word or sign inside an item: as the opening of a clause, a treatment or a remark, or as part of a name. */
export function readWord(state: ReadState, level: Level, token: Token): void {
  if ((token.role & wordRole.opens) !== 0 && readOpening(state, level, token)) return;
  if (level.item.isEndedBy(token)) {
    state.report('separator-missing', token.start, token.end, 'a comma before it');
    level.finishItem();
  }
  level.item.addWord(state.text, state.tokens, state.at);
  state.at += 1;
}

/** Each reader says whether it took the words; the order tells which wording wins. */
function readOpening(state: ReadState, level: Level, token: Token): boolean {
  return (
    readThreshold(state, level, token) ||
    readSolution(state, level, token) ||
    readOneOrMore(state, level) ||
    readMayContain(state, level) ||
    readContains(state, level, token) ||
    readTreatment(state, level, token) ||
    readClaim(state, level) ||
    readFacility(state, level)
  );
}

function readThreshold(state: ReadState, level: Level, token: Token): boolean {
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

function readSolution(state: ReadState, level: Level, token: Token): boolean {
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

function readOneOrMore(state: ReadState, level: Level): boolean {
  const end = oneOrMoreAt(state.tokens, state.at);
  if (end === undefined) return false;
  level.finishItem();
  level.presence = 'alternative';
  state.at = end;
  return true;
}

/** "may contain": of allergens a remark, of anything else optional ingredients. */
function readMayContain(state: ReadState, level: Level): boolean {
  const end = mayContainAt(state.tokens, state.at);
  if (end === undefined) return false;
  level.finishItem();
  const allergens = allergenRunEnd(state.tokens, end);
  if (allergens !== undefined) addRemark(state, 'may-contain-allergens', allergens);
  else {
    state.at = end;
    level.presence = 'may-contain';
    level.closeGroup();
  }
  return true;
}

/** "contains: milk, soy" is an allergen line; before anything else "contains" is only a word to pass over. */
function readContains(state: ReadState, level: Level, token: Token): boolean {
  if (token.text !== 'contains' && token.text !== 'contain') return false;
  const { tokens, at } = state;
  const from = tokens[at + 1]?.kind === 'colon' ? at + 2 : at + 1;
  const allergens = allergenRunEnd(tokens, from);
  if (allergens !== undefined) {
    const isNote = fillsBracket(state, level, allergens);
    level.finishItem(level.depth === 0);
    if (isNote) state.at = allergens;
    else addRemark(state, 'allergens', allergens);
    return true;
  }
  if (level.item.wordCount > 0 || claimEnd(tokens, at) !== undefined) return false;
  state.at = from;
  return true;
}

/**
 * "COOKED IN VEGETABLE OIL", "TOPPED WITH SESAME SEEDS": a treatment heads its list without a colon. Inside an item
 * only a cure is taken so, since "cheese made with skim milk" is a name.
 */
function readTreatment(state: ReadState, level: Level, token: Token): boolean {
  const { tokens, at } = state;
  if (!treatments.has(token.text) || (level.item.wordCount > 0 && token.text !== 'cured')) return false;
  const joint = tokens[at + 1]?.text;
  if (joint !== 'with' && joint !== 'in' && joint !== 'from') return false;
  const end = tokens[at + 2]?.kind === 'colon' ? at + 3 : at + 2;
  const next = tokens[end]?.kind;
  if (next !== 'word' && next !== 'open') return false;
  level.finishItem();
  const name = nameOf(state.text, tokens.slice(at, at + 2));
  // "glazed with (honey, salt)" ends with its bracket, "glazed with honey, salt." with its sentence.
  level.openGroupInClause({ name, start: token.start, end: tokens[end - 1]!.end, takesOne: next === 'open', outOfOrder: true });
  state.at = end;
  return true;
}

function readClaim(state: ReadState, level: Level): boolean {
  const end = level.item.wordCount > 0 ? undefined : claimEnd(state.tokens, state.at);
  if (end === undefined || end === state.at) return false;
  // "(not from milk)" as a whole bracket is a note of its ingredient, kept there.
  if (fillsBracket(state, level, end)) state.at = end;
  else addRemark(state, 'claim', end);
  return true;
}

function readFacility(state: ReadState, level: Level): boolean {
  const end = level.item.wordCount > 0 ? undefined : facilityEnd(state.tokens, state.at);
  if (end === undefined) return false;
  addRemark(state, 'facility', end);
  return true;
}

/** True when what goes on to `end` is all that its bracket holds. */
function fillsBracket({ tokens, at }: ReadState, { opened }: Level, end: number): boolean {
  const next = tokens[end]?.kind === 'period' ? tokens[end + 1] : tokens[end];
  return opened !== undefined && tokens[at - 1] === opened && (next === undefined || next.kind === 'close');
}
