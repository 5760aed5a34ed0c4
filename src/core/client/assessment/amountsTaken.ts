import { z } from 'zod';
import type { DeepReadonly } from '#core/json/deepReadonly.ts';
import { typedDay } from './typedDay.ts';
import { addedFoods, binders, potassiumBinders } from './vocabularies.ts';

const amount = z.number().exactOptional();
const words = z.string().max(200).exactOptional();

/** A phosphate binder as it is taken. A number that is left out is not known: also of a meal, unless the number of the whole day stands. */
export const takenBinderSchema = z.object({
  binder: z.enum(binders.keys),
  /** What it is, where it is another one. */
  words,
  /** Of the compound in one tablet, capsule or packet; of lanthanum the element, as its label says. */
  unitMg: amount,
  unitsPerDay: amount,
  unitsWith: z.object({ breakfast: amount, lunch: amount, dinner: amount, snack: amount }).exactOptional(),
});
export type TakenBinder = DeepReadonly<z.output<typeof takenBinderSchema>>;

/** A potassium binder; grams of a day on which it is taken. */
export const takenPotassiumBinderSchema = z.object({ binder: z.enum(potassiumBinders.keys), gPerDay: amount, daysPerWeek: amount });
export type TakenPotassiumBinder = DeepReadonly<z.output<typeof takenPotassiumBinderSchema>>;

/** What of an added food is counted, all of a day on which it is taken. */
export const addedNutrients = ['energyKcal', 'proteinG', 'sodiumMg', 'potassiumMg', 'phosphorusMg', 'calciumMg', 'fluidMl'] as const;
export type AddedNutrient = (typeof addedNutrients)[number];

/** A supplement, feed or meal beside the ordinary ones. */
export const addedFoodSchema = z.object({
  food: z.enum(addedFoods.keys),
  words,
  energyKcal: amount,
  proteinG: amount,
  sodiumMg: amount,
  potassiumMg: amount,
  phosphorusMg: amount,
  calciumMg: amount,
  fluidMl: amount,
  daysPerWeek: amount,
});
export type TakenFood = DeepReadonly<z.output<typeof addedFoodSchema>>;

/** A hemodialysis treatment. Weights before and after it are weighings of the same day; a gain that is typed stands before what they say. */
export const sessionSchema = z.object({
  on: typedDay,
  gainKg: amount,
  removedL: amount,
  hours: amount,
});
export type Session = DeepReadonly<z.output<typeof sessionSchema>>;
