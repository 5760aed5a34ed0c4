import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { amountsAloneCaution, potassiumCaution, sodiumPerReferenceAmount } from './usSodiumClaim.ts';

/** 35 mg per reference amount, when that is small per 50 g as well; per 100 g for meals and main dishes. */
export const veryLowSodiumUs: Yardstick = {
  id: 'very-low-sodium-us',
  title: 'very low in sodium as a US claim',
  purpose: 'The amount behind "very low sodium" on a US label.',
  tests: [sodiumPerReferenceAmount('very-low-sodium', { atMost: 35 }, '21 CFR 101.61(b)(2), (3)')],
  classScales: [],
  settings: 'any',
  cautions: [amountsAloneCaution, potassiumCaution],
};
