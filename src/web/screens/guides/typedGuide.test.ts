import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { guideFromJson } from '#core/guide/guideFromJson.ts';
import { isSameShape } from '../../ui/draft/sameShape.ts';
import { typedOf } from '../../ui/form/typed.ts';
import { neededAt } from '../../ui/preview/neededAt.ts';
import { emptyPlace, foodIn, guideOf, placeOfFood, typedGuide, withFood } from './typedGuide.ts';

const demo = JSON.parse(readFileSync(fileURLToPath(new URL('../../../../data/demo/guides/sandwich-slices.json', import.meta.url)), 'utf8'));

test('[GDE-25] a guide goes through its form and is the same guide', () => {
  const { id, ...more } = demo;
  const photos = { 'food-1': { dataUrl: 'data:image/jpeg;base64,AAAA', alt: 'the package' } };
  const leftOut = [
    { foodId: 'food-2', reason: 'no longer sold' },
    { foodId: 'food-1', reason: 'another one is meant' },
  ];
  const whole = { ...demo, photos, leftOut, settingsNotes: { transplant: 'Ask first.' } };
  const through = guideOf(typedGuide({ ...whole, somethingNew: { kept: true } }));
  expect(through).toMatchObject({ somethingNew: { kept: true } });
  const read = guideFromJson({ id, ...more, photos, leftOut, settingsNotes: whole.settingsNotes }).value;
  expect(read).toBeDefined();
  expect(guideFromJson({ ...through, somethingNew: undefined }).value).toEqual(read);
});

test('[GDE-25] what is empty and needed stays, so that it is told; what may be missing is left out', () => {
  const typed = typedGuide(JSON.parse('{ "title": 3, "cautions": "none", "author": null }'));
  expect(typed).toMatchObject({ title: '3', cautions: '', author: { name: '' }, arrangement: 'shelf', recheckAfterDays: '180' });
  const json = guideOf({
    ...typed,
    recheckAfterDays: 'soon',
    foods: [{ ...foodIn([], 'f'), portionNotes: ' ', whereToBuy: [emptyPlace] }],
  });
  expect(json).toMatchObject({
    author: { name: '' },
    whereToBuy: {},
    portionNotes: {},
    photos: {},
    recheckAfterDays: 'soon',
    cautions: [],
  });
  const told = guideFromJson({ ...json, id: 'x' }).issues.map(({ place }) => place.heading);
  expect(told).toEqual(expect.arrayContaining(['purpose', 'author.name', 'survey.category', 'recheckAfterDays']));
});

test('[GDE-25] what is wrong stands beside the field it was typed into', () => {
  const empty = typedGuide({});
  const values = {
    ...empty,
    foods: [{ ...foodIn([], 'f'), whereToBuy: [{ ...emptyPlace, aisle: 'Dairy' }], photos: { dataUrl: 'none', alt: '' } }],
    leftOut: [{ foodId: 'f', reason: '' }],
    disclosures: [{ kind: 'affiliate', text: '', shops: '', foods: [] }],
    corrections: [{ on: 'soon', text: '' }],
    recheckAfterDays: 'soon',
  };
  const wrongAt = neededAt(guideFromJson({ ...guideOf(values), id: 'x' }).issues);
  const typed = typedOf(values, () => undefined, wrongAt);
  const food = typedOf(
    foodIn(values.foods, 'f'),
    () => undefined,
    place => wrongAt(placeOfFood('f', place)),
  );
  const wrong = [
    typed.field('title'),
    typed.field('recheckAfterDays'),
    typed.part('author').field('name'),
    typed.rows('leftOut').each[0]!.field('reason'),
    typed.rows('disclosures').each[0]!.field('text'),
    typed.rows('corrections').each[0]!.field('on'),
    typed.rows('corrections').each[0]!.field('text'),
    food.rows('whereToBuy').each[0]!.field('shop'),
    food.part('photos').field('alt'),
  ];
  for (const { wrong: told } of wrong) expect(told).toMatch(/^Needed: /);
  expect(food.rows('whereToBuy').each[0]!.field('shop').wrong).toBe('Needed: text.');
  expect(food.rows('whereToBuy').each[0]!.field('aisle').wrong).toBeUndefined();
});

test('[WEB-4] the draft of a guide fits its form, whichever foods it says something of', () => {
  const typed = typedGuide(demo);
  expect(typed.foods.length).toBeGreaterThan(0);
  const more = { ...typed, foods: withFood(typed.foods, { ...foodIn([], 'another'), whereToBuy: [emptyPlace] }) };
  expect(more.foods).toHaveLength(typed.foods.length + 1);
  expect(isSameShape(typed, more)).toBe(true);
  expect(isSameShape(typedGuide({}), { ...typed, rest: {} })).toBe(true);
  const [first] = typed.foods;
  const said = withFood(typed.foods, { ...first!, portionNotes: 'level' });
  expect(said).toHaveLength(typed.foods.length);
  expect(foodIn(said, first!.foodId).portionNotes).toBe('level');
});
