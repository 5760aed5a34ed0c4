import { nutrients } from '#core/quantity/nutrients.ts';
import { amountText, decimalsOf } from '../figureText.ts';
import { limitText } from './limitText.ts';
import { numberKind } from './numberKind.ts';
import { weightedSum } from './weightedSum.ts';

/** One nutrient, in its own unit. */
export const nutrient = numberKind((zod, nutrient) => zod.object({ kind: zod.literal('nutrient'), nutrient }))({
  title: 'amount of a nutrient',
  usual: nutrient => ({ kind: 'nutrient', nutrient }),
  facts: ({ nutrient }) => {
    const { name, unit } = nutrients[nutrient];
    const decimals = decimalsOf(nutrient);
    return {
      ...weightedSum([{ nutrient, weight: 1, isTakenOff: false }]),
      nutrients: [nutrient],
      unit,
      decimals: () => decimals,
      boundWords: bound => limitText(bound, unit),
      subject: name,
      briefSubject: name,
      told: ({ totals, finer }) => amountText(nutrient, totals[0].judged, decimals + finer),
      otherFields: [],
    };
  },
});
