import type { Yardstick } from '#core/yardstick/yardstick.ts';
import { amountsAloneCaution, sodiumPerReferenceAmount } from './usSodiumClaim.ts';

/** Strictly under 5 mg per reference amount and per serving; the ingredient condition waits to be switched on. */
export const sodiumFreeUs: Yardstick = {
  id: 'sodium-free-us',
  title: 'free of sodium as a US claim',
  purpose: 'The amount behind "sodium free" on a US label.',
  tests: [
    sodiumPerReferenceAmount('sodium-free-per-reference-amount', { below: 5 }, '21 CFR 101.61(b)(1)'),
    {
      id: 'sodium-free-per-serving',
      measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
      basis: 'per-serving',
      below: 5,
      source: { kind: 'regulation', text: '21 CFR 101.61(b)(1)' },
    },
    {
      id: 'no-sodium-ingredient',
      measure: { kind: 'additive', class: 'sodium' },
      basis: 'as-eaten',
      absent: true,
      off: true,
      source: { kind: 'regulation', text: '21 CFR 101.61(b)(1)' },
    },
  ],
  classScales: [],
  settings: 'any',
  cautions: [
    amountsAloneCaution,
    'The claim also forbids salt and sodium ingredients, unless an asterisk calls them trivial; switch that test on to judge it.',
  ],
};
