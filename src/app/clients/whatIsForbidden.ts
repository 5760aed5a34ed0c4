import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { allergiesOf, type ClientRecord, foodsToAvoid, newestAndSignedFor } from '#core/client/record/record.ts';
import { suppressed } from '#core/client/states/suppressed.ts';
import type { Day } from '#core/quantity/calendarDay.ts';
import type { ForClient } from './judgeForClient.ts';

/** What a client's record forbids: of the newest assessment and of the one that was signed for, since a new allergy cannot wait for a signature. */
export function whatIsForbidden(record: ClientRecord, today: Day): Pick<ForClient, 'avoidedFoods' | 'allergies' | 'isSuppressed'> {
  return {
    avoidedFoods: foodsToAvoid(record),
    allergies: allergiesOf(record),
    isSuppressed: newestAndSignedFor(record).some(one => suppressed(checkAssessment(one, today).facts) !== undefined),
  };
}
