import { describe, expect, it } from 'vitest';
import { foodWith } from './plateFixture.ts';
import { portionFactor, portionGrams, portionMilliliters } from './portionFactor.ts';

const slices = foodWith('Slices', { serving: { household: '4 slices', grams: 56 } });
const sauce = foodWith('Sauce', { serving: { household: '1/2 cup', grams: 125 } });
const drink = foodWith('Drink', { serving: { milliliters: 240 } });

describe('portionFactor', () => {
  it('[PLT-2] servings, grams and the own household measure tell the same portion', () => {
    expect(portionFactor({ servings: 0.5 }, slices)).toBe(0.5);
    expect(portionFactor({ grams: 28 }, slices)).toBe(0.5);
    expect(portionFactor({ measure: 'slices', count: 2 }, slices)).toBe(0.5);
  });

  it('[PLT-3] a cup is 240 mL and a tablespoon 15 mL (21 CFR 101.9(b)(5)(viii))', () => {
    expect(portionFactor({ measure: 'tbsp', count: 2 }, sauce)).toBeCloseTo(30 / 120, 12);
    expect(portionFactor({ milliliters: 60 }, sauce)).toBe(0.5);
    expect(portionFactor({ measure: 'fl oz', count: 4 }, drink)).toBe(0.5);
  });

  it('[PLT-3] an ounce is 28 g (21 CFR 101.9(b)(5)(viii))', () => {
    expect(portionFactor({ measure: 'oz', count: 1 }, slices)).toBe(0.5);
  });

  it('[PLT-3] grams and millilitres are exchanged by density alone', () => {
    expect(portionFactor({ grams: 120 }, drink)).toEqual({ kind: 'unknown', reason: 'no-density' });
    expect(portionFactor({ milliliters: 50 }, slices)).toEqual({ kind: 'unknown', reason: 'no-density' });
    expect(portionFactor({ grams: 123.6 }, { ...drink, densityGPerMl: 1.03 })).toBeCloseTo(0.5, 12);
  });

  it('[PLT-4] a household measure that the label does not print needs its grams', () => {
    expect(portionFactor({ measure: 'scoop', count: 1 }, slices)).toEqual({ kind: 'unknown', reason: 'no-measure-mass' });
    expect(portionFactor({ measure: 'scoops', count: 2 }, { ...slices, gramsPerMeasure: { scoop: 14 } })).toBe(0.5);
  });

  it('[PLT-4] the word "constructor" is a measure like any other', () => {
    expect(portionFactor({ measure: 'constructor', count: 1 }, slices)).toEqual({ kind: 'unknown', reason: 'no-measure-mass' });
  });

  it('[PLT-2] without any serving a portion is unknown', () => {
    const bare = foodWith('Bare', { basis: 'per-100-ml', market: 'eu' });
    expect(portionFactor({ servings: 1 }, bare)).toEqual({ kind: 'unknown', reason: 'no-serving-mass' });
    const perServing = foodWith('No mass', {});
    expect(portionFactor({ grams: 30 }, perServing)).toEqual({ kind: 'unknown', reason: 'no-serving-mass' });
    expect(portionFactor({ servings: 2 }, perServing)).toBe(2);
  });

  it('[PLT-2] an EU panel per 100 g is for as many portions as 100 g make', () => {
    const eu = foodWith('EU bread', { market: 'eu', basis: 'per-100-g', serving: { grams: 40 } });
    expect(portionFactor({ servings: 1 }, eu)).toBeCloseTo(0.4, 12);
    expect(portionFactor({ grams: 40 }, eu)).toBeCloseTo(0.4, 12);
  });

  it('[PLT-2] tells grams and millilitres of a portion where they are known', () => {
    expect(portionGrams({ measure: 'slice', count: 3 }, slices)).toBe(42);
    expect(portionMilliliters({ servings: 1 }, sauce)).toBe(120);
    expect(portionGrams({ servings: 1 }, drink)).toBeUndefined();
  });

  it('[PLT-2] grams and millilitres of a portion are its own where it is told in them', () => {
    expect(portionGrams({ grams: 30 }, drink)).toBe(30);
    expect(portionMilliliters({ milliliters: 30 }, slices)).toBe(30);
    expect(portionMilliliters({ servings: 1 }, slices)).toBeUndefined();
    expect(portionMilliliters({ measure: 'scoop', count: 1 }, sauce)).toBeUndefined();
    expect(portionGrams({ measure: 'scoop', count: 1 }, slices)).toBeUndefined();
  });

  it('[PLT-3] a density turns 120 g into 100 mL, a printed figure needs none', () => {
    const syrup = { ...foodWith('Syrup', { serving: { grams: 60 } }), densityGPerMl: 1.2 };
    expect(portionMilliliters({ servings: 2 }, syrup)).toBe(100);
    expect(portionFactor({ milliliters: 100 }, syrup)).toBe(2);
    const both = { ...foodWith('Both', { serving: { grams: 60, milliliters: 40 } }), densityGPerMl: 1.2 };
    expect([portionMilliliters({ servings: 2 }, both), portionGrams({ servings: 2 }, both)]).toEqual([80, 120]);
    expect(portionFactor({ milliliters: 100 }, foodWith('No mass', {}))).toEqual({ kind: 'unknown', reason: 'no-serving-mass' });
  });

  it('[PLT-4] a serving told in a measure that somebody weighed has grams: 3 scoops of 14 g are 42 g', () => {
    const powder = { ...foodWith('Powder', { serving: { household: '3 scoops' } }), gramsPerMeasure: { slice: 20, scoop: 14 } };
    expect(portionGrams({ servings: 2 }, powder)).toBe(84);
    expect(portionFactor({ grams: 21 }, powder)).toBe(0.5);
    expect(portionFactor({ measure: 'slice', count: 2.1 }, powder)).toBe(1);
    expect(portionGrams({ servings: 1 }, foodWith('Powder', { serving: { household: '3 scoops' } }))).toBeUndefined();
    // 2 oz are 56 g by the law's own ounce (21 CFR 101.9(b)(5)(viii)).
    expect(portionGrams({ servings: 1 }, foodWith('Pasta', { serving: { household: '2 oz' } }))).toBe(56);
  });
});
