import type { DescribedFood } from './largerTable.ts';
import type { ReferenceFood } from './referenceFood.ts';

type Kind = ReferenceFood['phosphorusKind'];

/**
 * Food groups of SR (file FD_GROUP) as groups of our table, and how the body takes up the phosphorus of what stands in
 * them. Baked goods, sweets, snacks, soups, sausages and beverages may hold phosphates beside their own phosphorus: their
 * kind is unknown, which absorbs the widest band.
 */
const groups: Readonly<Record<string, readonly [group: string, kind: Kind]>> = {
  '0100': ['dairy', 'animal'],
  '0200': ['spice', 'plant'],
  '0400': ['fat', 'unknown'],
  '0500': ['poultry', 'animal'],
  '0600': ['condiment', 'unknown'],
  '0700': ['meat', 'unknown'],
  '0900': ['fruit', 'plant'],
  '1000': ['meat', 'animal'],
  '1100': ['vegetable', 'plant'],
  '1200': ['nut', 'plant'],
  '1300': ['meat', 'animal'],
  '1400': ['beverage', 'unknown'],
  '1410': ['alcohol', 'unknown'],
  '1500': ['fish', 'animal'],
  '1600': ['legume', 'plant'],
  '1700': ['meat', 'animal'],
  '1800': ['bread', 'unknown'],
  '1900': ['sweet', 'unknown'],
  '2000': ['grain', 'plant'],
  '2500': ['snack', 'unknown'],
};

/** Baby foods, breakfast cereals, fast foods, meals, branded and restaurant foods: dishes, or the recipe of one maker. */
const leftOut: ReadonlySet<string> = new Set(['0300', '0800', '2100', '2200', '3500', '3600', '4500']);

/** What a maker may have added phosphates to, whatever the group: imitations, injected meat, cured meat, frozen potatoes, mixes. */
const mayHoldPhosphates =
  /\b(?:imitation|substitute|analog|nondairy|non-dairy|process|processed|pasteurized process|enhanced|injected|solution|cured|ham|bacon|breaded|battered|nuggets?|patt(?:y|ies)|surimi|mix|fortified|leavening|self-rising|french fried|hash browns?|filled|restructured|luncheon|deli|imitn|proc|cnd|canned|prep|prepared)\b/i;

/** Whether a food's group is one that ingredient names may be looked up in. An unknown group is. */
export function isIngredientGroup(group: string | null): boolean {
  return group === null || !leftOut.has(group);
}

/**
 * Group and phosphorus kind of a described food (kidney facts 6.1). `{ group: '1100', description: 'Broccoli, raw' }` is a
 * vegetable with plant phosphorus; a processed cheese is dairy of unknown kind.
 */
export function groupOf({ group, description, per100G }: DescribedFood): { readonly group: string; readonly phosphorusKind: Kind } {
  const [name, kind] = (group === null ? undefined : groups[group]) ?? ['other', 'unknown'];
  const own = name === 'dairy' && /^eggs?\b/i.test(description) ? 'egg' : name;
  if (kind !== 'unknown' && mayHoldPhosphates.test(description)) return { group: own, phosphorusKind: 'unknown' };
  return { group: own, phosphorusKind: per100G.phosphorusMg === 0 ? 'none' : kind };
}
