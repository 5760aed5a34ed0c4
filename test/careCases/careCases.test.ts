import { describe, expect, it } from 'vitest';
import { answerTo, careCases, missed } from './careCase.ts';

/**
 * Written from the guideline tables of the clinical sheets before they were run, each with its source and its arithmetic; both
 * directions count: what must be said, and what must not.
 */
describe.each(careCases)('$id $what', careCase => {
  const answer = answerTo(careCase);
  it.each(careCase.expect.map(one => [JSON.stringify(one), one] as const))(
    `[CLT-20] ${careCase.source.slice(0, 60)}: %s`,
    (_, expected) => {
      expect(missed(expected, answer)).toBeUndefined();
    },
  );
});
