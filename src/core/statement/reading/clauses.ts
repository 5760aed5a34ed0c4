import type { Token } from '#core/statement/text/token.ts';
import { choiceLead, solutionLead, solutionMiddle } from '#core/statement/text/vocabulary.ts';
import { clauseTailEnd, percentAt } from './threshold.ts';

/** "(contains) one or more of the following:", "at least one of the", "some or all of": gives the end of the words. */
export function oneOrMoreAt(tokens: readonly Token[], at: number): number | undefined {
  let i = at;
  while (i - at < 5 && tokens[i]?.kind === 'word' && choiceLead.has(tokens[i]!.text)) i += 1;
  const [first, second, third, fourth] = [tokens[i]?.text, tokens[i + 1]?.text, tokens[i + 2]?.text, tokens[i + 3]?.text];
  if (first === 'some' && second === 'or' && third === 'all' && fourth === 'of') return clauseTailEnd(tokens, i + 3);
  if (first !== 'one') return undefined;
  // "one of more of" and "one or more or the following" are slips of the pen.
  if ((second === 'or' || second === 'and/or' || second === 'of') && (third === 'more' || third === 'both'))
    return clauseTailEnd(tokens, fourth === 'or' && tokens[i + 4]?.text === 'the' ? i + 4 : i + 3);
  return second === 'of' && third === 'the' ? clauseTailEnd(tokens, i + 1) : undefined;
}

/** "may contain", "may also include (one or more of)": gives the end of the words. */
export function mayContainAt(tokens: readonly Token[], at: number): number | undefined {
  const first = tokens[at]?.text;
  if (first !== 'may' && first !== 'can') return undefined;
  let i = at + 1;
  while (tokens[i]?.kind === 'mark' || tokens[i]?.text === 'also') i += 1;
  const verb = tokens[i]?.text;
  if (verb !== 'contain' && verb !== 'contains' && verb !== 'include' && verb !== 'includes') return undefined;
  return oneOrMoreAt(tokens, i + 1) ?? clauseTailEnd(tokens, i + 1);
}

/** "contains up to 12% of a solution of": the percent is of the raw meat (9 CFR 317.2(e)(2)). */
export function solutionAt(tokens: readonly Token[], at: number): { end: number; percent: number } | undefined {
  let i = at;
  while (i - at < 6 && tokens[i]?.kind === 'word' && solutionLead.has(tokens[i]!.text)) i += 1;
  const quantity = percentAt(tokens, i);
  if (quantity === undefined || !quantity.hasSign) return undefined;
  i = quantity.end;
  while (tokens[i]?.kind === 'word' && solutionMiddle.has(tokens[i]!.text)) i += 1;
  if (tokens[i]?.text !== 'solution') return undefined;
  i += 1;
  while (tokens[i]?.kind === 'colon' || tokens[i]?.text === 'of' || tokens[i]?.text === 'containing' || tokens[i]?.text === 'consisting')
    i += 1;
  return { end: i, percent: quantity.percent };
}
