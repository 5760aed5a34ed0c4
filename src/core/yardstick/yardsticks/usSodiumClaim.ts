import type { Test } from '#core/yardstick/yardstick.ts';

/** What the three sodium claims of 21 CFR 101.61 have in common. */
export function sodiumPerReferenceAmount(id: string, bound: { readonly atMost: number } | { readonly below: number }, text: string): Test {
  return {
    id,
    measure: { kind: 'nutrient', nutrient: 'sodiumMg' },
    basis: 'per-reference-amount',
    ...bound,
    claimRule: 'us-sodium-claim',
    source: { kind: 'regulation', text },
  };
}

export const amountsAloneCaution =
  "Judges the amounts of the claim on the label's own figures; whether a food may carry the claim is for its maker and the FDA.";
export const potassiumCaution = 'A food lower in sodium may hold added potassium salts.';
