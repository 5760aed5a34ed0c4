/** A number found in printed words. `place` is the worth of its last printed digit: 0.1 for "0,8", 1 for "1 200". */
export interface ScannedNumber {
  readonly value: number;
  readonly place: number;
  /** Position after its last character. */
  readonly end: number;
  readonly decimalComma: boolean;
  /** "1,200" where a comma may be the decimal mark: it could be 1.2 or 1200. */
  readonly ambiguous: boolean;
}

/** More digits than this are no figure on a package. */
const mostDigits = 15;

/**
 * Reads the number that starts at `at`, or undefined when none starts there or it has too many digits. Groups of three may
 * be set apart by a blank, an apostrophe or the mark that is not the decimal mark. A comma before one or two digits is
 * always the decimal mark. "1 200" is 1200, "0,8" is 0.8, "1,234.5" is 1234.5, "1.234,5" the same.
 *
 * @param commaMarksDecimals true for markets that write 0,8: there, one mark before exactly three digits is ambiguous.
 */
export function scanNumber(text: string, at: number, commaMarksDecimals: boolean): ScannedNumber | undefined {
  let end = digitsEnd(text, at);
  let whole = text.slice(at, end);
  if (whole === '') {
    const mark = text.charCodeAt(end);
    if ((mark !== dot && mark !== comma) || digitsEnd(text, end + 1) === end + 1) return undefined;
  }
  let groupMark = 0;
  let groups = 0;
  while (whole !== '' && whole[0] !== '0' && (groups > 0 || whole.length <= 3)) {
    const mark = text.charCodeAt(end);
    if (groups > 0 ? mark !== groupMark : !(mark === comma || (mark === dot && commaMarksDecimals) || isGroupBlank(mark))) break;
    if (digitsEnd(text, end + 1) !== end + 4) break;
    whole += text.slice(end + 1, end + 4);
    groupMark = mark;
    groups++;
    end += 4;
    if (whole.length > mostDigits) return undefined;
  }
  let decimals = '';
  let decimalComma = false;
  const mark = text.charCodeAt(end);
  if ((mark === dot || mark === comma) && mark !== groupMark) {
    const stop = digitsEnd(text, end + 1);
    if (stop > end + 1) {
      decimals = text.slice(end + 1, stop);
      decimalComma = mark === comma;
      end = stop;
    }
  }
  if (whole.length + decimals.length > mostDigits) return undefined;
  return {
    value: decimals === '' ? Number(whole) : Number(`${whole}.${decimals}`),
    place: placeOf(decimals.length),
    end,
    decimalComma,
    ambiguous: commaMarksDecimals && groups === 1 && decimals === '' && (groupMark === comma || groupMark === dot),
  };
}

/** 10 to the power of −decimals, free of binary dust. */
export function placeOf(decimals: number): number {
  return places[decimals] ?? Number(`1e-${decimals}`);
}

const places: readonly number[] = [1, 0.1, 0.01, 0.001];

/** Decimals of a number as JavaScript prints it: 2 for 0.25, 0 for 140. */
export function decimalsOf(value: number): number {
  if (Number.isInteger(value)) return 0;
  const text = String(value);
  const exponent = text.indexOf('e-');
  const mantissa = exponent < 0 ? text : text.slice(0, exponent);
  const point = mantissa.indexOf('.');
  const own = point < 0 ? 0 : mantissa.length - point - 1;
  return exponent < 0 ? own : own + Number(text.slice(exponent + 2));
}

const dot = 46;
const comma = 44;

/** Blank, no-break blank, thin blank, narrow no-break blank, and the apostrophes that set groups of three apart. */
function isGroupBlank(code: number): boolean {
  return code === 32 || code === 0xa0 || code === 0x2009 || code === 0x202f || code === 39 || code === 0x2019;
}

export function isDigit(code: number): boolean {
  return code >= 48 && code <= 57;
}

function digitsEnd(text: string, at: number): number {
  let end = at;
  while (isDigit(text.charCodeAt(end))) end++;
  return end;
}
