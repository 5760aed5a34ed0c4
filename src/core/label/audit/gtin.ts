/** What a bar code number says about itself. */
export type GtinReading =
  | {
      readonly kind: 'gtin';
      /** 14 digits, padded with zeros on the left. */
      readonly gtin14: string;
      /** In-store number with price or weight inside: never a key of a product. */
      readonly variableWeight: boolean;
    }
  | { readonly kind: 'no-gtin'; readonly why: 'length' | 'not-digits' | 'check-digit' };

/**
 * Reads a GTIN-8, -12 (UPC-A), -13 or -14 and a UPC-E of 6 or 8 digits; blanks and hyphens between digits are passed over.
 * Eight digits that begin with 0 are UPC-E when that check digit is right (GTIN-8 numbers with 0 are not on shelves).
 * GS1 General Specifications; the prefix 2 of variable-weight goods from memory. "0 12345 67890 5" is 00012345678905.
 */
export function readGtin(words: string): GtinReading {
  const digits = onlyDigits(words);
  if (digits === undefined) return { kind: 'no-gtin', why: 'not-digits' };
  if (digits.length === 6) return gtin(upcAFromUpcE(digits));
  if (digits.length === 8 && digits[0] === '0') {
    const expanded = upcAFromUpcE(digits.slice(1, 7));
    if (expanded.endsWith(digits[7]!)) return gtin(expanded);
  }
  if (![8, 12, 13, 14].includes(digits.length)) return { kind: 'no-gtin', why: 'length' };
  return gtinCheckDigit(digits.slice(0, -1)) === Number(digits.at(-1)) ? gtin(digits) : { kind: 'no-gtin', why: 'check-digit' };
}

/** The check digit of the digits before it, weights 3, 1, 3, 1 … from the right. 01234567890 gives 5. */
export function gtinCheckDigit(before: string): number {
  let sum = 0;
  for (let at = before.length - 1, weight = 3; at >= 0; at--, weight = 4 - weight) sum += weight * (before.charCodeAt(at) - 48);
  return (10 - (sum % 10)) % 10;
}

/**
 * The UPC-A with check digit that the six digits of a UPC-E stand for (number system 0). 123643 is 012300000642.
 *
 * @internal
 */
export function upcAFromUpcE(six: string): string {
  const last = six[5]!;
  const before =
    last <= '2'
      ? `0${six.slice(0, 2)}${last}0000${six.slice(2, 5)}`
      : last === '3'
        ? `0${six.slice(0, 3)}00000${six.slice(3, 5)}`
        : last === '4'
          ? `0${six.slice(0, 4)}00000${six[4]}`
          : `0${six.slice(0, 5)}0000${last}`;
  return before + gtinCheckDigit(before);
}

function gtin(digits: string): GtinReading {
  const gtin14 = digits.padStart(14, '0');
  const of13 = gtin14.slice(1);
  const variableWeight = gtin14[0] === '0' && (of13[0] === '2' || of13.startsWith('02'));
  return { kind: 'gtin', gtin14, variableWeight };
}

const longestGtin = 40;

function onlyDigits(words: string): string | undefined {
  if (words.length > longestGtin) return undefined;
  let digits = '';
  for (const letter of words) {
    if (letter >= '0' && letter <= '9') digits += letter;
    else if (letter !== ' ' && letter !== '-') return undefined;
  }
  return digits;
}
