import type { Finding } from '../label.ts';
import { readGtin } from './gtin.ts';

const why = {
  length: 'a bar code number has 8, 12, 13 or 14 digits (6 or 8 on small packages); a table may have dropped a leading zero',
  'not-digits': 'a bar code number has digits only',
  'check-digit': 'its last digit does not follow from the others, so a digit was misread',
} as const;

/** A bar code number that was misread, or that cannot name a product. */
export function auditGtin(gtin: string | undefined): readonly Finding[] {
  if (gtin === undefined || gtin.trim() === '') return [];
  const reading = readGtin(gtin);
  const source = 'GS1 General Specifications';
  const shown = gtin.length > 40 ? `${gtin.slice(0, 40)}…` : gtin;
  if (reading.kind === 'no-gtin')
    return [{ code: 'gtin-check-digit', about: 'gtin', message: `"${shown}" is no bar code number: ${why[reading.why]}.`, source }];
  if (!reading.variableWeight) return [];
  const message = `"${shown}" is a number for goods weighed in the store: it holds a price or a weight and names no product.`;
  return [{ code: 'gtin-variable-weight', about: 'gtin', message, source }];
}
