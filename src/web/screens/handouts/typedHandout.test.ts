import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { handoutFromJson } from '#core/handout/handoutFromJson.ts';
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
