import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { roundingCaution } from './sources.ts';
import { sodiumAgainstEnergy } from './tests.ts';

/** The trade's rule: beside a companion of E kcal and S mg sodium a food may carry E − S mg more sodium than its own kcal. */
export const lowInSodiumAsEaten: Yardstick = {
  id: 'low-in-sodium-as-eaten',
  title: 'low in sodium as eaten',
  purpose: 'Sodium no more than energy on the whole plate.',
  tests: [sodiumAgainstEnergy],
  classScales: [],
  settings: 'any',
  cautions: ['Not the FDA\'s "low sodium" claim.', 'A food lower in sodium may hold added potassium salts.', roundingCaution],
};
