import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { z } from 'zod';
import type { Issue } from '#core/errors.ts';
import { checkJson } from '#core/json/checkJson.ts';
import { type Ingredients, ingredientsSchema } from './ingredient.ts';
import { type Makers, makersSchema } from './maker.ts';
import type { Food } from './recipe.ts';
import type { RecipeWorld } from './recipeFaults.ts';
import { recipesFromJson } from './recipesFromJson.ts';

/** @throws RangeError that names the file and the place of every fault in it. */
export function ingredientsIn(file: URL): Ingredients {
  return checked(file, ingredientsSchema);
}

/** @throws RangeError that names the file and the place of every fault in it. */
export function makersIn(file: URL): Makers {
  return checked(file, makersSchema);
}

/** @throws RangeError that names the file and the place of every fault in it. */
export function recipesIn(file: URL, world: RecipeWorld): readonly Food[] {
  const { foods, issues } = recipesFromJson(jsonIn(file), world);
  refuse(file, issues);
  return foods;
}

function checked<Schema extends z.ZodType>(file: URL, schema: Schema): z.output<Schema> {
  const check = checkJson(schema, jsonIn(file));
  refuse(file, check.issues);
  if (!check.ok) throw new RangeError(fileURLToPath(file));
  return check.value;
}

function jsonIn(file: URL): unknown {
  const text = readFileSync(file, 'utf8');
  try {
    return JSON.parse(text);
  } catch (cause) {
    throw new RangeError(`${fileURLToPath(file)} is not JSON`, { cause });
  }
}

function refuse(file: URL, issues: readonly Issue[]): void {
  if (issues.length === 0) return;
  const lines = issues.map(({ place, found, expected }) => `${place.heading}: found ${found}, expected ${expected}`);
  throw new RangeError([`${fileURLToPath(file)} has faults`, ...lines].join('\n'));
}
