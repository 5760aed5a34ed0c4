import { codePartOf } from './codes.ts';
import { lexicon, stepTo } from './lexicon.ts';
import { repairWord } from './spelling.ts';
import { stemOf } from './stems.ts';
import type { WordFacts } from './word.ts';

const metals = ['sodium', 'potassium', 'calcium', 'magnesium', 'ammonium', 'aluminum', 'aluminium'];
const cations: ReadonlySet<string> = new Set(
  ['', 'mono', 'di', 'tri', 'tetra', 'penta'].flatMap(count => metals.map(metal => count + metal)),
);
const counts: ReadonlySet<string> = new Set(['mono', 'di', 'tri', 'tetra']);
const countPrefixes: ReadonlySet<string> = new Set(
  'mono di tri tetra penta hexa hexameta meta pyro poly tripoly ortho bi sesqui'.split(' '),
);

/**
 * The facts of a word in lower case. Computed once and kept: the words of real statements are a few thousand, and the
 * bound keeps hostile text from growing the store.
 */
export function factsOf(text: string): WordFacts {
  const known = kept.get(text);
  if (known !== undefined) return known;
  if (text.length > longestKept) return computeFacts(text);
  if (kept.size >= mostKept) kept.clear();
  const facts = computeFacts(ownText(text));
  kept.set(facts.text, facts);
  return facts;
}
const mostKept = 20_000;
const longestKept = 40;
const kept = new Map<string, WordFacts>();

/** A slice may keep the whole statement that it was cut from alive; a text put together again keeps only itself. */
function ownText(slice: string): string {
  return slice.split('').join('');
}

function computeFacts(text: string): WordFacts {
  const { vocabulary } = lexicon;
  const isKnown = vocabulary.has(text) || (text.length > 4 && text.endsWith('s') && vocabulary.has(text.slice(0, -1)));
  const spellings = isKnown ? stepTo(lexicon.root, text) : undefined;
  const isCation = cations.has(text);
  const isCount = counts.has(text);
  const isCountPrefix = countPrefixes.has(text);
  const codePart = codePartOf(text);
  const abbreviation = abbreviationOf(text);
  const stem = stemOf(text);
  const startsName = isKnown && (spellings !== undefined || isCation || isCount);
  const mayStart = startsName || codePart !== undefined || abbreviation !== undefined || stem !== undefined;
  const repair = isKnown ? undefined : repairWord(text)?.words.map(factsOf);
  return { text, isWord: true, isKnown, spellings, isCation, isCount, isCountPrefix, codePart, abbreviation, stem, mayStart, repair };
}

function abbreviationOf(text: string): WordFacts['abbreviation'] {
  const clear = lexicon.clear.get(text);
  if (clear !== undefined) return { row: clear, needsNeighbor: false };
  const other = lexicon.ambiguous.get(text);
  return other === undefined ? undefined : { row: other, needsNeighbor: true };
}

/** A separator: nothing can start with it, and it ends every name that does not allow for it. */
export function separatorFacts(text: string): WordFacts {
  return {
    text,
    isWord: false,
    isKnown: false,
    spellings: undefined,
    isCation: false,
    isCount: false,
    isCountPrefix: false,
    codePart: undefined,
    abbreviation: undefined,
    stem: undefined,
    mayStart: false,
    repair: undefined,
  };
}
