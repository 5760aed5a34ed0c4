import type { Interval } from '#core/quantity/interval.ts';
import type { PhosphorusKind } from './content.ts';

/**
 * Share of phosphorus that the gut takes up, by where it comes from (kidney facts 6.1: Ren Replace Ther 2017,
 * s41100-017-0095-x, Table 1; additives 90 to 100 % from memory; feeding studies contradict, PMC5318242). What nobody
 * knows lies between the ends of all of them.
 */
export const absorbedFractions: Readonly<Record<PhosphorusKind, Interval>> = {
  inorganic: { lo: 0.9, hi: 1 },
  animal: { lo: 0.4, hi: 0.6 },
  plant: { lo: 0.2, hi: 0.4 },
  none: { lo: 0.2, hi: 1 },
  unknown: { lo: 0.2, hi: 1 },
};
