import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { checkJson } from './checkJson.ts';
import { isSameJson } from './isSameJson.ts';
import { isNestedTooDeep } from './nesting.ts';
import { isNewerForm, isObject, presentForm } from './presentForm.ts';
import { readWhole } from './readWhole.ts';
import { shownJson } from './shownJson.ts';

const schema = z.object({
  name: z.string({ error: 'text' }),
  parts: z.array(z.object({ count: z.number({ error: 'a number' }) })).optional(),
});

function nested(levels: number): unknown {
  let value: unknown = 1;
  for (let level = 0; level < levels; level++) value = [value];
  return value;
}

describe('JSON from outside', () => {
  test('[GDE-11] every fault names its place, what stands there and what was expected', () => {
    expect(checkJson(schema, { name: 1, parts: [{ count: 1 }, { count: 'two' }, null] })).toMatchObject({
      ok: false,
      issues: [
        { code: 'json-not-valid', place: { heading: 'name' }, found: '1', expected: 'text' },
        { place: { heading: 'parts[1].count' }, found: '"two"', expected: 'a number' },
        { place: { heading: 'parts[2]' }, found: 'null' },
      ],
    });
    expect(checkJson(schema, 'words')).toMatchObject({ ok: false, issues: [{ place: { heading: '' }, found: '"words"' }] });
    expect(checkJson(schema, {})).toMatchObject({ ok: false, issues: [{ found: 'nothing', expected: 'text' }] });
  });

  test('[PLT-8] a key that nobody reads is reported and left alone, or refuses the whole', () => {
    const json = { name: 'x', nmae: 'y', parts: [{ count: 1 }, { count: 2, size: 3 }] };
    const keys = [
      { code: 'json-key-not-known', place: { heading: 'nmae' }, found: 'nmae' },
      { code: 'json-key-not-known', place: { heading: 'parts[1].size' }, found: 'size' },
    ];
    expect(checkJson(schema, json)).toMatchObject({ ok: true, value: { name: 'x', parts: [{ count: 1 }, { count: 2 }] }, issues: keys });
    expect(readWhole(schema, json)).toMatchObject({ value: undefined, issues: keys });
    expect(readWhole(schema, { name: 'x' })).toEqual({ value: { name: 'x' }, issues: [] });
    expect(readWhole(schema, { name: 1 })).toMatchObject({ value: undefined, issues: [{ code: 'json-not-valid' }] });
  });

  test('[LBL-22] two hundred levels are read, more are refused before anything walks them', () => {
    expect([isNestedTooDeep(1), isNestedTooDeep(nested(200)), isNestedTooDeep(nested(201))]).toEqual([false, false, true]);
    expect(isNestedTooDeep({ a: null, b: { c: [] }, d: nested(201) })).toBe(true);
    expect(checkJson(z.unknown(), nested(201))).toMatchObject({
      ok: false,
      issues: [{ code: 'json-not-valid', found: 'JSON that is nested deeper than 200 levels' }],
    });
    expect(checkJson(z.unknown(), nested(200)).ok).toBe(true);
  });
});

describe('forms of what is kept', () => {
  // Form 1 called it "title", form 2 had no parts.
  const steps = [
    ({ title, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, name: title }),
    (json: Readonly<Record<string, unknown>>) => ({ ...json, parts: [] }),
  ];

  test.each([
    [{ title: 'x' }, { name: 'x', parts: [] }],
    [
      { format: 1, title: 'x' },
      { name: 'x', parts: [] },
    ],
    [
      { format: 2, name: 'x' },
      { name: 'x', parts: [] },
    ],
    [{ format: 3, name: 'x' }, { name: 'x' }],
    // No object: the schema refuses it.
    ['words', 'words'],
    [[1], [1]],
    [null, null],
  ])('[LBL-22] %j becomes %j', (json, present) => {
    expect(presentForm(json, steps)).toEqual({ value: present, issues: [] });
  });

  test.each([4, 0, -1, 1.5, '1', null])('[LBL-22] a form %j is refused by name', format => {
    const { value, issues } = presentForm({ format, name: 'x' }, steps);
    expect(value).toBeUndefined();
    expect(issues).toEqual([
      {
        code: 'json-format-not-known',
        place: { heading: 'format' },
        found: String(JSON.stringify(format)),
        expected: 'a form up to 3; a newer program writes others, and reads this one',
      },
    ]);
    expect(isNewerForm(issues)).toBe(true);
  });

  test('[LBL-22] a form is brought up before it is checked; only a form that is not known is a newer one', () => {
    expect(checkJson(schema, { title: 'x' }, steps)).toEqual({ ok: true, value: { name: 'x', parts: [] }, issues: [] });
    expect(checkJson(schema, { format: 9 }, steps)).toMatchObject({ ok: false, issues: [{ code: 'json-format-not-known' }] });
    expect(isNewerForm([])).toBe(false);
    expect(isNewerForm([{ code: 'json-not-valid', place: {}, found: '', expected: '' }])).toBe(false);
    expect(
      isNewerForm([
        { code: 'json-not-valid', place: {}, found: '', expected: '' },
        { code: 'json-format-not-known', place: {}, found: '', expected: '' },
      ]),
    ).toBe(true);
    expect([{}, [], null, 'x'].map(isObject)).toEqual([true, false, false, false]);
  });
});

describe('JSON beside JSON, and in words', () => {
  test.each<[unknown, unknown, boolean]>([
    [{ a: 1, b: 2 }, { b: 2, a: 1 }, true],
    [{ a: 1 }, { a: 1, b: 2 }, false],
    [{ a: 1, b: 2 }, { a: 1 }, false],
    [{ a: 1, b: 2 }, { a: 1, b: 3 }, false],
    [{ a: 1, b: 2 }, { a: 3, b: 2 }, false],
    [{ a: undefined }, { b: undefined }, false],
    [[1, 2], [1, 2], true],
    [[1, 2], [2, 1], false],
    [[1, 2], [1, 3], false],
    [[1], [1, 2], false],
    [[], {}, false],
    [{}, [], false],
    [{ a: [{ b: null }] }, { a: [{ b: null }] }, true],
    ['x', 'x', true],
    [null, {}, false],
    [1, '1', false],
  ])('%j and %j say the same: %s', (a, b, same) => {
    expect(isSameJson(a, b)).toBe(same);
  });

  test('what stands in JSON is shown in sixty characters', () => {
    expect([undefined, null, 'soon', [1, 2]].map(shownJson)).toEqual(['nothing', 'null', '"soon"', '[1,2]']);
    expect(shownJson('x'.repeat(58))).toBe(`"${'x'.repeat(58)}"`);
    expect(shownJson('x'.repeat(59))).toBe(`"${'x'.repeat(56)}…`);
    expect([shownJson(() => 1), shownJson(1n)]).toEqual(['function', 'a bigint']);
  });
});
