import type { Token } from '#core/statement/text/token.ts';
import { lexicon } from './lexicon.ts';
import type { Word, WordFacts } from './word.ts';
import { factsOf, separatorFacts } from './wordFacts.ts';

const closing = separatorFacts(')');
/** Nobody asks where these stand, so that all statements share them. A closing bracket may be the end of a name. */
const comma = separatorWord(',');
const opening = separatorWord('(');
const clauseEnd = separatorWord('.');

function separatorWord(text: string): Word {
  return { facts: separatorFacts(text), start: 0, end: 0, repaired: false };
}

/** Signs that read as words. Separators are no words; marks and dashes stand inside names: "5'-ribonucleotides", "sodium* phosphate". */
const slash = factsOf('/');
const and = factsOf('and');

/**
 * Turns tokens into words for the lexicon. "TRI-CALCIUM" and "POLY PHOSPHATE" become one word, "SODIUMPHOSPHATE" two,
 * "PHOSHPATE" is mended, "METABISUL- FITE" is joined over its line break.
 */
export function wordsOf(tokens: readonly Token[]): Word[] {
  const words: Word[] = [];
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index]!;
    switch (token.kind) {
      case 'word':
        if (addWord(words, token, tokens[index + 1])) index += 1;
        break;
      case 'number':
        words.push(wordAt(factsOf(token.text), token.start, token.end, false));
        break;
      case 'comma':
        words.push(comma);
        break;
      case 'open':
        words.push(opening);
        break;
      case 'close':
        words.push(wordAt(closing, token.start, token.end, false));
        break;
      case 'slash':
        words.push(wordAt(slash, token.start, token.end, false));
        break;
      case 'ampersand':
        words.push(wordAt(and, token.start, token.end, false));
        break;
      case 'period':
      case 'semicolon':
      case 'colon':
        words.push(clauseEnd);
        break;
      default:
    }
  }
  return words;
}

function wordAt(facts: WordFacts, start: number, end: number, repaired: boolean): Word {
  return { facts, start, end, repaired };
}

/** Adds a word, mended where it must be; true when it took the next one with it. */
function addWord(words: Word[], token: Token, next: Token | undefined): boolean {
  const facts = factsOf(token.text);
  if (next?.kind === 'word' && (token.hyphenAfter || facts.isCountPrefix)) {
    const joined = joinedWord(facts, token, next);
    if (joined !== undefined) {
      words.push(wordAt(joined.facts, token.start, next.end, joined.repaired));
      return true;
    }
  }
  if (facts.repair === undefined) words.push(wordAt(facts, token.start, token.end, false));
  else for (const repaired of facts.repair) words.push(wordAt(repaired, token.start, token.end, true));
  return false;
}

/** "tri-calcium", "poly phosphate", "phos- phate". */
function joinedWord(facts: WordFacts, first: Token, second: Token): { facts: WordFacts; repaired: boolean } | undefined {
  const { vocabulary } = lexicon;
  const text = first.text + second.text;
  const touches = second.start - first.end <= 1;
  const isWhole = vocabulary.has(text);
  if (facts.isCountPrefix && (touches || !first.hyphenAfter) && isWhole) return { facts: factsOf(text), repaired: false };
  if (!first.hyphenAfter) return undefined;
  if (isWhole && !(vocabulary.has(first.text) && vocabulary.has(second.text)))
    return { facts: factsOf(text), repaired: !facts.isCountPrefix && !touches };
  if (first.text.length < 3 || vocabulary.has(first.text) || vocabulary.has(second.text)) return undefined;
  const repair = factsOf(text).repair;
  return repair?.length === 1 ? { facts: repair[0]!, repaired: true } : undefined;
}
