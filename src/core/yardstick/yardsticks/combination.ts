import type { Setting, Test, Yardstick } from '#core/yardstick/yardstick.ts';
import { forDietitians, noneNamedCaution, roundingCaution } from './sources.ts';
import { phosphorusBound, phosphorusClasses, potassiumBound, potassiumClasses } from './tests.ts';

export const switchedOff = (test: Test): Test => ({ ...test, off: true });

export const starFruitCaution = 'No star fruit (carambola) or its juice in any kidney disease.';
export const proteinCaution = 'Protein needs are higher on dialysis: do not choose by phosphorus alone.';

const cautions = [
  ...forDietitians,
  'Do not restrict sodium in salt-losing kidney disease (KDIGO 2024 practice point, as quoted). With an ileostomy or low blood pressure ask the kidney team first.',
  noneNamedCaution,
  roundingCaution,
];

/** One combination per setting. None bounds potassium or phosphorus: classes are shown, bounds wait to be switched on. */
export function combination(setting: Setting, words: string, tests: readonly Test[], own: readonly string[]): Yardstick {
  return {
    id: `for-${setting}`,
    title: `for ${words}`,
    purpose: `Sodium and additives as they are looked at for ${words}, with potassium and phosphorus shown in classes.`,
    tests: [...tests, potassiumBound, phosphorusBound],
    classScales: [potassiumClasses, phosphorusClasses],
    settings: [setting],
    cautions: [...own, ...cautions],
  };
}
