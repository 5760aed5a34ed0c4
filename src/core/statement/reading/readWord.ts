import type { Token } from '#core/statement/text/token.ts';
import { treatments, wordRole } from '#core/statement/text/vocabulary.ts';
import type { Level } from './level.ts';
import { nameOf } from './nameOf.ts';
import { readMayContain, readOneOrMore, readSolution, readThreshold } from './readClause.ts';
import { readClaim, readContains, readFacility, readPackaging } from './readRemark.ts';
import type { ReadState } from './readState.ts';
import { claimEnd } from './remarks.ts';

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
    readSolution(state, level, token) ||
    readThreshold(state, level, token) ||
    readOneOrMore(state, level) ||
    readMayContain(state, level) ||
    readContains(state, level, token) ||
    readFacility(state, level) ||
    readTitle(state, token) ||
    readTreatment(state, level, token) ||
    readPackaging(state, level, token) ||
    readClaim(state, level)
  );
}

/** "INGREDIENTS CONSIST OF …" and "MADE FROM: …" in front of everything say that a list follows. */
function readTitle(state: ReadState, token: Token): boolean {
  const { tokens, at } = state;
  const second = tokens[1];
  if (at > 0 || second?.kind !== 'word') return false;
  if (token.text === 'ingredients' || token.text === 'ingredient') {
    if (second.text === 'statement' || claimEnd(tokens, at) !== undefined) return false;
    const isSentence = (second.text === 'consist' || second.text === 'consists') && tokens[2]?.text === 'of';
    state.at = isSentence ? 3 : 1;
    return true;
  }
  const isMadeFrom = token.text === 'made' && (second.text === 'from' || second.text === 'of' || second.text === 'with');
  if (!isMadeFrom || tokens[2]?.kind !== 'colon') return false;
  state.at = 3;
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
