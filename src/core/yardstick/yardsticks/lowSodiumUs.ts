import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { amountsAloneCaution, potassiumCaution, sodiumPerReferenceAmount } from './usSodiumClaim.ts';

/** 140 mg per reference amount, when that is small per 50 g as well; per 100 g for meals and main dishes. */
export const lowSodiumUs: Yardstick = {
  id: 'low-sodium-us',
  title: 'low in sodium as a US claim',
  purpose: 'The amount behind "low sodium" on a US label.',
  tests: [sodiumPerReferenceAmount('low-sodium', { atMost: 140 }, '21 CFR 101.61(b)(4), (5)')],
  classScales: [],
  settings: 'any',
  cautions: [amountsAloneCaution, potassiumCaution],
};
