import { expect, test } from 'vitest';
import type { Assessment } from '#core/client/assessment/assessment.ts';
import { checkAssessment } from '#core/client/assessment/checkAssessment.ts';
import { clientWith, lab, today } from '#core/client/assessment/clientFixture.ts';
import { addDays } from '#core/quantity/calendarDay.ts';
import { cautionsFor } from './cautions.ts';

const cautionsOf = (more: Partial<Assessment>) => cautionsFor(checkAssessment(clientWith(more), today).facts);

test('[CLT-30] the emergency stands before what is for the same day, that before what has days, that before all others', () => {
  const day = addDays(today, -1);
  const labs = [lab('potassium', 5.8, 'mmol/L', day), lab('hemoglobin', 6.8, 'g/dL', day), lab('sodium', 119, 'mmol/L', day)];
  const contacts = cautionsOf({ labs, supplements: ['salt-substitute'] }).map(({ contact }) => contact);
  expect(contacts.slice(0, 4)).toEqual(['emergency-now', 'same-day', 'within-days', undefined]);
});

// Own decision: 0.3 g/dL is more than two ways of measuring albumin differ by.
test.each([
  [4.1, 3.8, 30, true],
  [4.1, 3.9, 30, false],
  [3.8, 4.1, 30, false],
  [4.3, 3.9, 200, false],
])('[CLT-31] albumin of %d, then %d after %d days: told to have fallen, %s', (before, now, days, isTold) => {
  const labs = [lab('albumin', before, 'g/dL', addDays(today, -1 - days)), lab('albumin', now, 'g/dL', addDays(today, -1))];
  expect(JSON.stringify(cautionsOf({ labs })).includes(`Albumin fell from ${before} to ${now}`)).toBe(isTold);
});
