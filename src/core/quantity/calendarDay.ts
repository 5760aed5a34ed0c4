/** A day as yyyy-mm-dd. The core has no clock: today comes in as one of these. Days compare as texts. */
export type Day = string;

/** True for a day that exists. 2027-02-29 does not. */
export function isDay(words: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(words)) return false;
  const [year, month, day] = partsOf(words);
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

/** Days from one day to a later one; negative when it is earlier. 2026-02-27 to 2026-03-01 is 2. */
export function daysBetween(from: Day, to: Day): number {
  return dayNumber(to) - dayNumber(from);
}

/** The same day of the month some months on, or the last day of a shorter month. 2026-01-31 and one month is 2026-02-28. */
export function addMonths(day: Day, months: number): Day {
  const [year, month, date] = partsOf(day);
  const at = year * 12 + month - 1 + months;
  const [toYear, toMonth] = [Math.floor(at / 12), (at % 12) + 1];
  return write(toYear, toMonth, Math.min(date, daysInMonth(toYear, toMonth)));
}

/** Some days on. 2026-12-31 and 1 is 2027-01-01. */
export function addDays(day: Day, days: number): Day {
  const moved = new Date((dayNumber(day) + days) * millisecondsPerDay);
  return write(moved.getUTCFullYear(), moved.getUTCMonth() + 1, moved.getUTCDate());
}

/** Completed years. Born 2000-06-02, on 2026-06-01: 25. */
export function yearsBetween(born: Day, on: Day): number {
  const [year, month, date] = partsOf(born);
  const [toYear, toMonth, toDate] = partsOf(on);
  return toYear - year - (toMonth < month || (toMonth === month && toDate < date) ? 1 : 0);
}

/** Hours since midnight of a time of day; 0 without one. "8:30" is 8.5. */
export function hourOfDay(time = '0:00'): number {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours + minutes / 60;
}

/** As a line has room for it: "Nov 28", with the year where it is not that of today: "Nov 28, 2025". */
export function shortDay(day: Day, today: Day): string {
  const [year, month, date] = partsOf(day);
  return `${months[month - 1]} ${date}${day.slice(0, 4) === today.slice(0, 4) ? '' : `, ${year}`}`;
}

const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const millisecondsPerDay = 86_400_000;

function dayNumber(day: Day): number {
  const [year, month, date] = partsOf(day);
  return Date.UTC(year, month - 1, date) / millisecondsPerDay;
}

function partsOf(day: Day): [year: number, month: number, date: number] {
  return [Number(day.slice(0, 4)), Number(day.slice(5, 7)), Number(day.slice(8, 10))];
}

function daysInMonth(year: number, month: number): number {
  return new Date(Date.UTC(year, month, 0)).getUTCDate();
}

function write(year: number, month: number, date: number): Day {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}-${String(date).padStart(2, '0')}`;
}
