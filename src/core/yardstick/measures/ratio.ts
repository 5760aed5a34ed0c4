import { divide } from '#core/quantity/interval.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { amountText, decimalsOf, rangeText } from '../figureText.ts';
import { limitText } from './limitText.ts';
import { type MeasureValue, numberKind, type ShownValue, type Totals } from './numberKind.ts';
import { isUnknown } from './weightedSum.ts';

/** nutrient ÷ per: sodium mg per kcal, phosphorus mg per g protein. 40 mg phosphorus to 0 g protein is not defined. */
export const ratio = numberKind((zod, nutrient) => zod.object({ kind: zod.literal('ratio'), nutrient, per: nutrient }))({
  title: 'one nutrient for each unit of another',
  usual: nutrient => ({ kind: 'ratio', nutrient, per: 'proteinG' }),
  facts: measure => {
    const { nutrient, per } = measure;
    const unit = `${nutrients[nutrient].unit} per ${nutrients[per].unit}`;
    const subject = `${nutrients[nutrient].name} to ${nutrients[per].name}`;
    const notDefined = `${subject} is not defined at zero ${nutrients[per].name}`;
    return {
      nutrients: [nutrient, per],
      unit,
      // A ratio near 1 needs two decimals, one near 10 does not.
      decimals: ({ figure }) => (figure < 10 ? 2 : 1),
      value: (totals, foods) => quotient(totals, foods, notDefined),
      // At most 12 mg per g: what 12 times the protein leaves of the phosphorus is at most nothing.
      linear: figure => ({
        terms: [
          { nutrient, weight: 1, isTakenOff: false },
          { nutrient: per, weight: figure, isTakenOff: true },
        ],
        limit: 0,
      }),
      shownTerms: null,
      isProportion: () => true,
      boundWords: bound => limitText(bound, unit),
      subject,
      briefSubject: nutrients[nutrient].name,
      told: shown => quotientText(nutrient, per, shown),
      tellsBound: () => false,
      otherFields: [{ title: 'For each unit of', nutrient: per, with: other => ({ ...measure, per: other }) }],
    };
  },
});

function quotient([of, per]: Totals, foods: number, notDefined: string): MeasureValue {
  if (per === undefined) return { isFloor: false };
  const isFloor = per.missing.length === 0;
  if (isUnknown(of, foods) || isUnknown(per, foods)) return { isFloor };
  if (per.judged.hi === 0) return isFloor ? { isFloor, notDefined } : { isFloor };
  return { isFloor, judged: divide(of.judged, per.judged), range: divide(of.range, per.range) };
}

/** "12 mg phosphorus per g protein (120 mg to 10 g)". */
function quotientText(nutrient: Nutrient, per: Nutrient, { totals: [of, by], judged, decimals, finer }: ShownValue): string {
  const known = amountText(nutrient, of.judged, decimalsOf(nutrient) + finer);
  if (by === undefined) return known;
  if (judged === undefined) return `${known} to ${amountText(per, by.judged, decimalsOf(per))}`;
  const [first, second] = [nutrients[nutrient], nutrients[per]];
  const parts = `${rangeText(of.judged, first.unit, decimalsOf(nutrient))} to ${rangeText(by.judged, second.unit, decimalsOf(per))}`;
  return `${rangeText(judged, first.unit, decimals + finer)} ${first.name} per ${second.unit} ${second.name} (${parts})`;
}
