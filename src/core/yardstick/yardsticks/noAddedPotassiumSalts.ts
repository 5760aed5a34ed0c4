import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { noneNamedCaution } from './sources.ts';
import { noPotassiumSalt } from './tests.ts';

export const noAddedPotassiumSalts: Yardstick = {
  id: 'no-added-potassium-salts',
  title: 'no added potassium salts named',
  purpose: 'No potassium salt that counts is named in the ingredient statement.',
  tests: [noPotassiumSalt],
  classScales: [],
  settings: 'any',
  cautions: [
    noneNamedCaution,
    'Says nothing of the potassium that the food holds by nature.',
    'Labs decide about potassium, not the setting or the stage.',
  ],
};
