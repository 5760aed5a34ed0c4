import { isSameUnit } from '#core/client/labs/readLabResult.ts';
import type { LabCell } from './labCells.ts';

/**
 * The figure of a result, with its unit where it stands in the same cell: "5.2", "5.2 H", "L 3.1", "5.2 CH", "5.2*", "5.2 mEq/L". Undefined for "<5", "5,2",
 * "see note" and two figures.
 */
export function figureOf(words: string): { readonly value: number; readonly unit: string } | undefined {
  const bare = words
    .replace(/[*†!]+/gu, ' ')
    .replace(
      /^(?:HH|LL|CH|CL|HC|LC|H|L|A|C)\s+|(?<=[\d\s([])(?:HH|LL|CH|CL|HC|LC|H|L|A|C|high|low|abnormal|critical|crit)[)\]]?\s*$/iu,
      ' ',
    )
    .replace(/[([]\s*$/u, ' ')
    .trim();
  const [, figure = bare, unit = ''] = /^([\d.,]+)\s*([a-zµμ%].*)$/iu.exec(bare) ?? [];
  const value = numberOf(figure);
  return value === undefined ? undefined : { value, unit };
}

/** The limits of the laboratory: in columns of their own, or as a range: "3.5-5.1", "3.5 – 5.1 mmol/L", "<5.7", ">= 60". Undefined for a limit that is no figure. */
export function limitsOf({
  range,
  lower,
  upper,
  unit,
  value,
}: LabCell): { readonly lowerNormal?: number; readonly upperNormal?: number } | undefined {
  const of = (words: string): number | undefined => (words === '' ? undefined : numberOf(words));
  const lowerNormal = of(lower);
  const upperNormal = of(upper);
  if ((lower !== '' && lowerNormal === undefined) || (upper !== '' && upperNormal === undefined)) return undefined;
  const ranged = rangeOf(range, unit || (figureOf(value)?.unit ?? ''));
  const low = lowerNormal ?? ranged.low;
  const high = upperNormal ?? ranged.high;
  return { ...(low === undefined ? {} : { lowerNormal: low }), ...(high === undefined ? {} : { upperNormal: high }) };
}

/** What is no range says nothing ("by age", "see report"), nor does one in another unit than the result. */
function rangeOf(words: string, unit: string): { readonly low?: number; readonly high?: number } {
  const text = words.replace(/[()[\]]/gu, ' ').trim();
  const own = /\d\s+([a-zµμ%][^\s]*)$/iu.exec(text)?.[1];
  if (own !== undefined && unit !== '' && !isSameUnit(own, unit)) return {};
  const both = /^(\d+(?:\.\d+)?)\s*(?:-|–|—|to)\s*(\d+(?:\.\d+)?)(?:\s+\D.*)?$/u.exec(text);
  if (both !== null) return { low: Number(both[1]), high: Number(both[2]) };
  const one = /^(<|>|≤|≥|<=|>=|=<|=>|under|below|up to|over|above)\s*(\d+(?:\.\d+)?)(?:\s+\D.*)?$/iu.exec(text);
  if (one === null) return {};
  return /^(?:<|≤|=<|under|below|up to)/iu.test(one[1]!) ? { high: Number(one[2]) } : { low: Number(one[2]) };
}

function numberOf(words: string): number | undefined {
  return /^\d+(?:\.\d+)?$/u.test(words) ? Number(words) : undefined;
}
