import { describe, expect, it } from 'vitest';
import type { PrintedLabel } from '#core/label/label.ts';
import { fluidOf, fluidOnPlate } from './fluid.ts';
import { foodWith } from './plateFixture.ts';

const cup = { household: '1 cup', grams: 245 };
const of = (name: string, printed: Partial<PrintedLabel> = {}, category?: string) =>
  fluidOf(foodWith(name, { serving: cup, ...printed }), { servings: 1 }, category);

describe('what counts as fluid (kidney facts 3.6)', () => {
  it.each([
    ['Chicken noodle', {}, 'soups and broths'],
    ['Garden tomato soup, lower sodium', {}, undefined],
    ['Chicken soup with rice', {}, undefined],
    ['Reduced fat milk', {}, undefined],
    ['Apple juice', {}, undefined],
    ['Sopa de fideos', {}, undefined],
    ['Café con leche', {}, undefined],
    ['Barley', { referenceAmount: 'soup' }, undefined],
    ['Fizz', { serving: { household: '1 cup', milliliters: 240 } }, undefined],
    ['Cherry gelatin', {}, undefined],
    // Called by what stands before the syrup, the oil, the creamer.
    ['Milk with chocolate syrup', {}, undefined],
    ['Tomato soup with olive oil', { referenceAmount: 'soup' }, undefined],
    ['Coffee with creamer', {}, undefined],
  ] satisfies readonly (readonly [string, Partial<PrintedLabel>, string | undefined])[])(
    '[PLT-9] %s is fluid: a cup is 240 mL (21 CFR 101.9(b)(5)(viii))',
    (name, printed, category) => {
      expect(of(name, printed, category)).toEqual({ kind: 'fluid', milliliters: 240 });
    },
  );

  it.each([
    ['Turkey slices', {}, 'sandwich slices'],
    ['Tuna in water', {}, 'canned fish'],
    ['Rice', {}, undefined],
    ['Milk chocolate', {}, undefined],
    ['Soup crackers', {}, undefined],
    ['Olive oil', { serving: { household: '1 tbsp', milliliters: 15 } }, undefined],
    ['Ranch dressing', { serving: { household: '2 tbsp', milliliters: 30 } }, undefined],
    ['Ketchup', { serving: { household: '1 tbsp', milliliters: 15 }, referenceAmount: 'major-condiment' }, undefined],
  ] satisfies readonly (readonly [string, Partial<PrintedLabel>, string | undefined])[])(
    '[PLT-9] %s is none',
    (name, printed, category) => {
      expect(of(name, printed, category)).toEqual({ kind: 'none' });
    },
  );

  it.each([
    ['condensed soup is made up with water', 'Condensed tomato soup', { serving: { household: '1/2 cup', grams: 122 } }],
    ['told on the front', 'Tomato soup', { serving: { household: '1/2 cup', grams: 122 }, front: ['condensed'] }],
    ['a drink mix', 'Cocoa mix', { referenceAmount: 'soft-drink' }],
    ['no volume on the label', 'Beef broth', { serving: { grams: 240 } }],
  ] satisfies readonly (readonly [string, string, Partial<PrintedLabel>])[])('[PLT-9] how much is not known: %s', (_why, name, printed) => {
    expect(of(name, printed)).toEqual({ kind: 'not-known' });
    expect(of(name, printed)).not.toEqual({ kind: 'none' });
  });

  it('[PLT-9] a condensed soup whose label is as prepared tells', () => {
    expect(of('Condensed tomato soup', { state: 'as-prepared' })).toEqual({ kind: 'fluid', milliliters: 240 });
  });

  it('[PLT-9] the plate counts what the food is eaten with: half a cup of milk on a cereal is 120 mL', () => {
    const cereal = foodWith('Puffed rice', { serving: { household: '1 cup', grams: 15 } });
    const milk = { food: foodWith('Reduced fat milk', { serving: cup }), portion: { measure: 'cup', count: 0.5 } };
    const plate = { id: 'p', title: 'p', portion: { servings: 1 }, companions: [milk] };
    expect(fluidOnPlate(plate, cereal)).toEqual({ kind: 'fluid', milliliters: 120 });
    const soup = foodWith('Beef broth', { serving: { grams: 240 } });
    expect(fluidOnPlate(plate, soup)).toEqual({ kind: 'not-known' });
    expect(fluidOnPlate({ ...plate, companions: [] }, cereal)).toEqual({ kind: 'none' });
  });
});
