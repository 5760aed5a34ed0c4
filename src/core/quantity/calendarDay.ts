/** A day as yyyy-mm-dd. The core has no clock: today comes in as one of these. Days compare as texts. */
export type Day = string;

/** True for a day that the calendar has. 2027-02-29 is none. */
export function isDay(words: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(words)) return false;
  const date = new Date(`${words}T00:00:00Z`);
  return !Number.isNaN(date.getTime()) && date.toISOString().startsWith(words);
}
