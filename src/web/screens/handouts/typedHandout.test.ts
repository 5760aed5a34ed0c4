import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { handoutFromJson } from '#core/handout/handoutFromJson.ts';
import { isSameShape } from '../../ui/draft/sameShape.ts';
import { typedOf } from '../../ui/form/typed.ts';
import { neededAt } from '../../ui/preview/neededAt.ts';
import { handoutOf, typedHandout } from './typedHandout.ts';

const folder = fileURLToPath(new URL('../../../../data/demo/handouts/', import.meta.url));

test.each(readdirSync(folder))('[HND-19] %s goes through its form and is the same handout', name => {
  const json = JSON.parse(readFileSync(folder + name, 'utf8'));
  const read = handoutFromJson(json).value;
  expect(read).toBeDefined();
  expect(handoutFromJson(handoutOf(typedHandout(json))).value).toEqual(read);
});

test('[HND-19] what is empty and needed stays, so that it is told', () => {
  const json = handoutOf(typedHandout(JSON.parse('{ "title": 7, "categories": [{ "category": "soups" }] }')));
  expect(json).toMatchObject({ language: 'en', author: { name: '' }, notes: [] });
  const told = handoutFromJson({ ...json, id: 'x', setting: 'hemodialysis', writtenOn: '2026-06-15', topic: { yardstickId: 'y' } });
  expect(told.issues.map(({ place }) => place.heading)).toEqual(['author.name', 'categories[0].plateId']);
});

test('[HND-19] what is wrong stands beside the field it was typed into', () => {
  const category = { category: 'soups', title: '', plateId: '', meal: '', aisle: '', foodAisles: [], leftOut: [] };
  const values = { ...typedHandout({ title: 'x'.repeat(91), callUs: 'y'.repeat(81) }), categories: [category] };
  const typed = typedOf(values, () => undefined, neededAt(handoutFromJson({ ...handoutOf(values), id: 'x' }).issues));
  const row = typed.rows('categories').each[0]!;
  const wrong = [typed.field('title'), typed.field('callUs'), typed.field('setting'), typed.part('author').field('name')];
  for (const { wrong: told } of [...wrong, row.field('plateId')]) expect(told).toMatch(/^Needed: /);
  expect(row.field('aisle').wrong).toBeUndefined();
});

test('[WEB-4] the draft of a handout fits its form, whichever aisles its foods have', () => {
  const before = typedHandout({ categories: [{ category: 'soups', plateId: 'p' }] });
  const after = typedHandout({ categories: [{ category: 'soups', plateId: 'p', foodAisles: { f: 'Dairy' }, leftOut: ['g'] }] });
  expect(isSameShape(before, after)).toBe(true);
});
