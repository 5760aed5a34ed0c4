import { energyKcalFromKj, vitaminDMcgFromIu, waterMlFromWaterG } from '#core/quantity/convert.ts';
import type { PanelKey } from '../panelKeys.ts';
import type { PanelUnit } from './figure.ts';

/** Units as panels write them, in lower case. */
export const units: Readonly<Record<string, PanelUnit | 'IU' | undefined>> = Object.assign(Object.create(null), {
  kcal: 'kcal',
  cal: 'kcal',
  calories: 'kcal',
  kj: 'kJ',
  g: 'g',
  gram: 'g',
  grams: 'g',
  mg: 'mg',
  mcg: 'mcg',
  µg: 'mcg',
  μg: 'mcg',
  ug: 'mcg',
  ml: 'mL',
  iu: 'IU',
});

const microgramsIn: Readonly<Record<string, number | undefined>> = { g: 1e6, mg: 1e3, mcg: 1 };

/** What a figure in `from` is multiplied by to be in `to`; undefined where the key cannot be told in that unit. */
export function conversionFactor(from: PanelUnit | 'IU' | undefined, to: PanelUnit, key: PanelKey): number | undefined {
  if (from === undefined) return undefined;
  if (from === 'kJ' && to === 'kcal') return energyKcalFromKj(1);
  if (from === 'kcal' && to === 'kJ') return 1 / energyKcalFromKj(1);
  if (from === 'IU') return key === 'vitaminDMcg' ? vitaminDMcgFromIu(1) : undefined;
  if (from === 'g' && key === 'waterMl') return waterMlFromWaterG(1);
  const source = microgramsIn[from];
  const target = microgramsIn[to];
  return source === undefined || target === undefined ? undefined : source / target;
}
