import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { noneNamedCaution, unprintedCaution } from './sources.ts';
import { noPhosphateAdditive } from './tests.ts';

export const noPhosphateAdditives: Yardstick = {
  id: 'no-phosphate-additives',
  title: 'no phosphate additives named',
  purpose: 'No phosphate additive that counts is named in the ingredient statement.',
  tests: [noPhosphateAdditive],
  classScales: [],
  settings: 'any',
  cautions: [noneNamedCaution, unprintedCaution, 'Says nothing of the phosphorus that the food holds by nature.'],
};
