import { unknownReasonText } from '#core/quantity/amount.ts';
import { nutrients } from '#core/quantity/nutrients.ts';
import { basesOf } from './basis.ts';
import { rangeText } from './figureText.ts';
import type { Served } from './served.ts';
import { sourceText } from './sourceText.ts';
import type { ClassScale, ShownClass } from './yardstick.ts';

/**
 * The class of an amount, shown and never a bound: "low", "low or medium" when rounding crosses a cut-off, "unknown" when
 * the amount is. Upper ends are inclusive: 100 mg of "up to 100" is low. Estimates are not classed.
 */
export function shownClass(scale: ClassScale, served: Served): ShownClass {
  const { name: nutrientName, unit } = nutrients[scale.nutrient];
  const title = nutrientName.charAt(0).toUpperCase() + nutrientName.slice(1);
  const [on] = basesOf(scale, served);
  if (on === undefined || 'cannotTell' in on) {
    return { scaleId: scale.id, name: 'unknown', why: `${title}: ${on?.cannotTell ?? 'no food'} (${sourceText(scale.source)}).` };
  }
  const { range, missing } = on.total(scale.nutrient, false);
  if (missing.length > 0) {
    const reasons = missing.map(({ of, reason }) => `${of}: ${unknownReasonText[reason]}`).join(', ');
    return { scaleId: scale.id, name: 'unknown', why: `${title} is unknown ${on.words} (${reasons}; ${sourceText(scale.source)}).` };
  }
  const names = scale.classes.slice(classIndex(scale, range.lo), classIndex(scale, range.hi) + 1).map(({ name }) => name);
  const name = names.length > 2 ? `${names[0]} to ${names.at(-1)}` : names.join(' or ');
  return { scaleId: scale.id, name, why: `${title} ${rangeText(range, unit, 1)} ${on.words}: ${name} (${sourceText(scale.source)}).` };
}

function classIndex({ classes }: ClassScale, value: number): number {
  const index = classes.findIndex(({ upTo }) => upTo === undefined || value <= upTo + 1e-9 * Math.max(1, upTo));
  return index < 0 ? classes.length - 1 : index;
}
