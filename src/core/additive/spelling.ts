import measured from '#data/additive-misspellings.json' with { type: 'json' };
import { lexicon } from './lexicon.ts';

/** What an unknown word of a statement stands for: one word, or two that were glued together. */
export interface Repair {
  readonly words: readonly string[];
}

const measuredRepairs: ReadonlyMap<string, string> = new Map(Object.entries(measured.words));

/** True words that lie one letter from an additive word: never "repaired". */
const trueWords: ReadonlySet<string> = new Set(measured.trueWords);

/** First halves of names that are glued together: "sodiumphosphate", "soylecithin". */
const gluedHeads: readonly string[] =
  `monosodium disodium trisodium tetrasodium sodium monopotassium dipotassium tripotassium tetrapotassium
  potassium monocalcium dicalcium tricalcium calcium magnesium ammonium monoammonium diammonium aluminum ferric soy soya sunflower acid`.split(
    /\s+/,
  );

/** Each additive word with one letter taken out leads back to the word: finds all words at distance one without a scan. */
const oneLetterOut: ReadonlyMap<string, readonly string[]> = buildIndex();

const byLetters: ReadonlyMap<string, readonly string[]> = Map.groupBy(lexicon.chemicalWords, lettersOf);

/**
 * Repairs a word that is not in the lexicon; undefined when it is no additive word.
 *
 * `repairWord('phoshpate')` is phosphate, `repairWord('sodiumphosphate')` is sodium, phosphate; `repairWord('carbonated')`
 * is undefined. Distance one (a letter dropped, added, changed, or two swapped) from six letters on; distance two only for
 * words of twelve letters and more, since true names lie two letters apart (disodium, trisodium): shared measurements of
 * real statements, section 10.
 */
export function repairWord(word: string): Repair | undefined {
  const listed = measuredRepairs.get(word);
  if (listed !== undefined) return { words: listed.split(' ') };
  if (word.length < 6 || word.length > 40 || trueWords.has(word)) return undefined;
  if (/\d$/.test(word) && lexicon.vocabulary.has(word.slice(0, -1))) return { words: [word.slice(0, -1)] };
  if (word.endsWith('s') && lexicon.vocabulary.has(word.slice(0, -1))) return undefined;
  for (const head of gluedHeads) {
    if (!word.startsWith(head)) continue;
    const rest = word.slice(head.length);
    if (rest.length >= 6 && lexicon.vocabulary.has(rest)) return { words: [head, rest] };
  }
  // Written by ear: "phosfate", "fosfate".
  const byEar = word.replace(/^fosf|phosf|fosph/, 'phosph');
  if (byEar !== word && lexicon.vocabulary.has(byEar)) return { words: [byEar] };
  const near = withinOne(word) ?? inAnotherOrder(word);
  if (near !== undefined) return { words: [near] };
  if (word.length >= 12) {
    const far = withinTwo(word);
    if (far !== undefined) return { words: [far] };
  }
  return undefined;
}

function withinOne(word: string): string | undefined {
  const candidates = new Set<string>();
  for (const key of keysOf(word))
    for (const candidate of oneLetterOut.get(key) ?? []) if (distance(word, candidate) === 1) candidates.add(candidate);
  if (candidates.size <= 1) return candidates.values().next().value;
  // Two true words are equally near ("sitrate"): the first letter decides, and if it does not, nothing is guessed.
  const sameStart = [...candidates].filter(candidate => candidate[0] === word[0]);
  const singular = sameStart.filter(candidate => !sameStart.includes(candidate.replace(/s$/, '')) || !candidate.endsWith('s'));
  return singular.length === 1 ? singular[0] : undefined;
}

/** The same letters with the same first one, "chorlide": long words have no such double among true ones. */
function inAnotherOrder(word: string): string | undefined {
  const candidates = word.length < 8 ? [] : (byLetters.get(lettersOf(word)) ?? []).filter(candidate => candidate[0] === word[0]);
  return candidates.length === 1 ? candidates[0] : undefined;
}

function withinTwo(word: string): string | undefined {
  let found: string | undefined;
  for (const candidate of lexicon.chemicalWords) {
    if (candidate.length < 11 || Math.abs(candidate.length - word.length) > 2 || distance(word, candidate) > 2) continue;
    if (found !== undefined && found.replace(/s$/, '') !== candidate.replace(/s$/, '')) return undefined;
    found = candidate;
  }
  return found;
}

function lettersOf(word: string): string {
  return [...word].sort().join('');
}

function* keysOf(word: string): Iterable<string> {
  yield word;
  for (let index = 0; index < word.length; index++) yield word.slice(0, index) + word.slice(index + 1);
}

function buildIndex(): Map<string, string[]> {
  const index = new Map<string, string[]>();
  for (const word of lexicon.chemicalWords) {
    for (const key of new Set(keysOf(word))) {
      const entry = index.get(key);
      if (entry === undefined) index.set(key, [word]);
      else entry.push(word);
    }
  }
  return index;
}

/** Edit distance in which two swapped neighbours count as one (optimal string alignment). `distance('phoshpate', 'phosphate')` is 1. */
function distance(a: string, b: string): number {
  const width = b.length + 1;
  let beforeLast = new Uint16Array(width);
  let last = Uint16Array.from({ length: width }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const row = new Uint16Array(width);
    row[0] = i;
    for (let j = 1; j < width; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, beforeLast[j - 2]! + 1);
      row[j] = best;
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
