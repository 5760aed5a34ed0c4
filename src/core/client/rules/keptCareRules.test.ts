import { expect, test } from 'vitest';
import { careFigure } from './careRules.ts';
import form1 from './forms/clinicFigures.form1.json' with { type: 'json' };
import form2 from './forms/clinicFigures.form2.json' with { type: 'json' };
import { keptCareRulesFromJson, keptCareRulesToJson } from './keptCareRules.ts';

test.each([
  ['form 1', form1],
  ['form 2', form2],
])('[CLT-70] the figures of a clinic, %s, are read whole and written in the newest form', (_, json) => {
  const { value, issues } = keptCareRulesFromJson(json);
  expect(issues).toEqual([]);
  expect(careFigure(value!.rules, 'age.dry-weight')).toBe(45);
  expect(keptCareRulesToJson(value!)).toEqual(form2);
});

test.each([
  ['nothing', null, ''],
  ['a newer form', { ...form2, format: 3 }, 'format'],
  ['a figure outside what a clinic may set', { ...form2, figures: [{ ...form2.figures[0], value: 60 }] }, '[0].value'],
  ['a key nobody reads', { ...form2, more: 1 }, 'more'],
])('[CLT-70] %s is refused with its place', (_, json, place) => {
  const { value, issues } = keptCareRulesFromJson(json);
  expect(value).toBeUndefined();
  expect(issues[0]?.place.heading).toBe(place);
});
