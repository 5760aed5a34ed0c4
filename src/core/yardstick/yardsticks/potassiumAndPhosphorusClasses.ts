import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { forDietitians, unprintedCaution } from './sources.ts';
import { phosphorusBound, phosphorusClasses, potassiumBound, potassiumClasses } from './tests.ts';

/** Classes are shown; nothing is judged until the dietitian switches a bound on. */
export const potassiumAndPhosphorusClasses: Yardstick = {
  id: 'potassium-and-phosphorus-classes',
  title: 'potassium and phosphorus classes',
  purpose: 'How much potassium and phosphorus the eaten portion holds, in classes.',
  tests: [potassiumBound, phosphorusBound],
  classScales: [potassiumClasses, phosphorusClasses],
  settings: 'any',
  cautions: [...forDietitians, "Cut-offs are a clinic's choice, not a guideline's.", unprintedCaution],
};
