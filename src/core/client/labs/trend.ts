import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import type { Lab } from '#core/client/assessment/clientFacts.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import { type Analyte, analyteFacts, analyteKeys } from './analytes.ts';
import { type TargetBand, targetBands } from './targetBands.ts';

/** The values of one analyte over time, oldest first, with where they are wished to be. */
export interface Trend {
  readonly analyte: Analyte;
  readonly name: string;
  readonly unit: string;
  /** In the trend's unit. */
  readonly points: readonly Lab[];
  /** More than one where sources differ; none where no source gives a band. */
  readonly bands: readonly TargetBand[];
}

/**
 * The trends of all analytes on record over all assessments of a client, newest assessment first as a record keeps them. Values are in the
 * canonical unit; a result that stands in several assessments counts once, one that cannot be is left out as everywhere. The bands are those of
 * the newest assessment's setting. Potassium 5.1 on 2026-03-01 and 5.8 on 2026-06-05, on hemodialysis: two points, band 4.6 to 5.3 mmol/L.
 */
export function labTrends(assessments: readonly Assessment[], today: Day): readonly Trend[] {
  const [newest] = assessments;
  const byAnalyte = new Map<Analyte, Map<string, Lab>>();
  for (const assessment of assessments) {
    for (const lab of checkAssessment(assessment, today).facts.labs) {
      const once = byAnalyte.get(lab.analyte) ?? new Map<string, Lab>();
      byAnalyte.set(lab.analyte, once.set(`${timeOf(lab)} ${lab.value}`, lab));
    }
  }
  return analyteKeys.flatMap(analyte => {
    const labs = byAnalyte.get(analyte);
    if (newest === undefined || labs === undefined) return [];
    const oldestFirst = [...labs.values()].sort((a, b) => (timeOf(a) < timeOf(b) ? -1 : timeOf(a) > timeOf(b) ? 1 : 0));
    const upperNormal = oldestFirst.findLast(lab => lab.upperNormal !== undefined)?.upperNormal;
    const { name, unit } = analyteFacts(analyte);
    return [{ analyte, name, unit, points: oldestFirst, bands: targetBands(analyte, newest.treatment.setting, upperNormal) }];
  });
}

/** Days and times sort as they are written. */
function timeOf({ takenOn, takenAt = '' }: Lab): string {
  return `${takenOn} ${takenAt}`;
}
