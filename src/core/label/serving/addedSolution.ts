import { isDigit, scanNumber } from '#core/label/figure/scanNumber.ts';
import { type Interval, interval } from '#core/quantity/interval.ts';

const longestClaim = 500;

/**
 * The share of the finished food, in percent, that an added solution makes up: "containing 15% added solution" is 15 parts
 * on 100 parts of raw meat, so 13.04 % (9 CFR 317.2(e)(2)(i), 381.117(h)). "Up to 15%" is 0 up to 13.04 %. Undefined when the
 * words speak of no solution or of retained water (9 CFR 441.10), which is another thing.
 */
export function addedSolutionSharePercent(claim: string): Interval | undefined {
  if (claim.length > longestClaim) return undefined;
  const words = claim.toLowerCase();
  if (!words.includes('solution') || words.includes('retained')) return undefined;
  for (let at = 0; at < words.length; at++) {
    if (!isDigit(words.charCodeAt(at))) continue;
    const number = scanNumber(words, at, false);
    if (number === undefined) return undefined;
    const rest = words.slice(number.end).trimStart();
    if (rest.startsWith('%') || rest.startsWith('percent')) {
      const share = (100 * number.value) / (100 + number.value);
      return interval(words.slice(0, at).includes('up to') ? 0 : share, share);
    }
    at = number.end - 1;
  }
  return undefined;
}
