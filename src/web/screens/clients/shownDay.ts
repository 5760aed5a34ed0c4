import { shortDay } from '#core/quantity/calendarDay.ts';

/** The calendar day where the browser runs. */
export function localToday(): string {
  const now = new Date();
  return new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
}

/** A day, or the day of a time, as screens have it: "Nov 28", with the year where it is not this one. */
export function shownDay(dayOrTime: string): string {
  return shortDay(dayOrTime.slice(0, 10), localToday());
}
