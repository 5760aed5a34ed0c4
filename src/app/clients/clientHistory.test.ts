import { expect, test } from 'vitest';
import { clientWith, today } from '#core/client/assessment/clientFixture.ts';
import { changesBetween } from './clientHistory.ts';

test('[CLT-83] what is taken otherwise than before is told, and what stays is not', () => {
  const potassiumBinders = [{ binder: 'patiromer' }] as const;
  const before = clientWith({ binders: [{ binder: 'sevelamer', unitMg: 800, unitsPerDay: 3 }], potassiumBinders });
  const after = clientWith({ binders: [{ binder: 'sevelamer', unitMg: 800, unitsPerDay: 6 }], potassiumBinders });
  expect(changesBetween(before, after, today)).toEqual(['Taken otherwise: Phosphate binders: sevelamer, 800 mg, 6 a day.']);
  expect(changesBetween(after, after, today)).toEqual([]);
});
