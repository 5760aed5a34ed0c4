import type { Token } from '#core/statement/text/token.ts';
import type { Draft } from './draft.ts';

/** A bracket that stands in an item, with what was read inside it. */
export interface Bracket {
  readonly drafts: Draft[];
  /** The tokens inside, end exclusive; the closing bracket is one of them when there was one. */
  readonly from: number;
  readonly to: number;
  /** Where it stands in the text, brackets included. */
  readonly start: number;
  readonly end: number;
  /** How many words of the item stand before it. */
  readonly afterWords: number;
}

/** The words, numbers and separators inside, without marks and inner brackets. */
export function insideOf(tokens: readonly Token[], bracket: Bracket): Token[] {
  const inside: Token[] = [];
  for (let index = bracket.from; index < bracket.to; index++) {
    const token = tokens[index]!;
    if (token.kind !== 'open' && token.kind !== 'close' && token.kind !== 'mark') inside.push(token);
  }
  return inside;
}

/**
 * True for a bracket that lists parts, which is told from its first tokens in nearly all cases: it holds a separator and
 * opens with no word that a note with separators opens with ("to protect flavor, color", "contains milk, soy").
 */
export function listsParts(tokens: readonly Token[], bracket: Bracket): boolean {
  if (bracket.drafts.length < 2) return false;
  const first = tokens[bracket.from]!;
  if (first.kind !== 'word' || first.text === 'to' || first.text === 'contains' || first.text === 'contain') return false;
  for (let index = bracket.from + 1; index < bracket.to; index++) {
    const { kind } = tokens[index]!;
    if (kind === 'comma' || kind === 'semicolon') return true;
  }
  return false;
}
