import { recordOf } from '#core/json/recordOf.ts';
import type { Plate, PlateFood } from '#core/plate/plate.ts';
import { plateTotal } from '#core/plate/plateAmounts.ts';
import { type Total, unknownReasonText } from '#core/quantity/amount.ts';
import { divide, type Interval } from '#core/quantity/interval.ts';
import { type Nutrient, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';
import { bareRange, decimalsOf, rangeText } from './figureText.ts';

/** What a column says of one food: words ready to show, and a number to sort by, null where nothing is known. */
export interface SurveyCell {
  readonly text: string;
  /** The same without its unit, for a table that has it in the heading: "350", "19–80", "estimated 66–99"; empty when unknown. */
  readonly figure: string;
  readonly low: number | null;
}

/** A column that a survey may show: on the screen, in its CSV and on the command line alike. */
export interface SurveyColumn {
  readonly title: string;
  readonly unit: string;
  /** What it is made of: where one is seldom printed, its estimate is asked for. */
  readonly nutrients: readonly Nutrient[];
  /** Of the portion alone, without what it is eaten with. */
  readonly cell: (food: PlateFood, plate: Plate) => SurveyCell;
}

/** The columns beyond the nutrients; a further one is added here and nowhere else. */
const ownColumns = {
  phosphorusMgPerProteinG: {
    title: 'Phosphorus per g protein',
    unit: 'mg/g',
    nutrients: ['phosphorusMg', 'proteinG'],
    cell: (food, plate) => ratioCell(totalOf(food, plate, 'phosphorusMg'), totalOf(food, plate, 'proteinG'), 'mg/g'),
  },
} as const satisfies Readonly<Record<string, SurveyColumn>>;

/** Energy and sodium always stand in a survey. */
const alwaysShown = ['energyKcal', 'sodiumMg'] as const;
type ShownNutrient = Exclude<Nutrient, (typeof alwaysShown)[number]>;

export type SurveyColumnKey = ShownNutrient | keyof typeof ownColumns;

const shownNutrients = nutrientKeys.filter((key): key is ShownNutrient => !alwaysShown.some(one => one === key));
const ownKeys = Object.keys(ownColumns) as readonly (keyof typeof ownColumns)[];

/** In the order in which they are offered. */
export const surveyColumnKeys: readonly SurveyColumnKey[] = [...shownNutrients, ...ownKeys];

export const surveyColumns: Readonly<Record<SurveyColumnKey, SurveyColumn>> = {
  ...recordOf(shownNutrients, nutrientColumn),
  ...ownColumns,
};

function nutrientColumn(nutrient: Nutrient): SurveyColumn {
  const { name, unit } = nutrients[nutrient];
  const title = name.charAt(0).toUpperCase() + name.slice(1);
  return { title, unit, nutrients: [nutrient], cell: (food, plate) => totalCell(totalOf(food, plate, nutrient), nutrient) };
}

function totalOf(food: PlateFood, { portion }: Plate, nutrient: Nutrient): Total {
  return plateTotal([{ food, portion }], nutrient);
}

function totalCell({ judged, missing, estimated }: Total, nutrient: Nutrient): SurveyCell {
  if (missing.length > 0) return { text: unknownReasonText[missing[0]!.reason], figure: '', low: null };
  return knownCell(judged, nutrients[nutrient].unit, decimalsOf(nutrient), estimated);
}

/** One total over another: 120 mg phosphorus in 10 g protein is 12 mg/g. Rounded outward, to one decimal. */
function ratioCell(of: Total, per: Total, unit: string): SurveyCell {
  const [missing] = [...of.missing, ...per.missing];
  if (missing !== undefined) return { text: unknownReasonText[missing.reason], figure: '', low: null };
  if (per.judged.hi === 0) return { text: 'none to divide by', figure: '', low: null };
  return knownCell(divide(of.judged, per.judged), unit, 1, of.estimated || per.estimated);
}

/** An estimate says that it is one wherever it stands, in a spreadsheet too. */
function knownCell(range: Interval, unit: string, decimals: number, estimated: boolean): SurveyCell {
  const mark = estimated ? 'estimated ' : '';
  return { text: mark + rangeText(range, unit, decimals), figure: mark + bareRange(range, decimals), low: range.lo };
}
