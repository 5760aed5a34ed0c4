import { type Day, isDay } from '#core/quantity/calendarDay.ts';

const months = 'January February March April May June July August September October November December'.split(' ');
const dayMs = 24 * 60 * 60 * 1000;

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
