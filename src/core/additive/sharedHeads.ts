import { rowOf } from './lexicon.ts';
import { anion, longestName } from './longestName.ts';
import { type Match, type Matches, rowMatch } from './match.ts';
import type { Word } from './word.ts';

/** No statement shares more; the bound keeps the reading linear when the same words go on without end. */
const mostHeads = 12;

const textAt = (words: readonly Word[], at: number): string => words[at]?.facts.text ?? '';

const isOr = (text: string): boolean => text === 'or' || text === 'and/or' || text === '/';
const isJoint = (text: string): boolean => text === 'and' || text === 'plus' || isOr(text);

/** "potassium and sodium lactate", "tri- and dicalcium phosphate": several cations share what follows the last. */
export function sharedTail(words: readonly Word[], at: number): Matches | undefined {
  const { isCount, isCation } = words[at]!.facts;
  if (!isCount && !isCation) return undefined;
  const heads = [at];
  let alternative = false;
  while (heads.length < mostHeads) {
    const end = heads.at(-1)! + 1;
    let next = end;
    while (next - end < 2 && (textAt(words, next) === ',' || isJoint(textAt(words, next)))) {
      if (isOr(textAt(words, next))) alternative = true;
      next += 1;
    }
    const facts = words[next]?.facts;
    if (next === end || facts === undefined || !(facts.isCation || (isCount && facts.isCount))) break;
    heads.push(next);
  }
  const last = heads.at(-1)!;
  const tail = heads.length < 2 ? undefined : longestName(words, last);
  if (tail?.row === undefined || tail.to === last) return undefined;

  const rest = words.slice(last + 1, tail.to + 1).map(word => word.facts.text);
  const lastCation = textAt(words, last).replace(/^(?:mono|di|tri|tetra)/, '');
  const matches: Match[] = [];
  let named = 0;
  for (const head of heads) {
    const { text, isCation: isWhole } = words[head]!.facts;
    const row = rowOf([isWhole ? text : text + lastCation, ...rest]);
    if (row === undefined) continue;
    named += 1;
    // "mono, sodium glutamate": two heads of one name.
    if (matches.at(-1)?.row !== row) matches.push(rowMatch(row, head, tail.to, tail.repaired, alternative));
  }
  // The list of names would be wrong if only one of them were one: "calcium, sodium phosphate" in a mineral list.
  return named < 2 ? undefined : { matches, next: tail.to + 1 };
}

const phosphatePrefixes: ReadonlySet<string> = new Set('mono di tri tetra hexameta tripoly poly pyro ortho meta acid trimeta'.split(' '));

/** "sodium (mono, hexameta, and/or tripoly) phosphate", "sodium di-, tri-, and polyphosphate". */
export function sharedPhosphate(words: readonly Word[], at: number): Matches | undefined {
  if (!words[at]!.facts.isCation) return undefined;
  const prefixes: string[] = [];
  let alternative = false;
  let i = at + 1;
  for (; i < words.length && i - at < 14; i++) {
    const text = textAt(words, i);
    if (phosphatePrefixes.has(text)) prefixes.push(text);
    else if (isOr(text)) alternative = true;
    else if (text !== ',' && text !== 'and' && text !== '(' && text !== ')') break;
  }
  const end = textAt(words, i);
  if (prefixes.length === 0 || !/^[a-z]*phosphates?$/.test(end)) return undefined;
  // "sodium acid, pyrophosphate" is one name with a slip of the pen, "sodium tri polyphosphate" one name.
  if (prefixes.length === 1 && (i === at + 2 || prefixes[0] === 'acid')) return undefined;

  const cation = textAt(words, at);
  const base = end.replace(/s$/, '');
  const rows = prefixes.map(
    prefix => rowOf([cation, `${prefix}phosphate`]) ?? rowOf([cation, prefix, 'phosphate']) ?? rowOf([`${prefix}${cation}`, 'phosphate']),
  );
  if (base !== 'phosphate') rows.push(rowOf([cation, base]));
  const matches: Match[] = [];
  for (const row of new Set(rows)) if (row !== undefined) matches.push(rowMatch(row, at, i, false, alternative));
  return matches.length > 0 ? { matches, next: i + 1 } : undefined;
}

/** "sodium phosphate and polyphosphate", "disodium inosinate & guanylate": one cation, two anions, the first at `from` to `to`. */
export function sharedCation(words: readonly Word[], from: number, to: number): Matches {
  const matches: Match[] = [];
  let next = to + 1;
  if (!words[from]!.facts.isCation || to === from) return { matches, next };
  const cation = textAt(words, from);
  for (;;) {
    const joint = textAt(words, next);
    const second = words[next + 1];
    const row = second !== undefined && isJoint(joint) && anion.test(second.facts.text) ? rowOf([cation, second.facts.text]) : undefined;
    if (row === undefined) return { matches, next };
    matches.push(rowMatch(row, next + 1, next + 1, second!.repaired, isOr(joint)));
    next += 2;
  }
}
