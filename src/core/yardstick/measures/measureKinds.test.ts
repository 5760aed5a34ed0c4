import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { testText } from '../testText.ts';
import type { Test } from '../yardstick.ts';
import { yardstickFromJson } from '../yardstickFromJson.ts';
import { factsOf, isNumberMeasure, nutrientsOf } from './measureFacts.ts';
import { type MeasureKindName, measureKinds } from './measureKinds.ts';

const formats = readFileSync(new URL('../../../../docs/formats.md', import.meta.url), 'utf8');
const kinds = Object.keys(measureKinds) as MeasureKindName[];
const source = { kind: 'clinic', text: 'own clinic' } as const;

function testOf(kind: MeasureKindName): Test {
  const measure = measureKinds[kind].usual('sodiumMg');
  const bound = isNumberMeasure(measure) ? ({ atMost: 5 } as const) : ({ absent: true } as const);
  return { id: 't', measure: measure.kind === 'ingredient' ? { ...measure, kin: 'garlic' } : measure, basis: 'on-plate', ...bound, source };
}

describe.each(kinds)('the kind of measure "%s"', kind => {
  test('[YST-21] what a form begins with is a test that is read, and says its own kind', () => {
    const given = { id: 'y', title: 'y', tests: [testOf(kind)], settings: 'any' };
    const { value, issues } = yardstickFromJson(JSON.parse(JSON.stringify(given)));
    expect(issues).toEqual([]);
    expect(value?.tests).toEqual([testOf(kind)]);
    expect(value?.tests[0]?.measure.kind).toBe(kind);
  });

  test('[YST-9] its test reads as a sentence with its source', () => {
    expect(testText(testOf(kind))).toMatch(/^[A-Z].* \(own clinic\)$/);
  });

  test('[YST-21] it stands in docs/formats.md', () => {
    expect(/^- `measure\.kind`:(?:.*\n)+?(?=- )/m.exec(formats)?.[0]).toContain(`\`${kind}\``);
  });

  test('[YST-3] a number tells every nutrient of its fields, terms and linear form', () => {
    const { measure } = testOf(kind);
    const named = Object.values(measure).filter(word => word !== kind);
    if (!isNumberMeasure(measure)) return expect(nutrientsOf(measure)).toEqual([]);
    const { nutrients, linear, shownTerms, otherFields } = factsOf(measure);
    expect(nutrientsOf(measure)).toEqual(named);
    expect([measure.nutrient, ...otherFields.map(({ nutrient }) => nutrient)]).toEqual(nutrients);
    expect(linear(5).terms.map(({ nutrient }) => nutrient)).toEqual(nutrients);
    if (shownTerms !== null) expect(shownTerms.map(({ nutrient }) => nutrient)).toEqual(nutrients);
    for (const field of otherFields) expect(nutrientsOf(field.with('ironMg'))).toEqual([measure.nutrient, 'ironMg']);
  });
});
