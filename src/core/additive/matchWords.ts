import type { AdditiveRow } from './additiveTable.ts';
import { type LexiconNode, lexicon } from './lexicon.ts';
import type { Word } from './words.ts';

/** A stretch of words that names a row of the table, or a name that only its chemical stem tells. */
export interface Match {
  readonly row: AdditiveRow | undefined;
  /** For a name that is not in the table: the words as read. */
  readonly stemName?: string;
  /** What the stem tells, for a name that is not in the table. */
  readonly stem?: 'phosphate' | 'phosphate-organic' | 'phosphate-unread' | 'potassium' | 'sodium';
  /** First and last word, inclusive. */
  readonly from: number;
  readonly to: number;
  readonly repaired: boolean;
  /** One of several that share a head or tail joined by "or". */
  readonly alternative: boolean;
  /** An abbreviation that means other things too: stands only beside another additive. */
  readonly needsNeighbor?: boolean;
}

const cations: ReadonlySet<string> = new Set(
  ['', 'mono', 'di', 'tri', 'tetra', 'penta'].flatMap(count =>
    ['sodium', 'potassium', 'calcium', 'magnesium', 'ammonium', 'aluminum', 'aluminium'].map(metal => count + metal),
  ),
);
const counts: ReadonlySet<string> = new Set(['mono', 'di', 'tri', 'tetra']);
const anion =
  /(?:phosphates?|citrates?|lactates?|acetates?|diacetates?|chlorides?|carbonates?|bicarbonates?|sorbates?|benzoates?|sulfates?|sulfites?|bisulfites?|metabisulfites?|nitrites?|nitrates?|ascorbates?|erythorbates?|caseinates?|alginates?|gluconates?|malates?|tartrates?|bitartrates?|inosinates?|guanylates?|glutamates?|propionates?|hydroxides?|iodides?|iodates?|bromates?|silicates?|fumarates?|succinates?|adipates?|aspartates?)$/;
const joints = new Set(['and', 'or', 'and/or', '/', 'plus']);
const phosphatePrefixes = new Set([
  'mono',
  'di',
  'tri',
  'tetra',
  'hexameta',
  'tripoly',
  'poly',
  'pyro',
  'ortho',
  'meta',
  'acid',
  'trimeta',
]);
/** A bare "… phosphate" behind one of these is an organic ester, not an added salt. */
const organicHeads = new Set([
  'creatine',
  'inositol',
  'fructose',
  'glucose',
  'adenosine',
  'starch',
  'distarch',
  'choline',
  'ascorbyl',
  'tocopheryl',
  'riboflavin',
  'pyridoxal',
  'pyridoxine',
  'thiamine',
  'thiamin',
  'uridine',
  'cytidine',
  'guanosine',
  'nicotinamide',
  'triose',
  'glycerol',
]);

/** All names in the words, longest name first, in order. Linear in the words: each look-up is bounded by the longest spelling. */
export function matchWords(words: readonly Word[]): Match[] {
  const matches: Match[] = [];
  let at = 0;
  while (at < words.length) {
    const word = words[at]!;
    if (!word.isWord) {
      at += 1;
      continue;
    }
    const shared = word.isKnown ? (sharedCations(words, at) ?? sharedPrefixes(words, at)) : undefined;
    if (shared !== undefined) {
      matches.push(...shared.matches);
      at = shared.next;
      continue;
    }
    const found = word.isKnown ? longest(words, at) : undefined;
    if (found !== undefined) {
      if (found.row !== undefined) {
        const organic = found.row.id === 'phosphates' && organicHeads.has(words[at - 1]?.text ?? '');
        if (organic)
          matches.push({
            row: undefined,
            stem: 'phosphate-organic',
            stemName: `${words[at - 1]!.text} ${word.text}`,
            from: at - 1,
            to: found.to,
            repaired: found.repaired,
            alternative: false,
          });
        else {
          matches.push({ row: found.row, from: at, to: found.to, repaired: found.repaired, alternative: false });
          at = sharedAnions(words, at, found.to, matches);
          continue;
        }
      } else {
        const stem = cationStem(words, at, found.to);
        if (stem !== undefined) {
          matches.push(stem);
          at = stem.to + 1;
          continue;
        }
      }
      at = found.to + 1;
      continue;
    }
    const other = codeNumber(words, at) ?? abbreviation(words, at) ?? wordStem(words, at);
    if (other !== undefined) {
      matches.push(other);
      at = other.to + 1;
      continue;
    }
    at += 1;
  }
  return matches;
}

interface Found {
  readonly row: AdditiveRow | undefined;
  readonly to: number;
  readonly repaired: boolean;
}

/** The longest spelling that starts at `at`; `row` is undefined for a phrase that is known and harmless ("potassium" alone). */
function longest(words: readonly Word[], at: number): Found | undefined {
  let node = step(lexicon.root, words[at]!.text);
  if (node === undefined) return undefined;
  let found: Found | undefined;
  let repaired = words[at]!.repaired;
  let i = at;
  let inBracket = false;
  if (node.row !== undefined || node.harmless || cations.has(words[at]!.text)) found = { row: node.row, to: i, repaired };
  for (;;) {
    let j = i + 1;
    let word: Word | undefined = words[j];
    if (word === undefined) break;
    let next: LexiconNode | undefined;
    if (word.isWord) next = word.text === '/' ? undefined : step(node, word.text);
    else if (word.text === ',') {
      next = node.next.get(',');
      // "SODIUM ACID, PYROPHOSPHATE": a cation alone is never an ingredient, so the comma is a slip of the pen.
      if (
        (next === undefined || step(next, words[j + 1]?.text ?? '') === undefined) &&
        node.row === undefined &&
        anion.test(words[j + 1]?.text ?? '')
      ) {
        j += 1;
        word = words[j]!;
        next = step(node, word.text);
      }
    } else if (word.text === '(') {
      // "CALCIUM (PHOSPHATE)", "COCOA (PROCESSED WITH ALKALI)"
      inBracket = true;
      j += 1;
      word = words[j];
      if (word?.isWord) next = step(node, word.text);
    }
    if (next === undefined || word === undefined) break;
    node = next;
    repaired ||= word.repaired;
    i = j;
    if (inBracket && words[i + 1]?.text === ')') i += 1;
    if (node.row !== undefined || node.harmless) found = { row: node.row, to: i, repaired };
  }
  return found;
}

function step(node: LexiconNode, word: string): LexiconNode | undefined {
  return node.next.get(word) ?? (word.length > 4 && word.endsWith('s') ? node.next.get(word.slice(0, -1)) : undefined);
}

/** The row that exactly these words name. */
function rowOf(path: readonly string[]): AdditiveRow | undefined {
  let node: LexiconNode | undefined = lexicon.root;
  for (const word of path) {
    node = step(node, word);
    if (node === undefined) return undefined;
  }
  return node.row;
}

/** "potassium and sodium lactate", "tri- and dicalcium phosphate": several cations share what follows the last. */
function sharedCations(words: readonly Word[], at: number): { matches: Match[]; next: number } | undefined {
  const first = words[at]!.text;
  const isPrefix = counts.has(first);
  if (!isPrefix && !cations.has(first)) return undefined;
  const heads: number[] = [at];
  let i = at + 1;
  let alternative = false;
  for (;;) {
    let joint = i;
    while (joint < words.length && joint - i < 2 && (words[joint]!.text === ',' || joints.has(words[joint]!.text))) {
      if (words[joint]!.text !== 'and' && words[joint]!.text !== ',') alternative = true;
      joint += 1;
    }
    const candidate = words[joint];
    if (joint === i || candidate === undefined || !(cations.has(candidate.text) || (isPrefix && counts.has(candidate.text)))) break;
    heads.push(joint);
    i = joint + 1;
  }
  if (heads.length < 2) return undefined;
  const last = heads.at(-1)!;
  const tail = longest(words, last);
  if (tail === undefined || tail.row === undefined || tail.to === last) return undefined;
  const rest = words.slice(last + 1, tail.to + 1).map(word => word.text);
  const lastCation = words[last]!.text.replace(/^(?:mono|di|tri|tetra)/, '');
  const matches: Match[] = [];
  for (const head of heads) {
    const text = words[head]!.text;
    const name = cations.has(text) ? text : text + lastCation;
    const row = rowOf([name, ...rest]);
    // The list of names would be wrong if one of them were none: "calcium, sodium phosphate" in a mineral list.
    if (row === undefined) continue;
    matches.push({ row, from: head, to: tail.to, repaired: tail.repaired, alternative });
  }
  if (matches.length < 2) return undefined;
  return { matches, next: tail.to + 1 };
}

/** "sodium (mono, hexameta, and/or tripoly) phosphate", "sodium di-, tri-, and polyphosphate". */
function sharedPrefixes(words: readonly Word[], at: number): { matches: Match[]; next: number } | undefined {
  if (!cations.has(words[at]!.text)) return undefined;
  const prefixes: string[] = [];
  let alternative = false;
  let i = at + 1;
  for (; i < words.length && i - at < 14; i++) {
    const text = words[i]!.text;
    if (phosphatePrefixes.has(text)) prefixes.push(text);
    else if (text === 'or' || text === 'and/or' || text === '/') alternative = true;
    else if (text !== ',' && text !== 'and' && text !== '(' && text !== ')') break;
  }
  const end = words[i]?.text ?? '';
  if (prefixes.length < 1 || !/^(?:[a-z]*phosphates?)$/.test(end)) return undefined;
  const base = end.replace(/s$/, '');
  // "sodium acid, pyrophosphate" is one name with a slip of the pen, "sodium tri polyphosphate" one name.
  if (prefixes.length === 1 && (i === at + 2 || prefixes[0] === 'acid')) return undefined;
  const matches: Match[] = [];
  const name = words[at]!.text;
  const names = prefixes.map(prefix =>
    [rowOf([name, `${prefix}phosphate`]), rowOf([name, prefix, 'phosphate']), rowOf([`${prefix}${name}`, 'phosphate'])].find(
      row => row !== undefined,
    ),
  );
  if (base !== 'phosphate') names.push(rowOf([name, base]));
  for (const row of names)
    if (row !== undefined && !matches.some(match => match.row === row))
      matches.push({ row, from: at, to: i, repaired: false, alternative });
  return matches.length > 0 ? { matches, next: i + 1 } : undefined;
}

/** "sodium phosphate and polyphosphate", "disodium inosinate & guanylate": one cation, two anions. Gives where to go on. */
function sharedAnions(words: readonly Word[], from: number, to: number, matches: Match[]): number {
  const head = words[from]!.text;
  if (!cations.has(head) || to === from) return to + 1;
  let i = to + 1;
  for (;;) {
    const joint = words[i]?.text ?? '';
    const second = words[i + 1];
    if (!joints.has(joint) || second === undefined || !anion.test(second.text)) return i;
    const row = rowOf([head, second.text]);
    if (row === undefined) return i;
    matches.push({ row, from: i + 1, to: i + 1, repaired: second.repaired, alternative: joint !== 'and' && joint !== 'plus' });
    i += 2;
  }
}

/** "potassium pyroglutamate": a cation with an acid's name that the table does not hold. */
function cationStem(words: readonly Word[], at: number, to: number): Match | undefined {
  const base = /(?:sodium|potassium)$/.exec(words[at]!.text)?.[0];
  const next = words[to + 1];
  if (base === undefined || next === undefined || !next.isWord) return undefined;
  if (!/(?:ates?|ides?|ites?)$/.test(next.text) || next.text.length < 6 || notSalts.has(next.text)) return undefined;
  const stem = /phosphates?$/.test(next.text) ? 'phosphate' : (base as 'sodium' | 'potassium');
  return { row: undefined, stem, stemName: `${words[at]!.text} ${next.text}`, from: at, to: to + 1, repaired: false, alternative: false };
}
const notSalts = new Set([
  'chocolate',
  'concentrate',
  'carbohydrate',
  'carbohydrates',
  'intermediate',
  'moderate',
  'concentrates',
  'isolate',
  'isolates',
  'favorite',
  'granulate',
  'hydrate',
  'white',
  'appropriate',
]);

/** A word with a phosphate stem that is in no list: "…phosphate" counts, any other is told as unread. */
function wordStem(words: readonly Word[], at: number): Match | undefined {
  const { text } = words[at]!;
  if (text.length < 7 || !(text.includes('phosph') || text.includes('fosf'))) return undefined;
  const isSalt = /(?:phosphates?|fosfatos?|phosphaten?)$/.test(text);
  const isOrganic =
    /^(?:glycero|phospholip|phosphatid|phosphatas|phosphoryl|phosphopep|phosphoprot|phytin|ribo|nucleo|inosito)|phosphatidyl|phosphorylase|phospholipase|phosphatase/.test(
      text,
    );
  if (isOrganic && !isSalt) return undefined;
  return {
    row: undefined,
    stem: isOrganic ? 'phosphate-organic' : isSalt ? 'phosphate' : 'phosphate-unread',
    stemName: text,
    from: at,
    to: at,
    repaired: false,
    alternative: false,
  };
}

/** "E450", "E 451(i)", "INS 322", "emulsifier (322)", "colours (102, 133)". */
function codeNumber(words: readonly Word[], at: number): Match | undefined {
  const { text } = words[at]!;
  const first = text.charCodeAt(0);
  if (first !== letterE && first !== letterI && !(first >= digitZero && first <= digitZero + 9)) return undefined;
  const glued = /^(?:e|ins)(\d{3,4}[a-z]{0,4})$/.exec(text)?.[1];
  if (glued !== undefined) return codeMatch(words, at, at, glued);
  if ((text === 'e' || text === 'ins') && /^\d{3,4}[a-z]{0,4}$/.test(words[at + 1]?.text ?? '') && words[at - 1]?.text !== 'vitamin') {
    return codeMatch(words, at, at + 1, words[at + 1]!.text);
  }
  if (/^\d{3,4}[a-z]{0,4}$/.test(text) && isInClassBracket(words, at)) return codeMatch(words, at, at, text);
  return undefined;
}

const letterE = 101;
const letterI = 105;
const digitZero = 48;

function codeMatch(words: readonly Word[], from: number, to: number, code: string): Match | undefined {
  const parts = /^(\d{3,4})([a-z]*)$/.exec(code);
  if (parts === null) return undefined;
  const number = parts[1]!;
  let roman = /^[iv]+$/.test(parts[2]!) ? parts[2]! : '';
  let end = to;
  if (roman === '' && words[to + 1]?.text === '(' && /^[iv]+$/.test(words[to + 2]?.text ?? '') && words[to + 3]?.text === ')') {
    roman = words[to + 2]!.text;
    end = to + 3;
  }
  const row =
    lexicon.byIns.get(roman === '' ? number : `${number}(${roman})`) ??
    lexicon.byIns.get(number) ??
    lexicon.byIns.get(`${number}(i)`) ??
    lexicon.byIns.get(`${number}(ii)`);
  return row === undefined ? undefined : { row, from, to: end, repaired: false, alternative: false };
}

const classWords =
  /^(?:emulsifiers?|emulsifying|stabili[sz]ers?|acids?|acidity|regulators?|acidulants?|preservatives?|antioxidants?|thickeners?|agents?|salts?|sweeteners?|colou?rs?|enhancers?|humectants?|starch|gum|firming|anticaking)$/;

/** A bare number is a code only in a bracket that follows a class word: "BUTTER (295)" is none. */
function isInClassBracket(words: readonly Word[], at: number): boolean {
  for (let i = at - 1; i >= 0 && at - i < 16; i--) {
    const word = words[i]!;
    if (word.text === '(') return classWords.test(words[i - 1]?.text ?? '');
    if (word.text !== ',' && word.text !== 'and' && !/^\d{3,4}[a-z]{0,4}$/.test(word.text)) return false;
  }
  return false;
}

function abbreviation(words: readonly Word[], at: number): Match | undefined {
  const { text } = words[at]!;
  if (text.length > 8) return undefined;
  const clear = lexicon.clear.get(text);
  if (clear !== undefined) return { row: clear, from: at, to: at, repaired: false, alternative: false };
  const other = lexicon.ambiguous.get(text);
  return other === undefined ? undefined : { row: other, from: at, to: at, repaired: false, alternative: false, needsNeighbor: true };
}
