import { expect, test } from 'vitest';
import { isSameShape } from '../../ui/draft/sameShape.ts';
import { surveyRequest } from '../survey/surveyRequest.ts';
import { surveySearch } from '../survey/surveySearch.ts';
import { guideIdOf, newGuideOf, typedNewGuide } from './typedNewGuide.ts';

test('[GDE-25] a guide is begun from the sentence of its survey', () => {
  const search = { category: 'soups', plate: 'p', yardstick: 'y', servings: '2', setting: 'transplant' };
  const request = surveyRequest(search, { category: '', plates: [] });
  const guide = newGuideOf({ ...typedNewGuide(search), title: 'Soups', author: 'O. F.' }, request, 'low in salt', '2026-06-15');
  expect(guide).toMatchObject({
    title: 'Soups',
    purpose: 'Foods of the category soups that are low in salt.',
    publishedOn: '2026-06-15',
    survey: { category: 'soups', plateId: 'p', yardstickId: 'y', setting: 'transplant', servings: 2 },
  });
  expect(guide.author).toEqual({ name: 'O. F.' });
});

test('[WEB-4] the draft of a guide that is begun fits its form, whichever parts of the sentence were chosen', () => {
  const chosen = typedNewGuide(surveySearch({ category: 'soups', columns: 'potassium', show: 'table', food: 'f', on: 'a' }));
  expect(isSameShape(typedNewGuide({}), chosen)).toBe(true);
});

test('[GDE-25] the id of a guide is made of its title, and two guides of one title have two', () => {
  expect(guideIdOf('Sopas y caldos: ¡sin sal! ñ')).toMatch(/^sopas-y-caldos-sin-sal-n-[0-9a-f]{4}$/);
  expect(guideIdOf('湯')).toMatch(/^[0-9a-f]{4}$/);
});
