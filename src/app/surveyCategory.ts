import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { plateTotal } from '#core/plate/plateAmounts.ts';
import type { Total } from '#core/quantity/amount.ts';
import { prepareJudge, servedOn } from '#core/yardstick/judgePlate.ts';
import { companionTotals } from '#core/yardstick/served.ts';
import type { Shelf, WayIn, WaysIn } from '#core/yardstick/wayIn.ts';
import { prepareWaysIn } from '#core/yardstick/waysIn.ts';
import type { Setting, Verdict, VerdictWord, Yardstick } from '#core/yardstick/yardstick.ts';
import type { ImportedLabel } from './importLabels.ts';

export interface SurveyInput {
  readonly foods: readonly PlateFood[];
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly setting?: Setting;
  /** Ids of tests that are `off` unless named here. */
  readonly switchedOn?: readonly string[];
  /** What a way in may borrow from: the foods for an unsalted version, the plates for another companion. */
  readonly shelf: Shelf;
}

/** What a survey keeps of a way in: not its plate and verdict, which are many and large, and can be worked out again. */
export type SurveyedWay = Pick<WayIn, 'kind' | 'what' | 'totals'>;

export interface SurveyedFood {
  readonly food: PlateFood;
  readonly verdict: Verdict;
  /** The portion with its companions. */
  readonly onPlate: { readonly energyKcal: Total; readonly sodiumMg: Total };
  /** For a food that is over or nearly; absent for the others. */
  readonly waysIn?: { readonly ways: readonly SurveyedWay[]; readonly none?: string };
}

export interface Survey {
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly setting?: Setting;
  readonly counts: Readonly<Record<VerdictWord, number>>;
  /** In the order they were given. */
  readonly foods: readonly SurveyedFood[];
}

/** Judges the foods of a category on one plate and looks for ways in for those that are over or nearly. */
export function surveyCategory(input: SurveyInput, onProgress?: (done: number, total: number) => void): Survey {
  const { foods, plate, yardstick, setting, switchedOn = [], shelf } = input;
  const judged = { plate, yardstick, switchedOn, ...(setting === undefined ? {} : { setting }) };
  const judge = prepareJudge(judged);
  const findWaysIn = prepareWaysIn({ ...judged, shelf });
  const companions = companionTotals(plate.companions);
  const counts: Record<VerdictWord, number> = { fits: 0, nearly: 0, over: 0, "can't tell": 0 };
  const surveyed = foods.map((food, index): SurveyedFood => {
    const verdict = judge(servedOn(plate, companions, food));
    counts[verdict.verdict] += 1;
    const parts = [{ food, portion: plate.portion }, ...plate.companions];
    const wanted = verdict.verdict === 'over' || verdict.verdict === 'nearly';
    onProgress?.(index + 1, foods.length);
    return {
      food,
      verdict,
      onPlate: { energyKcal: plateTotal(parts, 'energyKcal'), sodiumMg: plateTotal(parts, 'sodiumMg') },
      ...(wanted ? { waysIn: kept(findWaysIn(food, verdict)) } : {}),
    };
  });
  return { plate, yardstick, ...(setting === undefined ? {} : { setting }), counts, foods: surveyed };
}

function kept({ ways, none }: WaysIn): NonNullable<SurveyedFood['waysIn']> {
  return { ways: ways.map(({ kind, what, totals }) => ({ kind, what, totals })), ...(none === undefined ? {} : { none }) };
}

/** The foods of imported labels. A label without an id goes by its row. */
export function foodsOf(labels: readonly ImportedLabel[]): readonly PlateFood[] {
  return labels.map(({ row, label }) => ({
    id: label.printed.id ?? `row-${row}`,
    name: label.printed.name ?? `row ${row}`,
    label,
  }));
}
