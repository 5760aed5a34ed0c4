import { nutrients } from '#core/quantity/nutrients.ts';
import type { Bound } from '../bound.ts';
import { amountText, decimalsOf } from '../figureText.ts';
import { numberKind } from './numberKind.ts';
import { weightedSum } from './weightedSum.ts';

/**
 * nutrient − minus, as plain numbers of their units: sodium mg − energy kcal. Works at zero energy, where a ratio does not. It is told in
 * the unit of its first nutrient, as the trade does.
 */
export const difference = numberKind((zod, nutrient) => zod.object({ kind: zod.literal('difference'), nutrient, minus: nutrient }))({
  title: 'one nutrient against another',
  usual: nutrient => ({ kind: 'difference', nutrient, minus: 'energyKcal' }),
  facts: measure => {
    const { nutrient, minus } = measure;
    const [first, second] = [nutrients[nutrient], nutrients[minus]];
    return {
      ...weightedSum([
        { nutrient, weight: 1, isTakenOff: false },
        { nutrient: minus, weight: 1, isTakenOff: true },
      ]),
      nutrients: [nutrient, minus],
      unit: first.unit,
      decimals: () => decimalsOf(nutrient),
      boundWords: bound => `${first.name} in ${first.unit} ${distanceWords(bound)} ${second.name} in ${second.unit}`,
      // The words of the bound name both nutrients.
      subject: undefined,
      briefSubject: undefined,
      told: ({ totals: [one, other], finer }) => {
        const known = amountText(nutrient, one.judged, decimalsOf(nutrient) + finer);
        return other === undefined ? known : `${known} against ${amountText(minus, other.judged, decimalsOf(minus) + finer)}`;
      },
      tellsBound: ({ kind, figure }) => kind === 'atMost' && figure === 0,
      otherFields: [{ title: 'Against', nutrient: minus, with: other => ({ ...measure, minus: other }) }],
    };
  },
});

/** "no more than", "at most 50 more than". */
function distanceWords({ kind, figure }: Bound): string {
  if (kind === 'below') return figure === 0 ? 'less than' : figure > 0 ? `less than ${figure} above` : `more than ${-figure} below`;
  const isMaximum = kind === 'atMost';
  if (figure === 0) return isMaximum ? 'no more than' : 'no less than';
  return `${isMaximum === figure > 0 ? 'at most' : 'at least'} ${Math.abs(figure)} ${figure > 0 ? 'more' : 'less'} than`;
}
