import { describe, expect, test } from 'vitest';
import { copiesToDrop, heldUntil } from './copyDays.ts';

/** Every day from one to another, both among them. */
function days(from: string, to: string): string[] {
  const all: string[] = [];
  for (let at = Date.parse(from); at <= Date.parse(to); at += 86_400_000) all.push(new Date(at).toISOString().slice(0, 10));
  return all;
}

describe('daily copies', () => {
  test('[ARC-20] seven days stay, and the Sundays of the four weeks before', () => {
    // 2026-11-30 is a Monday (any calendar).
    let standing: string[] = [];
    for (const today of days('2026-09-01', '2026-11-30')) {
      standing.push(today);
      const drop = copiesToDrop(standing, today);
      standing = standing.filter(day => !drop.includes(day));
    }
    expect(standing).toEqual(['2026-11-01', '2026-11-08', '2026-11-15', '2026-11-22', ...days('2026-11-24', '2026-11-30')]);
  });

  test('[ARC-20] the newest stays, however old it is', () => {
    expect(copiesToDrop(['2025-01-01', '2025-01-02'], '2026-11-30')).toEqual(['2025-01-01']);
  });

  test('[ARC-21] whoever is erased is in no copy after the day that is told, whenever the program is used', () => {
    let standing = days('2026-09-01', '2026-10-31');
    for (const today of days('2026-09-01', '2026-10-31'))
      standing = standing.filter(
        day =>
          day > today ||
          !copiesToDrop(
            standing.filter(one => one <= today),
            today,
          ).includes(day),
      );
    const until = heldUntil(standing)!;
    const held = new Set(standing);
    // Erased on the last day, after its copy; one copy more a day from then on.
    for (const today of days('2026-11-01', until)) {
      standing.push(today);
      const drop = copiesToDrop(standing, today);
      standing = standing.filter(day => !drop.includes(day));
    }
    expect(standing.filter(day => held.has(day))).toEqual([]);
    expect(until).toBe('2026-12-05');
    expect(heldUntil([])).toBeUndefined();
  });
});
