import type { Token } from '#core/statement/tokenize.ts';
import { lexicon } from './lexicon.ts';
import { repairWord } from './spelling.ts';

/** What the finder walks over: the words of a statement, spelling mended, and the separators between them. */
export interface Word {
  /** A word, a number, or a separator: "," for comma, "(" and ")" for brackets of any kind, "." for what ends a clause. */
  readonly text: string;
  readonly isWord: boolean;
  readonly start: number;
  readonly end: number;
  /** A word of the lexicon, as printed or mended. */
  readonly isKnown: boolean;
  /** The spelling was mended: the finding says "misspelled". */
  readonly repaired: boolean;
}

const countPrefixes = new Set([
  'mono',
  'di',
  'tri',
  'tetra',
  'penta',
  'hexa',
  'hexameta',
  'meta',
  'pyro',
  'poly',
  'tripoly',
  'ortho',
  'bi',
  'sesqui',
]);

/**
 * Turns tokens into words for the lexicon. "TRI-CALCIUM" and "POLY PHOSPHATE" become one word, "SODIUMPHOSPHATE" two,
 * "PHOSHPATE" is mended, "METABISUL- FITE" is joined over its line break.
 */
export function wordsOf(tokens: readonly Token[]): Word[] {
  const words: Word[] = [];
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index]!;
    switch (token.kind) {
      case 'word': {
        const next = tokens[index + 1];
        if (next !== undefined && next.kind === 'word' && (token.hyphenAfter || countPrefixes.has(token.text))) {
          const joined = joinedWord(token, next);
          if (joined !== undefined) {
            words.push({ text: joined.text, isWord: true, isKnown: true, start: token.start, end: next.end, repaired: joined.repaired });
            index += 1;
            continue;
          }
        }
        if (isKnownWord(token.text)) {
          words.push({ text: token.text, isWord: true, isKnown: true, start: token.start, end: token.end, repaired: false });
          continue;
        }
        const repair = repairWord(token.text);
        if (repair === undefined)
          words.push({ text: token.text, isWord: true, isKnown: false, start: token.start, end: token.end, repaired: false });
        else
          for (const text of repair.words)
            words.push({ text, isWord: true, isKnown: true, start: token.start, end: token.end, repaired: true });
        continue;
      }
      case 'number':
        words.push({ text: token.text, isWord: true, isKnown: false, start: token.start, end: token.end, repaired: false });
        continue;
      case 'comma':
        words.push(separator(',', token));
        continue;
      case 'open':
        words.push(separator('(', token));
        continue;
      case 'close':
        words.push(separator(')', token));
        continue;
      case 'slash':
        words.push({ text: '/', isWord: true, isKnown: false, start: token.start, end: token.end, repaired: false });
        continue;
      case 'ampersand':
        words.push({ text: 'and', isWord: true, isKnown: false, start: token.start, end: token.end, repaired: false });
        continue;
      case 'period':
      case 'semicolon':
      case 'colon':
        words.push(separator('.', token));
        continue;
      default:
      // marks and dashes stand inside names: "5'-ribonucleotides", "sodium* phosphate"
    }
  }
  return words;
}

/** Plurals of a lexicon word are known as well: "sodium citrates". */
function isKnownWord(text: string): boolean {
  return lexicon.vocabulary.has(text) || (text.length > 4 && text.endsWith('s') && lexicon.vocabulary.has(text.slice(0, -1)));
}

function separator(text: string, token: Token): Word {
  return { text, isWord: false, isKnown: false, start: token.start, end: token.end, repaired: false };
}

function joinedWord(first: Token, second: Token): { text: string; repaired: boolean } | undefined {
  const text = first.text + second.text;
  const touches = second.start - first.end <= 1;
  if (countPrefixes.has(first.text) && (touches || !first.hyphenAfter) && lexicon.vocabulary.has(text)) return { text, repaired: false };
  if (!first.hyphenAfter) return undefined;
  if (lexicon.vocabulary.has(text) && !(lexicon.vocabulary.has(first.text) && lexicon.vocabulary.has(second.text))) {
    return { text, repaired: !countPrefixes.has(first.text) && !touches };
  }
  if (first.text.length < 3 || lexicon.vocabulary.has(first.text) || lexicon.vocabulary.has(second.text)) return undefined;
  const repair = repairWord(text);
  return repair !== undefined && repair.words.length === 1 ? { text: repair.words[0]!, repaired: true } : undefined;
}
