import { expect, test } from 'vitest';
import { surveyRequest } from './surveyRequest.ts';

const fallback = { category: 'soups', plates: undefined };

test('[SRV-7] an address that switches nothing on asks for nothing, whether it says so or not', () => {
  for (const search of [{}, { on: '' }, { on: ',' }]) expect(surveyRequest(search, fallback).switchedOn).toEqual([]);
  expect(surveyRequest({ on: 'potassium,phosphorus' }, fallback).switchedOn).toEqual(['potassium', 'phosphorus']);
});

test('[SRV-7] columns of an address are those that there are', () => {
  const columns = 'potassiumMg,salt,phosphorusMgPerProteinG,constructor';
  expect(surveyRequest({ columns }, fallback).columns).toEqual(['potassiumMg', 'phosphorusMgPerProteinG']);
});
