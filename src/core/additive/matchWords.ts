import { abbreviationAt, codeAt } from './codes.ts';
import { longestName } from './longestName.ts';
import { type Match, type Matches, rowMatch } from './match.ts';
import { sharedCation, sharedPhosphate, sharedTail } from './sharedHeads.ts';
import { cationStem, organicEster, wordStem } from './stems.ts';
import type { Word } from './word.ts';

/** All names in the words, longest name first, in order. Linear in the words: each look-up is bounded by the longest spelling. */
export function matchWords(words: readonly Word[]): Match[] {
  const matches: Match[] = [];
  let at = 0;
  while (at < words.length) {
    if (words[at]!.facts.mayStart) at = matchAt(words, at, matches);
    else at += 1;
  }
  return matches;
}

/** Adds what is named from `at` on, and gives the word to go on at. */
function matchAt(words: readonly Word[], at: number, into: Match[]): number {
  const found = words[at]!.facts.isKnown ? knownNames(words, at) : undefined;
  if (found !== undefined) {
    into.push(...found.matches);
    return found.next;
  }
  const other = codeAt(words, at) ?? abbreviationAt(words, at) ?? wordStem(words, at);
  if (other === undefined) return at + 1;
  into.push(other);
  return other.to + 1;
}

/** Names that begin with a word of the lexicon; none at all for a word that is known and names no additive. */
function knownNames(words: readonly Word[], at: number): Matches | undefined {
  const shared = sharedTail(words, at) ?? sharedPhosphate(words, at);
  if (shared !== undefined) return shared;
  const name = longestName(words, at);
  if (name === undefined) return undefined;
  const { row, to, repaired } = name;
  if (row === undefined) return only(cationStem(words, at, to), to + 1);
  if (row.id === 'phosphates') {
    const ester = organicEster(words, at, to, repaired);
    if (ester !== undefined) return only(ester, to + 1);
  }
  const others = sharedCation(words, at, to);
  return { matches: [rowMatch(row, at, to, repaired), ...others.matches], next: others.next };
}

function only(match: Match | undefined, next: number): Matches {
  return match === undefined ? { matches: [], next } : { matches: [match], next: match.to + 1 };
}
