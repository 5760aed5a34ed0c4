import type { Nutrient } from '#core/quantity/nutrients.ts';

/** The lines of a US panel, in its order. Phosphorus is voluntary and hardly any package prints it. */
export const panelLines = [
  'energyKcal',
  'fatG',
  'saturatedFatG',
  'transFatG',
  'cholesterolMg',
  'sodiumMg',
  'carbohydrateG',
  'fiberG',
  'totalSugarsG',
  'addedSugarsG',
  'proteinG',
  'vitaminDMcg',
  'calciumMg',
  'ironMg',
  'potassiumMg',
] as const satisfies readonly Nutrient[];

export type PanelLine = (typeof panelLines)[number];
