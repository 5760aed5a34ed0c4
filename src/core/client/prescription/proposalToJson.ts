import { type Interval, intervalToJson } from '#core/quantity/interval.ts';
import { ceilTo, floorTo } from '#core/quantity/rounding.ts';

/**
 * A proposal, or anything with ranges in it, as plain JSON: each range is [lo, hi] rounded outward to hundredths, an open end is null.
 * `{ range: { lo: 1.4, hi: Infinity } }` is `{ range: [1.4, null] }`.
 */
export function proposalToJson(given: unknown): unknown {
  if (Array.isArray(given)) return given.map(proposalToJson);
  if (typeof given !== 'object' || given === null) return given;
  if (isInterval(given))
    return intervalToJson({ lo: floorTo(given.lo, 2), hi: Number.isFinite(given.hi) ? ceilTo(given.hi, 2) : given.hi });
  return Object.fromEntries(Object.entries(given).map(([key, part]) => [key, proposalToJson(part)]));
}

function isInterval(given: object): given is Interval {
  return Object.keys(given).length === 2 && 'lo' in given && 'hi' in given && typeof given.lo === 'number' && typeof given.hi === 'number';
}
