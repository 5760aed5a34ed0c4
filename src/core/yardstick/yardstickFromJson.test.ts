import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { builtInYardsticks } from './builtInYardsticks.ts';
import { yardstickFromJson } from './yardstickFromJson.ts';

const formats = readFileSync(new URL('../../../docs/formats.md', import.meta.url), 'utf8');
const example = JSON.parse(/## Yardstick JSON\s+```json\n([\s\S]*?)```/.exec(formats)?.[1] ?? '');
const oneTest = example.tests[0];
const withTest = (changes: object) => yardstickFromJson({ ...example, tests: [{ ...oneTest, ...changes }] });

describe('yardstickFromJson', () => {
  it('[YST-21] the example of docs/formats.md is the built-in rule of sodium and energy', () => {
    const { value, issues } = yardstickFromJson(example);
    expect(issues).toEqual([]);
    expect(value?.tests).toEqual(builtInYardsticks[0]?.tests);
  });

  it.each(builtInYardsticks)('[YST-21] $id survives a trip through JSON', yardstick => {
    expect(yardstickFromJson(JSON.parse(JSON.stringify(yardstick)))).toEqual({ value: yardstick, issues: [] });
  });

  it('[YST-21] a test has exactly one bound', () => {
    expect(withTest({ atLeast: 3 })).toMatchObject({
      value: undefined,
      issues: [{ place: { heading: 'tests[0]' }, expected: expect.stringContaining('exactly one') }],
    });
    const { atMost, ...without } = oneTest;
    expect(yardstickFromJson({ ...example, tests: [without] }).value).toBeUndefined();
  });

  it('[YST-21] absent is for additives and ingredients, a number for all else', () => {
    const { atMost, ...rest } = oneTest;
    expect(yardstickFromJson({ ...example, tests: [{ ...rest, absent: true }] }).value).toBeUndefined();
    expect(withTest({ measure: { kind: 'additive', class: 'phosphate' } }).value).toBeUndefined();
    const absent = { ...rest, measure: { kind: 'ingredient', kin: 'garlic' }, absent: true };
    expect(yardstickFromJson({ ...example, tests: [{ ...absent, basis: 'as-eaten' }] }).value?.tests[0]?.absent).toBe(true);
    expect(yardstickFromJson({ ...example, tests: [{ ...absent, basis: 'per-serving' }] }).value).toBeUndefined();
  });

  it('[YST-21] faults name their place', () => {
    expect(withTest({ measure: { kind: 'nutrient', nutrient: 'sodium' } }).issues[0]).toMatchObject({
      place: { heading: 'tests[0].measure.nutrient' },
      found: '"sodium"',
    });
    expect(withTest({ basis: 'per-meal' }).issues[0]?.place.heading).toBe('tests[0].basis');
    expect(withTest({ measure: { kind: 'daily-value-percent', nutrient: 'transFatG' } }).issues[0]?.expected).toContain('Daily Value');
    expect(yardstickFromJson({ ...example, settings: ['acute kidney injury'] }).value).toBeUndefined();
    expect(yardstickFromJson({ ...example, tests: [oneTest, oneTest] }).value).toBeUndefined();
    expect(yardstickFromJson(undefined).value).toBeUndefined();
  });

  it('[YST-21] class scales ascend and end open', () => {
    const scale = builtInYardsticks.find(({ classScales }) => classScales.length > 0)?.classScales[0];
    const scaled = (classes: object[]) => yardstickFromJson({ ...example, classScales: [{ ...scale, classes }] }).value;
    expect(scaled([{ name: 'low', upTo: 100 }, { name: 'high' }])).toBeDefined();
    expect(scaled([{ name: 'low', upTo: 100 }, { name: 'medium', upTo: 90 }, { name: 'high' }])).toBeUndefined();
    expect(
      scaled([
        { name: 'low', upTo: 100 },
        { name: 'high', upTo: 200 },
      ]),
    ).toBeUndefined();
  });

  it('[YST-21] a key that nobody reads is reported and left alone', () => {
    const { value, issues } = withTest({ atmost: 5 });
    expect(value).toBeDefined();
    expect(issues).toEqual([expect.objectContaining({ code: 'json-key-not-known', place: { heading: 'tests[0].atmost' } })]);
  });
});
