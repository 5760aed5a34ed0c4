import type { AdditiveRow } from './additiveTable.ts';
import { type LexiconNode, stepTo } from './lexicon.ts';
import type { Word } from './word.ts';

export interface LongestName {
  /** Undefined for words that are known and name no additive: "potassium" alone, "emulsifying salts". */
  readonly row: AdditiveRow | undefined;
  /** The last word, inclusive. */
  readonly to: number;
  readonly repaired: boolean;
}

export const anion =
  /(?:phosphates?|citrates?|lactates?|acetates?|diacetates?|chlorides?|carbonates?|bicarbonates?|sorbates?|benzoates?|sulfates?|sulfites?|bisulfites?|metabisulfites?|nitrites?|nitrates?|ascorbates?|erythorbates?|caseinates?|alginates?|gluconates?|malates?|tartrates?|bitartrates?|inosinates?|guanylates?|glutamates?|propionates?|hydroxides?|iodides?|iodates?|bromates?|silicates?|fumarates?|succinates?|adipates?|aspartates?)$/;

/** The longest spelling of the table that starts at `at`; linear in the longest spelling. */
export function longestName(words: readonly Word[], at: number): LongestName | undefined {
  const { facts } = words[at]!;
  let node = facts.spellings;
  if (node === undefined) return undefined;
  let to = at;
  let repaired = words[at]!.repaired;
  let inBracket = false;
  let found: LongestName | undefined;
  if (node.row !== undefined || node.harmless || facts.isCation) found = { row: node.row, to, repaired };
  for (;;) {
    const next = nextWord(words, to, node, facts.isCation);
    if (next === undefined) return found;
    node = next.node;
    to = next.at;
    repaired ||= words[to]!.repaired;
    // "CALCIUM (PHOSPHATE)", "COCOA (PROCESSED WITH ALKALI)": the closing bracket is part of the name.
    inBracket ||= next.opensBracket;
    if (inBracket && words[to + 1]?.facts.text === ')') to += 1;
    if (node.row !== undefined || node.harmless) found = { row: node.row, to, repaired: repaired || node.isSlip === true };
  }
}

/** The next word of a spelling behind `to`, over an opening bracket, or over a comma that is a slip of the pen. */
function nextWord(
  words: readonly Word[],
  to: number,
  node: LexiconNode,
  startsWithCation: boolean,
): { node: LexiconNode; at: number; opensBracket: boolean } | undefined {
  const sign = words[to + 1]?.facts;
  if (sign === undefined) return undefined;
  if (sign.isWord) return step(words, to + 1, node, false);
  const behind = words[to + 2]?.facts;
  if (sign.text === '(') return behind?.isWord ? step(words, to + 2, node, true) : undefined;
  if (sign.text !== ',' || behind === undefined) return undefined;
  const overComma = node.next.get(',');
  if (overComma !== undefined && stepTo(overComma, behind.text) !== undefined) return { node: overComma, at: to + 1, opensBracket: false };
  if (node.row !== undefined) return undefined;
  // "SODIUM ACID, PYROPHOSPHATE", "SODIUM, ALUMINUM SULFATE": a cation alone is never an ingredient.
  const isSlip = anion.test(behind.text) || (startsWithCation && stepTo(node, behind.text) !== undefined && !isNamed(words, to + 2));
  return isSlip ? step(words, to + 2, node, false) : undefined;
}

/** True when the words from `at` on are a name of their own: "POTASSIUM, SALT" in a list of minerals. */
function isNamed(words: readonly Word[], at: number): boolean {
  return longestName(words, at)?.row !== undefined;
}

function step(words: readonly Word[], at: number, node: LexiconNode, opensBracket: boolean) {
  const next = stepTo(node, words[at]!.facts.text);
  return next === undefined ? undefined : { node: next, at, opensBracket };
}
