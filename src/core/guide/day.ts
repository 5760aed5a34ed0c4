import type { Day } from './guide.ts';

const months = 'January February March April May June July August September October November December'.split(' ');
const dayMs = 24 * 60 * 60 * 1000;

/** Whether a text is a day of the calendar: "2026-02-30" is not. */
export function isDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const date = new Date(`${text}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(text);
}

/** "October 14, 2026". A text that is no day stays as it is. */
export function dayText(day: Day): string {
  if (!isDay(day)) return day;
  const [year, month, date] = day.split('-');
  return `${months[Number(month) - 1]} ${Number(date)}, ${year}`;
}

/** `dayAfter('2026-10-14', 180)` is '2027-04-12'. */
export function dayAfter(day: Day, days: number): Day {
  return new Date(new Date(`${day}T00:00:00Z`).getTime() + days * dayMs).toISOString().slice(0, 10);
}
