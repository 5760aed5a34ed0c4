import { type Nutrient, type NutrientFacts, nutrientKeys, nutrients } from '#core/quantity/nutrients.ts';

/** The two figures that only panels outside the US print; they are read into sodium and energy. */
const foreignKeys = ['saltG', 'energyKj'] as const;

/** Panel keys: the nutrients, and what only panels outside the US print. */
export type PanelKey = Nutrient | (typeof foreignKeys)[number];

export const panelKeys: readonly PanelKey[] = [...nutrientKeys, ...foreignKeys];

export function isPanelKey(key: string): key is PanelKey {
  return panelKeys.some(one => one === key);
}

export interface PanelLineFacts {
  /** As a US panel prints it. */
  readonly title: string;
  readonly unit: string;
  /** What tables call it besides its key. */
  readonly headings: readonly string[];
}

const foreign: Readonly<Record<(typeof foreignKeys)[number], PanelLineFacts>> = {
  saltG: { title: 'Salt', unit: 'g', headings: ['salt', 'salt (g)'] },
  energyKj: { title: 'Energy', unit: 'kJ', headings: ['energy (kJ)', 'kJ'] },
};

/** How a line of a panel is called. */
export function panelLine(key: PanelKey): PanelLineFacts {
  if (key === 'saltG' || key === 'energyKj') return foreign[key];
  const { printedName, unit, alsoCalled = [] }: NutrientFacts = nutrients[key];
  return { title: printedName, unit, headings: [printedName, `${printedName} (${unit})`, ...alsoCalled] };
}

/** The lines of a US panel in its order (21 CFR 101.9(c), (d)), and phosphorus: what a form asks for. */
export const usPanelKeys: readonly Nutrient[] = nutrientKeys.filter(key => nutrients[key].onUsPanel);
