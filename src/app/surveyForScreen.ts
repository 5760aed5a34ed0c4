import type { AdditiveFinding } from '#core/additive/additive.ts';
import type { Plate } from '#core/plate/plate.ts';
import { plateTotal } from '#core/plate/plateAmounts.ts';
import { portionText } from '#core/plate/portionText.ts';
import { type Total, unknownReasonText } from '#core/quantity/amount.ts';
import { type Nutrient, nutrients } from '#core/quantity/nutrients.ts';
import { roundHalfUp } from '#core/quantity/rounding.ts';
import { decimalsOf, rangeText } from '#core/yardstick/figureText.ts';
import { prepareJudge, servedOn, testsJudged } from '#core/yardstick/judgePlate.ts';
import { type PlaneRule, planeRule } from '#core/yardstick/planeRule.ts';
import { companionTotals } from '#core/yardstick/served.ts';
import { prepareWaysIn } from '#core/yardstick/waysIn.ts';
import type { Setting, Verdict, VerdictWord, Yardstick } from '#core/yardstick/yardstick.ts';
import type { ShelfFood } from './shelf.ts';

export interface ScreenSurveyInput {
  readonly foods: readonly ShelfFood[];
  readonly plate: Plate;
  readonly yardstick: Yardstick;
  readonly setting?: Setting;
  readonly switchedOn: readonly string[];
  /** Further nutrients to show in each row. */
  readonly columns?: readonly Nutrient[];
}

export interface ScreenSurveyRow {
  readonly foodId: string;
  readonly name: string;
  readonly maker?: string;
  readonly verdict: VerdictWord;
  readonly closeCall: boolean;
  readonly estimated: boolean;
  readonly energyKcal: number | null;
  readonly sodiumMg: number | null;
  readonly columns: readonly { readonly text: string; readonly low: number | null }[];
  readonly margin: string;
  readonly additives: string;
  readonly findings: number;
  readonly recheckOn?: string;
}

export interface ScreenSurvey {
  readonly counts: Readonly<Record<VerdictWord, number>>;
  readonly rule: PlaneRule | null;
  readonly portionText: string;
  readonly companionsText: string;
  readonly rows: readonly ScreenSurveyRow[];
}

/** Judges a category for the screen: one short row a food, counts, and the line for the plane. Reasons and ways in come by `surveyFoods`. */
export function surveyForScreen({ foods, plate, yardstick, setting, switchedOn, columns = [] }: ScreenSurveyInput): ScreenSurvey {
  const judge = prepareJudge({ yardstick, switchedOn, ...(setting === undefined ? {} : { setting }) });
  const companions = companionTotals(plate.companions);
  const counts: Record<VerdictWord, number> = { fits: 0, nearly: 0, over: 0, "can't tell": 0 };
  const rows = foods.map(({ row, label, food }): ScreenSurveyRow => {
    const verdict = judge(servedOn(plate, companions, food));
    counts[verdict.verdict] += 1;
    const alone = [{ food, portion: plate.portion }];
    return {
      foodId: row.id,
      name: row.name,
      ...(row.maker === undefined ? {} : { maker: row.maker }),
      verdict: verdict.verdict,
      closeCall: verdict.closeCall,
      estimated: verdict.estimated,
      energyKcal: plotted(plateTotal(alone, 'energyKcal')),
      sodiumMg: plotted(plateTotal(alone, 'sodiumMg')),
      columns: columns.map(nutrient => column(plateTotal(alone, nutrient), nutrient)),
      margin: marginOf(verdict, yardstick),
      additives: additiveLetters(food.label.additives),
      findings: food.label.findings.length,
      ...(label.recheckOn === undefined ? {} : { recheckOn: label.recheckOn }),
    };
  });
  return {
    counts,
    rule: planeRule(testsJudged(yardstick, switchedOn), plate),
    portionText: portionText(plate.portion),
    companionsText: companionsText(plate),
    rows,
  };
}

/** Reasons, classes and ways in of some foods of such a survey. */
export function surveyFoods(
  { foods, plate, yardstick, setting, switchedOn }: ScreenSurveyInput,
  wanted: ReadonlySet<string>,
  plates: readonly Plate[],
) {
  const given = { plate, yardstick, switchedOn, ...(setting === undefined ? {} : { setting }) };
  const judge = prepareJudge(given);
  const companions = companionTotals(plate.companions);
  const findWaysIn = prepareWaysIn({ ...given, shelf: { foods: foods.map(({ food }) => food), plates } });
  return foods
    .filter(({ row }) => wanted.has(row.id))
    .map(({ row, food }) => {
      const verdict = judge(servedOn(plate, companions, food));
      const ways = verdict.verdict === 'over' || verdict.verdict === 'nearly' ? findWaysIn(food, verdict) : undefined;
      return {
        foodId: row.id,
        why: verdict.why,
        tests: verdict.tests.map(({ testId, verdict: word, why }) => ({ testId, verdict: word, why })),
        classes: verdict.classes.map(({ name, why }) => ({ name, why })),
        additives: food.label.additives.map(({ class: kind, name, counts, certainty }) => ({ class: kind, name, counts, certainty })),
        waysIn: ways?.ways.map(({ kind, what }) => ({ kind, what })) ?? [],
        ...(ways?.none === undefined ? {} : { noWayIn: ways.none }),
      };
    });
}

/** What the companions bring, in one sentence: "The companions bring 160 kcal and 20 mg sodium." */
export function companionsText(plate: Plate): string {
  if (plate.companions.length === 0) return 'Eaten on its own.';
  const names = plate.companions.map(({ food, portion }) => `${portionText(portion)} of ${food.name}`).join(' and ');
  const energy = plotted(plateTotal(plate.companions, 'energyKcal'));
  const sodium = plotted(plateTotal(plate.companions, 'sodiumMg'));
  return `${names.charAt(0).toUpperCase()}${names.slice(1)} ${plate.companions.length > 1 ? 'bring' : 'brings'} ${energy === null ? 'an unknown energy' : `${energy} kcal`} and ${sodium === null ? 'an unknown amount of sodium' : `${sodium} mg sodium`}.`;
}

/** The number that is compared, where there is one. */
function plotted({ judged, missing }: Total): number | null {
  return missing.length > 0 || judged.lo !== judged.hi ? null : roundHalfUp(judged.hi, 1);
}

function column({ judged, missing, estimated }: Total, nutrient: Nutrient): { readonly text: string; readonly low: number | null } {
  if (missing.length > 0) return { text: unknownReasonText[missing[0]!.reason], low: null };
  const text = rangeText(judged, nutrients[nutrient].unit, decimalsOf(nutrient));
  return { text: estimated ? `estimated ${text}` : text, low: judged.lo };
}

/** What is to spare or over in the test that decides; the reason where nothing can be told. */
export function marginOf(verdict: Verdict, yardstick: Yardstick): string {
  const deciding = verdict.tests.find(test => test.verdict === verdict.verdict && test.margin !== undefined);
  const measure = yardstick.tests.find(({ id }) => id === deciding?.testId)?.measure;
  if (deciding?.margin === undefined || measure === undefined)
    return verdict.tests.find(test => test.verdict === verdict.verdict)?.reason ?? verdict.why;
  const unit =
    measure.kind === 'daily-value-percent'
      ? '%'
      : 'nutrient' in measure
        ? `${nutrients[measure.nutrient].unit}${measure.kind === 'ratio' ? `/${nutrients[measure.per].unit}` : ''}`
        : '';
  return `${roundHalfUp(Math.abs(deciding.margin), 1)} ${unit} ${deciding.margin < 0 ? 'over' : 'to spare'}`;
}

/** "P" for a phosphate that counts, "K" for a potassium salt that counts, with "?" where it is not certain. */
function additiveLetters(findings: readonly AdditiveFinding[]): string {
  const letter = (kind: AdditiveFinding['class'], sign: string): string => {
    const ofClass = findings.filter(finding => finding.class === kind && (finding.counts || finding.certainty === 'possible'));
    if (ofClass.length === 0) return '';
    return ofClass.some(({ counts, certainty }) => counts && (certainty === 'named' || certainty === 'misspelled')) ? sign : `${sign}?`;
  };
  return [letter('phosphate', 'P'), letter('potassium', 'K')].filter(Boolean).join(' ');
}
