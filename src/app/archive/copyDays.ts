const dayMilliseconds = 86_400_000;
const dailyDays = 7;
/** Seven days, and four weeks before them. */
const longestDays = dailyDays + 4 * 7;

/**
 * The copies that go: every one of the last seven days stays, of earlier weeks (Monday to Sunday) the last one, until it is 35 days
 * old. The newest stays however old it is: something must be there to bring back.
 */
export function copiesToDrop(days: readonly string[], today: string): readonly string[] {
  const newest = days.toSorted().at(-1);
  const lastOfWeek = new Map<number, string>();
  for (const day of days.toSorted()) lastOfWeek.set(weekOf(day), day);
  return days.filter(day => {
    const age = dayNumber(today) - dayNumber(day);
    if (day === newest || age < dailyDays) return false;
    return age >= longestDays || lastOfWeek.get(weekOf(day)) !== day;
  });
}

/** The first day on which no copy is left of those that stand today, given that the program runs and makes newer ones. */
export function heldUntil(days: readonly string[]): string | undefined {
  const newest = days.toSorted().at(-1);
  return newest === undefined ? undefined : new Date((dayNumber(newest) + longestDays) * dayMilliseconds).toISOString().slice(0, 10);
}

function dayNumber(day: string): number {
  return Math.round(Date.parse(`${day.slice(0, 10)}T00:00:00Z`) / dayMilliseconds);
}

/** 1970-01-01 was a Thursday: three days later a week begins. */
function weekOf(day: string): number {
  return Math.floor((dayNumber(day) + 3) / 7);
}
