import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { amountText, decimalsOf, rangeText } from '../figureText.ts';
import { limitText } from './limitText.ts';
import { numberKind } from './numberKind.ts';
import { weightedSum } from './weightedSum.ts';

/** Percent of the Daily Value of 2016. */
export const dailyValuePercent = numberKind((zod, nutrient) =>
  zod.object({
    kind: zod.literal('daily-value-percent'),
    nutrient: nutrient.refine(key => nutrients[key].dailyValue !== null, 'a nutrient that has a Daily Value'),
  }),
)({
  title: '% of the Daily Value',
  usual: nutrient => ({ kind: 'daily-value-percent', nutrient }),
  facts: ({ nutrient }) => {
    const { name, unit } = nutrients[nutrient];
    const percent = percentPerUnit(nutrient);
    const sum = weightedSum([{ nutrient, weight: percent ?? Number.NaN, isTakenOff: false }]);
    return {
      ...sum,
      value: percent === undefined ? () => ({ notDefined: `${name} has no Daily Value`, isFloor: true }) : sum.value,
      nutrients: [nutrient],
      unit: '%',
      decimals: () => 0,
      // The percent is shown, and its amount only beside it.
      shownTerms: null,
      boundWords: bound => limitText(bound, '%'),
      subject: name,
      briefSubject: name,
      told: ({ totals: [total], judged, decimals, finer }) =>
        judged === undefined
          ? amountText(nutrient, total.judged, decimalsOf(nutrient) + finer)
          : `${rangeText(judged, '%', decimals + finer)} of the Daily Value of ${name} (${rangeText(total.judged, unit, decimalsOf(nutrient))})`,
      otherFields: [],
    };
  },
});

/** Percent of the Daily Value in one unit of a nutrient; undefined for a nutrient that has no Daily Value. */
function percentPerUnit(nutrient: Nutrient): number | undefined {
  const { dailyValue } = nutrients[nutrient];
  return dailyValue === null ? undefined : 100 / dailyValue;
}
