import { lexicon } from './lexicon.ts';
import { type Match, rowMatch } from './match.ts';
import type { CodePart, Word } from './word.ts';

const wholeCode = /^(?:e|ins)(\d{3,4}[a-z]{0,4})$/;
const codeNumber = /^\d{3,4}[a-z]{0,4}$/;
const roman = /^[iv]+$/;

export function codePartOf(word: string): CodePart | undefined {
  if (word === 'e' || word === 'ins') return 'letter';
  if (codeNumber.test(word)) return 'number';
  return wholeCode.test(word) ? 'whole' : undefined;
}

/** "E450", "E 451(i)", "INS 322", "emulsifier (322)", "colours (102, 133)". */
export function codeAt(words: readonly Word[], at: number): Match | undefined {
  const { text, codePart } = words[at]!.facts;
  switch (codePart) {
    case 'whole':
      return codeMatch(words, at, at, wholeCode.exec(text)![1]!);
    case 'letter': {
      const next = words[at + 1]?.facts;
      if (next?.codePart !== 'number' || words[at - 1]?.facts.text === 'vitamin') return undefined;
      return codeMatch(words, at, at + 1, next.text);
    }
    case 'number':
      return isInClassBracket(words, at) ? codeMatch(words, at, at, text) : undefined;
    default:
      return undefined;
  }
}

function codeMatch(words: readonly Word[], from: number, to: number, code: string): Match | undefined {
  const number = /^\d+/.exec(code)![0];
  const letters = code.slice(number.length);
  let variant = roman.test(letters) ? letters : '';
  let end = to;
  const inBracket = words[to + 2]?.facts.text ?? '';
  if (variant === '' && words[to + 1]?.facts.text === '(' && roman.test(inBracket) && words[to + 3]?.facts.text === ')') {
    variant = inBracket;
    end = to + 3;
  }
  const { byIns } = lexicon;
  const row =
    byIns.get(variant === '' ? number : `${number}(${variant})`) ??
    byIns.get(number) ??
    byIns.get(`${number}(i)`) ??
    byIns.get(`${number}(ii)`);
  return row === undefined ? undefined : rowMatch(row, from, end);
}

const classWord =
  /^(?:emulsifiers?|emulsifying|stabili[sz]ers?|acids?|acidity|regulators?|acidulants?|preservatives?|antioxidants?|thickeners?|agents?|salts?|sweeteners?|colou?rs?|enhancers?|humectants?|starch|gum|firming|anticaking)$/;

/** A class word stands at most so many words before a code in its bracket. */
const longestCodeList = 40;

/**
 * A bare number is a code only as an entry of its own in a bracket that follows a class word, also beside names: "EMULSIFIERS (SOY LECITHIN, 450)". "BUTTER (295)" is none, and
 * neither is "ACIDS (450 MG)".
 */
function isInClassBracket(words: readonly Word[], at: number): boolean {
  if (!endsEntry(words[at + 1]) || !(words[at - 1]?.facts.text === '(' || endsEntry(words[at - 1]))) return false;
  let deeper = 0;
  for (let i = at - 1; i >= 0 && at - i < longestCodeList; i--) {
    const { text } = words[i]!.facts;
    if (text === ')') deeper += 1;
    if (text !== '(') continue;
    if (deeper === 0) return classWord.test(words[i - 1]?.facts.text ?? '');
    deeper -= 1;
  }
  return false;
}

const betweenEntries: ReadonlySet<string> = new Set([',', '/', '(', ')', 'and', 'or', 'and/or']);

/** What stands between two entries of a bracket; another code does where the comma was left out. */
function endsEntry(word: Word | undefined): boolean {
  return word === undefined || betweenEntries.has(word.facts.text) || word.facts.codePart !== undefined;
}

/** "STPP", and "MCP" where another additive stands beside it. */
export function abbreviationAt(words: readonly Word[], at: number): Match | undefined {
  const { abbreviation } = words[at]!.facts;
  return abbreviation === undefined ? undefined : rowMatch(abbreviation.row, at, at, false, false, abbreviation.needsNeighbor);
}
