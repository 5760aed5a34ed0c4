import type { Day } from '#core/quantity/calendarDay.ts';

/** The calendar day where the program runs. */
export function localDay(at: Date): Day {
  const two = (part: number): string => String(part).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}
