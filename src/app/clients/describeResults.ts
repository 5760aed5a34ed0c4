import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { type Lab, type Weight, weightWords } from '#core/client/assessment/clientFacts.ts';
import { ageLimitDays } from '#core/client/assessment/factAges.ts';
import { drawnTimes, type WeightKind, weightKinds } from '#core/client/assessment/vocabularies.ts';
import { analyteFacts } from '#core/client/labs/analytes.ts';
import { labInUnit, unitsOf } from '#core/client/labs/labValue.ts';
import type { TargetBand } from '#core/client/labs/targetBands.ts';
import { labTrends } from '#core/client/labs/trend.ts';
import { lineStart } from '#core/client/lineStart.ts';
import { assessmentsThatStand, type ClientRecord } from '#core/client/record/record.ts';
import type { CareRules } from '#core/client/rules/careRules.ts';
import { sourceWords } from '#core/client/rules/source.ts';
import { type Day, daysBetween } from '#core/quantity/calendarDay.ts';
import { rangeOut } from './targetText.ts';

/** Every analyte on record: the newest result as it was entered, in its other unit, where it stands, and all of them over time. */
export function describeResults(record: ClientRecord, today: Day, rules: CareRules) {
  const all = assessmentsThatStand(record);
  const [newest] = all;
  if (newest === undefined) return [];
  const { facts } = checkAssessment(newest, today, rules);
  return labTrends(all, today).map(({ analyte, name, unit, points, bands }) => {
    const { lab, sameDay } = newestOf(points);
    const band = bands[0] ?? ownBand(lab);
    const out = lab.drawn === 'after-dialysis' || band === undefined ? undefined : outOf(lab.value, band.range);
    const age = daysBetween(lab.takenOn, today);
    const heading = analyteFacts(analyte).heading ?? lineStart(name);
    return {
      analyte,
      heading,
      shown: valueWords(lab.entered.value, lab.entered.unit),
      ...otherUnit(lab),
      takenOn: lab.takenOn,
      age,
      isTooOld: age > ageLimitDays(facts, analyte),
      marks: [...(lab.drawn === undefined ? [] : [drawnTimes.words(lab.drawn)]), ...(lab.hemolyzed ? ['hemolyzed'] : []), ...sameDay],
      ...(out === undefined ? {} : { out }),
      unit: unit === '{ratio}' ? '' : unit,
      points: points.map(({ takenOn, value }) => ({ on: takenOn, value })),
      bands: bands.map(({ range, says, source }) => ({ range: rangeOut(range), source: `${says}; ${sourceWords(source)}` })),
    };
  });
}

/**
 * The newest result: of one day the last by its hour, else the highest, with the others beside it (care rules 2). One after dialysis stands behind the
 * one before.
 */
function newestOf(points: readonly Lab[]): { readonly lab: Lab; readonly sameDay: readonly string[] } {
  const last = points.at(-1)!;
  const ofDay = points.filter(({ takenOn }) => takenOn === last.takenOn);
  const before = ofDay.filter(({ drawn }) => drawn !== 'after-dialysis');
  const counted = before.length === 0 ? ofDay : before;
  const hasHours =
    new Set(counted.map(({ takenAt }) => takenAt ?? '')).size === counted.length && counted.every(({ takenAt }) => takenAt !== undefined);
  const lab = hasHours ? counted.at(-1)! : counted.reduce((a, b) => (b.value > a.value ? b : a));
  return {
    lab,
    sameDay: ofDay.filter(one => one !== lab).map(({ entered }) => `also ${valueWords(entered.value, entered.unit)} that day`),
  };
}

/** The newest weight of each kind as it was entered, and all of that kind over time in kg; the dry weight is the line that the others are held to. */
export function describeWeights(record: ClientRecord, today: Day) {
  const weights = assessmentsThatStand(record).flatMap(one => checkAssessment(one, today).facts.weights);
  const kinds = [...new Set(weights.map(({ kind }) => kind))].filter(kind => kind !== 'standard' && kind !== 'goal');
  return kinds.map(kind => {
    const oldestFirst = weightsOf(weights, kind);
    const newest = oldestFirst.at(-1)!;
    return {
      kind,
      heading: `Weight, ${weightKinds.words(kind)}`,
      shown: weightWords(newest),
      takenOn: newest.on,
      age: daysBetween(newest.on, today),
      points: oldestFirst.map(({ on, kg }) => ({ on, value: kg })),
    };
  });
}

/** One a day: a weight that stands in several assessments is there once. */
function weightsOf(weights: readonly Weight[], kind: WeightKind): readonly Weight[] {
  // Those of the newest assessment come first, and stand.
  const byDay = new Map(
    weights
      .filter(one => one.kind === kind)
      .toReversed()
      .map(one => [one.on, one]),
  );
  return [...byDay.values()].sort((a, b) => (a.on < b.on ? -1 : 1));
}

/** Where no source names a band, the laboratory's own limits tell whether a result is out of them. */
function ownBand({ lowerNormal = 0, upperNormal = Number.POSITIVE_INFINITY }: Lab): Pick<TargetBand, 'range'> | undefined {
  return lowerNormal === 0 && upperNormal === Number.POSITIVE_INFINITY ? undefined : { range: { lo: lowerNormal, hi: upperNormal } };
}

function outOf(value: number, { lo, hi }: TargetBand['range']): 'above' | 'below' | undefined {
  return value > hi ? 'above' : value < lo ? 'below' : undefined;
}

function otherUnit({ analyte, value, entered }: Lab): { other?: string } {
  const facts = analyteFacts(analyte);
  for (const unit of unitsOf(facts)) {
    const converted = labInUnit(analyte, value, unit);
    if (unit === entered.unit || converted.kind === 'refused' || converted.value === entered.value) continue;
    return { other: valueWords(converted.value, unit) };
  }
  return {};
}

function valueWords(value: number, unit: string): string {
  return `${Number(value.toPrecision(4))}${unit === '{ratio}' ? '' : ` ${unit}`}`;
}
