import type { Token } from '#core/statement/text/token.ts';
import type { Remark } from '../statement.ts';
import { GrowingItem } from './item.ts';
import type { Level } from './level.ts';
import type { ReadState } from './readState.ts';
import { addRemark, allergenRunEnd, claimEnd, facilityEnd, phraseEnd } from './remarks.ts';

/**
 * "contains: milk, soy" is an allergen line; before anything else "contains" is only a word to pass over. True when the
 * words were taken; so do all readers here.
 */
export function readContains(state: ReadState, level: Level, token: Token): boolean {
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

/** "made in a facility that processes wheat" */
export function readFacility(state: ReadState, level: Level): boolean {
  const end = level.item.wordCount > 0 ? undefined : facilityEnd(state.tokens, state.at);
  if (end === undefined) return false;
  takeRemark(state, level, 'facility', end);
  return true;
}

/** "no preservatives added" */
export function readClaim(state: ReadState, level: Level): boolean {
  const end = level.item.wordCount > 0 ? undefined : claimEnd(state.tokens, state.at);
  if (end === undefined || end === state.at) return false;
  takeRemark(state, level, 'claim', end);
  return true;
}

/** "BHT ADDED TO PACKAGING MATERIAL": what stands before it is not in the food. */
export function readPackaging(state: ReadState, level: Level, token: Token): boolean {
  const { tokens, at } = state;
  const { item } = level;
  if (token.text !== 'added' || tokens[at + 1]?.text !== 'to' || item.wordCount === 0 || item.brackets.length > 0) return false;
  const target = tokens[at + 2]?.text === 'the' ? tokens[at + 3] : tokens[at + 2];
  if (!target?.text.startsWith('packag')) return false;
  level.item = new GrowingItem();
  state.at = item.first;
  addRemark(state, 'claim', phraseEnd(tokens, at));
  return true;
}

/** A remark, but "(not from milk)" as a whole bracket is a note of its ingredient and kept there. */
function takeRemark(state: ReadState, level: Level, kind: Remark['kind'], end: number): void {
  if (fillsBracket(state, level, end)) state.at = end;
  else addRemark(state, kind, end);
}

/** True when what goes on to `end` is all that its bracket holds. */
function fillsBracket({ tokens, at }: ReadState, { opened }: Level, end: number): boolean {
  const next = tokens[end]?.kind === 'period' ? tokens[end + 1] : tokens[end];
  return opened !== undefined && tokens[at - 1] === opened && (next === undefined || next.kind === 'close');
}
