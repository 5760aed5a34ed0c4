import { roundHalfUp } from '#core/quantity/rounding.ts';

/** A figure as the US writes it, in English and in Spanish (CLDR en-US, es-US): 2300 is "2,300", 38.5 stays. */
export function figure(value: number, decimals = 1): string {
  const [whole = '', rest] = String(roundHalfUp(value, decimals)).split('.');
  return whole.replace(/\B(?=(\d{3})+$)/g, ',') + (rest === undefined ? '' : `.${rest}`);
}
