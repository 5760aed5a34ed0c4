import { type Interval, isOpenEnded } from '#core/quantity/interval.ts';
import type { Limit } from './target.ts';

/** A US cup as labels count it is 240 mL (21 CFR 101.9(b)(5)(viii)); a US fluid ounce is 29.57 mL. */
const mLPerCup = 240;
const mLPerOunce = 29.57;

const quarters = ['', '¼', '½', '¾'] as const;

/** An amount of fluid in what a kitchen has: cups by quarters, whole fluid ounces. */
export interface HouseholdFluid {
  readonly cups: string;
  readonly isOneCup: boolean;
  readonly ounces: string;
}

/**
 * A most is rounded down and a least up: measured by the cup nobody drinks more than a limit or less than a need. At most 1000 mL is
 * 4 cups, 33 fl oz; at least 1000 mL is 4¼ cups, 34 fl oz. Undefined where the most is under a quarter of a cup.
 */
export function householdFluid({ lo, hi }: Interval, limit: Limit): HouseholdFluid | undefined {
  if (limit === 'at-least' || isOpenEnded({ lo, hi }))
    return lo > 0 ? measured([upIn(lo, mLPerCup / 4)], [upIn(lo, mLPerOunce)]) : undefined;
  const most = [downIn(hi, mLPerCup / 4), downIn(hi, mLPerOunce)] as const;
  if (most[0] === 0) return undefined;
  const least = [upIn(lo, mLPerCup / 4), upIn(lo, mLPerOunce)] as const;
  // A quarter of a cup is more than two ounces: where whole quarters lie between, whole ounces do.
  const isRange = limit === 'within' && lo > 0 && least[0] < most[0];
  return isRange ? measured([least[0], most[0]], [least[1], most[1]]) : measured([most[0]], [most[1]]);
}

function measured(quarterCups: readonly number[], ounces: readonly number[]): HouseholdFluid {
  return { cups: quarterCups.map(cupsText).join(' – '), isOneCup: Math.max(...quarterCups) <= 4, ounces: ounces.join(' – ') };
}

function cupsText(count: number): string {
  const whole = Math.floor(count / 4);
  return `${whole === 0 ? '' : whole}${quarters[count % 4]}`;
}

/** A billionth of slack: 0.1 + 0.2 is not three tenths. */
function downIn(mL: number, step: number): number {
  return Math.floor(mL / step + 1e-9);
}

function upIn(mL: number, step: number): number {
  return Math.ceil(mL / step - 1e-9);
}
