/** Days count from the first of January 1900 or 1904. */
export type DateSystem = 1900 | 1904;

/** How a number is shown, where that changes what it says. `zeros` is the least number of digits. */
export type NumberFormat =
  | { readonly kind: 'date' }
  | { readonly kind: 'time' }
  | { readonly kind: 'percent' }
  | { readonly kind: 'zeros'; readonly digits: number };

/** Built-in formats of ECMA-376 part 1, 18.8.30; 27 to 36 and 50 to 58 are dates in the languages that have them. */
function builtIn(id: number): NumberFormat | undefined {
  if (id === 9 || id === 10) return { kind: 'percent' };
  if ((id >= 14 && id <= 17) || id === 22 || (id >= 27 && id <= 31) || id === 36 || (id >= 50 && id <= 58)) return { kind: 'date' };
  if ((id >= 18 && id <= 21) || (id >= 32 && id <= 35) || (id >= 45 && id <= 47)) return { kind: 'time' };
  return undefined;
}

/** What a format does to a number: by its code where the workbook gives one, else by its number. */
export function formatKind(id: number, code?: string): NumberFormat | undefined {
  if (code === undefined) return builtIn(id);
  // Words, colors, conditions and single letters that stand for themselves say nothing; elapsed hours in brackets do.
  const plain = code
    .split(';')[0]!
    .replace(/"[^"]*"|\\.|_.|\*./g, '')
    .replace(/\[(?!h+\]|m+\]|s+\])[^\]]*\]/gi, '')
    .toLowerCase();
  if (/^general/.test(plain)) return undefined;
  if (/[yd]|mmm/.test(plain)) return { kind: 'date' };
  if (/[hs]/.test(plain)) return { kind: 'time' };
  if (plain.includes('%')) return { kind: 'percent' };
  return /^0{2,}$/.test(plain) ? { kind: 'zeros', digits: plain.length } : undefined;
}

const dayMs = 86_400_000;
/** The last day that spreadsheets show, 9999-12-31, in both systems. */
const lastDay = { 1900: 2_958_465, 1904: 2_957_003 } as const;

/**
 * A number as its cell shows it, without the rounding of its format: 15 digits as spreadsheets have, "10%" for a tenth in percent, a day
 * as yyyy-mm-dd, a time as hh:mm, a bar code with its leading zeros. What is no number, or no day of the calendar, stays as it stands.
 */
export function numberText(raw: string, format: NumberFormat | undefined, dates: DateSystem): string {
  const number = Number(raw);
  if (raw.trim() === '' || !Number.isFinite(number)) return raw;
  // So short that nothing is to be cut, as nearly all are.
  if (format === undefined && raw.length < 16) return String(number);
  switch (format?.kind) {
    case 'date':
      return number >= 0 && number < lastDay[dates] + 1 ? day(Math.floor(number), dates) : digits(number);
    case 'time':
      return number >= 0 && number < 1 ? time(number) : digits(number);
    case 'percent':
      return `${digits(number * 100)}%`;
    case 'zeros':
      return number >= 0 ? digits(number).padStart(format.digits, '0') : digits(number);
    default:
      return digits(number);
  }
}

/** Binary tails are cut: 0.1 + 0.2 is shown as 0.3. */
function digits(number: number): string {
  return String(Number(number.toPrecision(15)));
}

/** ECMA-376 part 1, 18.17.4.1: the system of 1900 has a 29th of February 1900, day 60, that never was. */
function day(serial: number, dates: DateSystem): string {
  if (dates === 1904) return isoDay(Date.UTC(1904, 0, 1) + serial * dayMs);
  if (serial === 60) return '1900-02-29';
  return isoDay(Date.UTC(1899, 11, serial < 60 ? 31 : 30) + serial * dayMs);
}

function isoDay(ms: number): string {
  return new Date(ms).toISOString().slice(0, 10);
}

function time(share: number): string {
  const minutes = Math.round(share * 1440) % 1440;
  return `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;
}
