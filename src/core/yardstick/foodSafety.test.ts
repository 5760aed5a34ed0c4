import { expect, test } from 'vitest';
import { foodWith } from '#core/plate/plateFixture.ts';
import { unsafeFood } from './foodSafety.ts';

const of = (name: string, statement: string, category: string) =>
  unsafeFood(foodWith(name, statement === '' ? {} : { statement }), category);

// US food safety advice for transplant recipients, from memory (care rules 4).
test.each([
  ['Oven-roasted turkey breast', 'TURKEY BREAST, WATER.', 'sandwich slices', 'cold-cuts', 'heat'],
  ['Deli-style ham', 'PORK, WATER.', 'meat', 'cold-cuts', 'heat'],
  ['Chili-lime chicken breast', 'CHICKEN, CHILI.', 'Deli meats', 'cold-cuts', 'heat'],
  ['Beef franks', 'BEEF, WATER.', 'hot dogs', 'cold-cuts', 'heat'],
  ['Turkey hot dogs', '', 'meat', 'cold-cuts', 'heat'],
  ['Jamón cocido', 'CERDO, AGUA.', 'carnes frías', 'cold-cuts', 'heat'],
  ['Bologna', 'PORK, BEEF.', '', 'cold-cuts', 'heat'],
  ['Queso fresco', 'PASTEURIZED MILK, SALT.', 'cheese', 'soft-fresh-cheese', 'heat'],
  ['Requesón', 'WHEY, MILK.', 'cheese', 'soft-fresh-cheese', 'heat'],
  ['Queso panela', '', 'cheese', 'soft-fresh-cheese', 'heat'],
  ['Panela', 'PASTEURIZED MILK, SALT, ENZYMES.', 'cheese', 'soft-fresh-cheese', 'heat'],
  ['Aged cheddar', 'RAW MILK, SALT, ENZYMES.', 'cheese', 'raw-milk', 'never'],
  ['Raw-milk queso fresco', 'MILK, SALT.', 'cheese', 'raw-milk', 'never'],
  ['Mung bean sprouts', 'MUNG BEANS.', 'produce', 'raw-sprouts', 'never'],
  ['Alfalfa sprouts', '', 'produce', 'raw-sprouts', 'never'],
  ['Smoked salmon', 'SALMON, SALT, SMOKE.', 'seafood', 'smoked-fish', 'never'],
  ['Salmon, smoked, wild', 'SALMON, SALT.', 'seafood', 'smoked-fish', 'never'],
  ['Lox', '', 'seafood', 'smoked-fish', 'never'],
  ['Trucha ahumada', 'TRUCHA, SAL.', 'pescado', 'smoked-fish', 'never'],
])('[YST-40] “%s” (%s; %s) is %s: %s', (name, statement, category, id, rule) => {
  expect(of(name, statement, category)).toMatchObject({ id, rule });
});

test.each([
  ['Smoked salmon, shelf-stable, canned', 'SALMON, SALT.', 'canned fish'],
  ['Smoked salmon', 'SALMON, SALT.', 'canned fish'],
  ['Bean sprout-free salad', 'LETTUCE, CARROT.', 'salads'],
  ['Brussels sprouts', 'BRUSSELS SPROUTS.', 'produce'],
  ['Sprouted wheat bread', 'SPROUTED WHEAT.', 'bread'],
  ['Medium cheddar slices', 'PASTEURIZED MILK, SALT, ENZYMES.', 'sandwich slices'],
  ['Turkey soup', 'WATER, TURKEY, CARROTS.', 'soups and broths'],
  ['Split pea soup with ham', 'WATER, SPLIT PEAS, HAM.', 'soups and broths'],
  ['Soy slices, bologna style', 'SOY PROTEIN, WATER.', 'sandwich slices'],
  ['Smoked turkey-style tofu', 'TOFU, WATER.', 'sandwich slices'],
  ['Panela', 'UNREFINED CANE SUGAR.', 'sweeteners'],
  ['Whole chicken', 'CHICKEN.', 'poultry'],
  ['Hamburger buns', 'WHEAT FLOUR.', 'bread'],
  ['Smoked almonds', 'ALMONDS, SALT.', 'nuts'],
  ['Tuna with smoked paprika', 'TUNA, PAPRIKA.', 'seafood'],
  ['Graham crackers', 'WHEAT FLOUR.', 'cookies'],
])('[YST-40] “%s” (%s; %s) needs no such line', (name, statement, category) => {
  expect(of(name, statement, category)).toBeUndefined();
});
