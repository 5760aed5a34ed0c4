import type { AimedAmount } from './clientAims.ts';

/** What may be signed as "at least" and is met by food, in the order in which it is told. */
export const needs = ['energy', 'protein', 'potassium', 'phosphorus', 'fluid'] as const;
export type Need = (typeof needs)[number];

export const amountOfNeed: Readonly<Record<Need, AimedAmount>> = {
  energy: 'energyKcal',
  protein: 'proteinG',
  potassium: 'potassiumMg',
  phosphorus: 'phosphorusMg',
  fluid: 'fluidMl',
};
