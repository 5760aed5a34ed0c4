import { type Computed, computed, type FormulaFacts, firstImpossible, potassiumMgInput } from './computed.ts';

/** Share of potassium that potato keeps. Soaking earns no credit, alone or before boiling. Bethke, Jansky, J Food Sci 2008;73:H80. */
const potassiumKept = {
  'boiled-cubes-1-cm': 0.5,
  'boiled-shredded': 0.25,
  'soaked-only': 1,
  'baked-roast-microwave-steam': 1,
} as const;

export type CookingMethod = keyof typeof potassiumKept;

export const potassiumAfterCookingFacts: FormulaFacts = {
  title: 'Potassium after cooking (potato)',
  unit: 'mg',
  sources: [{ kind: 'paper', text: 'Bethke, Jansky, J Food Sci 2008;73:H80' }],
  cautions: ['On raw data only, never on a food already coded as boiled. The water is thrown away.'],
};

/** Potassium in mg that a raw amount keeps. 420 mg in 1 cm cubes, boiled: 210 mg; soaked only: 420 mg. */
export function potassiumMgAfterCooking(rawPotassiumMg: number, method: CookingMethod): Computed {
  return firstImpossible(potassiumMgInput(rawPotassiumMg)) ?? computed(rawPotassiumMg * potassiumKept[method]);
}
