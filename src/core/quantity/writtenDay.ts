import { type Day, isDay } from './calendarDay.ts';

/** In which order a day of figures alone is written: 11/03/2026 is November 3 (month first, as in the United States) or March 11. */
export type DayOrder = 'month-first' | 'day-first';

/** A day as it was written, and the time beside it ("HH:MM"), where there is one. */
export interface WrittenDay {
  readonly day: Day;
  readonly time?: string;
  /** The order decided: written in the other one it is another day. */
  readonly isByOrder: boolean;
}

const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * The day that words name; undefined where they name none. "2026-11-03", "20261103", "3-Nov-26", "Nov 3, 2026" and "11/13/2026" are one day by
 * themselves; "11/03/2026" is November 3 with the month first. With dots the day stands first, as in DIN 5008. Two figures of a year are of this
 * century. A time may follow: "11/03/2026 7:30 PM" is 19:30.
 */
export function readWrittenDay(words: string, order: DayOrder): WrittenDay | undefined {
  const parts = parted(words);
  if (parts === undefined) return undefined;
  const time = readTime(parts.time);
  if (time === null) return undefined;
  const read = (day: Day, isByOrder: boolean): WrittenDay | undefined =>
    isDay(day) ? { day, ...(time === undefined ? {} : { time }), isByOrder } : undefined;
  if (parts.kind === 'certain') return read(parts.day, false);
  const { first, second, year, isDotted } = parts;
  const dayFirst = written(year, second, first);
  const monthFirst = written(year, first, second);
  if (isDotted || !isDay(monthFirst)) return read(dayFirst, false);
  if (!isDay(dayFirst) || dayFirst === monthFirst) return read(monthFirst, false);
  return read(order === 'day-first' ? dayFirst : monthFirst, true);
}

/**
 * The order that days of one hand are written in, as far as they show it: one with a figure over 12 does, and one that would lie after `today`.
 * Undefined where none shows it; 'mixed' where they show both. ["11/13/2026", "11/03/2026"]: 'month-first'.
 */
export function dayOrderOf(all: readonly string[], today: Day): DayOrder | 'mixed' | undefined {
  const shown = new Set(all.flatMap(words => orderShownBy(words, today) ?? []));
  const [only] = shown;
  return shown.size > 1 ? 'mixed' : only;
}

function orderShownBy(words: string, today: Day): DayOrder | undefined {
  const parts = parted(words);
  if (parts?.kind !== 'figures' || parts.isDotted) return undefined;
  const isPast = (day: Day): boolean => isDay(day) && day <= today;
  const monthFirst = isPast(written(parts.year, parts.first, parts.second));
  const dayFirst = isPast(written(parts.year, parts.second, parts.first));
  if (monthFirst === dayFirst) return undefined;
  return monthFirst ? 'month-first' : 'day-first';
}

type Parts =
  | { readonly kind: 'certain'; readonly day: Day; readonly time: string }
  | {
      readonly kind: 'figures';
      readonly first: string;
      readonly second: string;
      readonly year: string;
      readonly isDotted: boolean;
      readonly time: string;
    };

const ofYear = /^(\d{4})([-/.]?)(\d{2})\2(\d{2})(?:[T ]\s*(.+))?$/u;
/** As HL7 writes it: 20261103073000-0500. */
const ofStamp = /^(\d{4})(\d{2})(\d{2})(\d{4}(?:\d{2}(?:\.\d+)?)?(?:[+-]\d{4})?)$/u;
const ofFigures = /^(\d{1,2})([-/.])(\d{1,2})\2(\d{4}|\d{2})(?:,?\s+(.+))?$/u;
const dayAndName = /^(\d{1,2})[-\s.]*([a-z]{3,9})\.?[-\s,]*(\d{4}|\d{2})(?:,?\s+(.+))?$/iu;
const nameAndDay = /^([a-z]{3,9})\.?\s*(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})(?:,?\s+(.+))?$/iu;

function parted(words: string): Parts | undefined {
  const text = words.trim();
  const year = ofYear.exec(text);
  if (year !== null) return { kind: 'certain', day: written(year[1]!, year[3]!, year[4]!), time: year[5] ?? '' };
  const stamp = ofStamp.exec(text);
  if (stamp !== null) return { kind: 'certain', day: written(stamp[1]!, stamp[2]!, stamp[3]!), time: stamp[4]! };
  const figures = ofFigures.exec(text);
  if (figures !== null) {
    const [, first = '', mark, second = '', shortYear = '', time = ''] = figures;
    // 26-11-03: the year may stand first, where it has two figures.
    if (mark === '-' && shortYear.length === 2) return undefined;
    return { kind: 'figures', first, second, year: longYear(shortYear), isDotted: mark === '.', time };
  }
  const named = dayAndName.exec(text);
  if (named !== null) return ofName(named[2]!, named[1]!, named[3]!, named[4]);
  const named2 = nameAndDay.exec(text);
  return named2 === null ? undefined : ofName(named2[1]!, named2[2]!, named2[3]!, named2[4]);
}

function ofName(name: string, day: string, year: string, time = ''): Parts | undefined {
  const month = monthNamed(name.toLowerCase());
  return month === undefined ? undefined : { kind: 'certain', day: written(longYear(year), String(month), day), time };
}

const fullNames = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

/** "nov", "sept", "november": nothing that only begins so. */
function monthNamed(name: string): number | undefined {
  const at = months.indexOf(name.slice(0, 3));
  return at >= 0 && (name.length === 3 || name === 'sept' || name === fullNames[at]) ? at + 1 : undefined;
}

function longYear(year: string): string {
  return year.length === 2 ? `20${year}` : year;
}

function written(year: string, month: string, day: string): Day {
  return `${year}-${month.padStart(2, '0')}-${day.padStart(2, '0')}`;
}

/** "7:30 PM", "0730", "07:30:15.000Z": HH:MM; undefined where there is none, null where it is no time. */
function readTime(words: string): string | undefined | null {
  if (words === '') return undefined;
  const found = /^(\d{1,2}):?(\d{2})(?::?\d{2}(?:\.\d+)?)?\s*(?:([ap])\.?m\.?|z|[+-]\d{2}:?\d{2})?$/iu.exec(words);
  if (found === null) return null;
  const [, hour = '', minute = '', half] = found;
  const read = half === undefined ? Number(hour) : (Number(hour) % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  if (read > 23 || Number(minute) > 59 || (half !== undefined && (Number(hour) > 12 || Number(hour) === 0))) return null;
  return `${String(read).padStart(2, '0')}:${minute}`;
}
