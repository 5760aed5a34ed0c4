import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import { guideOf, typedGuide } from './typedGuide.ts';

const demo = JSON.parse(readFileSync(fileURLToPath(new URL('../../../../data/demo/guides/sandwich-slices.json', import.meta.url)), 'utf8'));

test('[GDE-25] a guide goes through its form and is the same guide', () => {
  const { id, ...more } = demo;
  const through = guideOf(typedGuide({ ...demo, somethingNew: { kept: true } }));
  expect(through).toMatchObject({ somethingNew: { kept: true } });
  expect(guideFromJson({ ...through, somethingNew: undefined }).value).toEqual(guideFromJson({ id, ...more }).value);
});

test('[GDE-25] what is empty and needed stays, so that it is told; what may be missing is left out', () => {
  const typed = typedGuide(JSON.parse('{ "title": 3, "cautions": "none", "author": null }'));
  expect(typed).toMatchObject({ title: '3', cautions: '', authorName: '', arrangement: 'shelf', recheckAfterDays: '180' });
  const json = guideOf({ ...typed, recheckAfterDays: 'soon', whereToBuy: { f: [] }, portionNotes: { f: ' ' } });
  expect(json).toMatchObject({ author: { name: '' }, whereToBuy: {}, portionNotes: {}, recheckAfterDays: 'soon', cautions: [] });
  const told = guideFromJson({ ...json, id: 'x' }).issues.map(({ place }) => place.heading);
  expect(told).toEqual(expect.arrayContaining(['purpose', 'author.name', 'survey.category', 'recheckAfterDays']));
});
