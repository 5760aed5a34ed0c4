import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import type { Lab } from '#core/client/assessment/clientFacts.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { type Analyte, analyteFacts } from './analytes.ts';
import { type TargetBand, targetBands } from './targetBands.ts';

export interface TrendPoint {
  readonly on: Day;
  /** Time of day "HH:MM", where it is known. */
  readonly at?: string;
  /** In the trend's unit. */
  readonly value: number;
  /** From a hemolyzed sample: shown, and no ground for a limit. */
  readonly hemolyzed: boolean;
}

/** The values of one analyte over time, oldest first, with where they are wished to be. */
export interface Trend {
  readonly analyte: Analyte;
  readonly name: string;
  readonly unit: string;
  readonly points: readonly TrendPoint[];
  /** More than one where sources differ; none where no source gives a band. */
  readonly bands: readonly TargetBand[];
}

/**
 * The trend of an analyte over all assessments of a client, newest assessment first as a record keeps them. Values are in the canonical
 * unit; a result that stands in several assessments counts once, one that cannot be is left out as everywhere. The bands are those of the
 * newest assessment's setting. Potassium 5.1 on 2026-03-01 and 5.8 on 2026-06-05, on hemodialysis: two points, band 4.6 to 5.3 mmol/L.
 */
export function labTrend(assessments: readonly Assessment[], analyte: Analyte, today: Day): Trend {
  const labs = assessments.flatMap(assessment => checkAssessment(assessment, today).facts.labs.filter(lab => lab.analyte === analyte));
  const { name, unit } = analyteFacts(analyte);
  const [newest] = assessments;
  const once = new Map(labs.map(lab => [`${timeOf(lab)} ${lab.value}`, lab]));
  const oldestFirst = [...once.values()].sort((a, b) => (timeOf(a) < timeOf(b) ? -1 : timeOf(a) > timeOf(b) ? 1 : 0));
  const upperNormal = oldestFirst.findLast(lab => lab.upperNormal !== undefined)?.upperNormal;
  return {
    analyte,
    name,
    unit,
    points: oldestFirst.map(({ takenOn, takenAt, value, hemolyzed }) => ({
      on: takenOn,
      ...(takenAt === undefined ? {} : { at: takenAt }),
      value,
      hemolyzed,
    })),
    bands: newest === undefined ? [] : targetBands(analyte, newest.treatment.setting, upperNormal),
  };
}

/** Days and times sort as they are written. */
function timeOf({ takenOn, takenAt = '' }: Lab): string {
  return `${takenOn} ${takenAt}`;
}
