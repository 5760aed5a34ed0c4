import { gtinCheckDigit } from '#core/label/audit/gtin.ts';

/**
 * A GTIN-12 of number system 4, that a company may use inside its own walls (GS1 General Specifications, restricted
 * circulation): valid by its check digit, and no product on sale has it. Maker 10117, item 101 is 410117001010.
 */
export function localGtin(makerNumber: number, itemNumber: number): string {
  const digits = `4${String(makerNumber).padStart(5, '0')}${String(itemNumber).padStart(5, '0')}`;
  return digits + gtinCheckDigit(digits);
}
