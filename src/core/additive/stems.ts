import { type Match, type Stem, stemMatch } from './match.ts';
import type { Word } from './word.ts';

const organicStem =
  /^(?:glycero|phospholip|phosphatid|phosphatas|phosphoryl|phosphopep|phosphoprot|phytin|ribo|nucleo|inosito)|phosphatidyl|phosphorylase|phospholipase|phosphatase/;

/** What a word with a phosphate stem tells that is in no list: "…phosphate" counts, any other is told as unread. */
export function stemOf(word: string): Stem | undefined {
  if (word.length < 7 || !(word.includes('phosph') || word.includes('fosf'))) return undefined;
  const isSalt = /(?:phosphates?|fosfatos?|phosphaten?)$/.test(word);
  if (!organicStem.test(word)) return isSalt ? 'phosphate' : 'phosphate-unread';
  return isSalt ? 'phosphate-organic' : undefined;
}

export function wordStem(words: readonly Word[], at: number): Match | undefined {
  const { stem, text } = words[at]!.facts;
  return stem === undefined ? undefined : stemMatch(stem, text, at, at);
}

/** A bare "… phosphate" behind one of these is an organic ester, not an added salt. */
const organicHeads: ReadonlySet<string> = new Set(
  `creatine inositol fructose glucose adenosine starch distarch choline ascorbyl tocopheryl riboflavin pyridoxal pyridoxine thiamine thiamin
  uridine cytidine guanosine nicotinamide triose glycerol`.split(/\s+/),
);

/** "creatine phosphate", for the bare phosphate at `at`. */
export function organicEster(words: readonly Word[], at: number, to: number, repaired: boolean): Match | undefined {
  const head = words[at - 1]?.facts.text ?? '';
  return organicHeads.has(head) ? stemMatch('phosphate-organic', `${head} ${words[at]!.facts.text}`, at - 1, to, repaired) : undefined;
}

/** Words that end like a salt and are none: "sodium … chocolate". */
const notSalts: ReadonlySet<string> = new Set(
  `chocolate concentrate concentrates carbohydrate carbohydrates intermediate moderate isolate isolates favorite granulate hydrate white
  appropriate`.split(/\s+/),
);

/** "potassium pyroglutamate": a cation from `at` to `to` with an acid's name that the table does not hold. */
export function cationStem(words: readonly Word[], at: number, to: number): Match | undefined {
  const cation = words[at]!.facts.text;
  const base = cation.endsWith('sodium') ? 'sodium' : cation.endsWith('potassium') ? 'potassium' : undefined;
  const next = words[to + 1]?.facts;
  if (base === undefined || next === undefined || !next.isWord) return undefined;
  if (next.text.length < 6 || !/(?:ates?|ides?|ites?)$/.test(next.text) || notSalts.has(next.text)) return undefined;
  return stemMatch(/phosphates?$/.test(next.text) ? 'phosphate' : base, `${cation} ${next.text}`, at, to + 1);
}
