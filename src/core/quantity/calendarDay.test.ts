import { expect, test } from 'vitest';
import { addDays, addMonths, daysBetween, hourOfDay, isDay, yearsBetween } from './calendarDay.ts';

// The Gregorian calendar: a leap year every fourth year, not every hundredth, but every four-hundredth.
test.each([
  ['2026-01-01', true],
  ['2026-12-31', true],
  ['2026-04-30', true],
  ['2028-02-29', true],
  ['2000-02-29', true],
  ['2026-04-31', false],
  ['2027-02-29', false],
  ['1900-02-29', false],
  ['2026-00-10', false],
  ['2026-13-10', false],
  ['2026-01-00', false],
  ['2026-01-32', false],
  ['2026-1-01', false],
  ['01.01.2026', false],
  ['2026-01-01T00:00', false],
  ['', false],
])('[CLT-41] %s exists: %s', (words, exists) => {
  expect(isDay(words)).toBe(exists);
});

test.each([
  ['2026-02-27', '2026-03-01', 2],
  ['2028-02-27', '2028-03-01', 3],
  ['2026-03-01', '2026-02-27', -2],
  ['2026-03-29', '2026-03-30', 1],
  ['2026-12-31', '2027-01-01', 1],
  ['2026-01-01', '2026-01-01', 0],
])('[CLT-41] from %s to %s are %d days', (from, to, days) => {
  expect(daysBetween(from, to)).toBe(days);
  expect(addDays(from, days)).toBe(to);
});

test.each([
  ['2026-01-31', 1, '2026-02-28'],
  ['2028-01-31', 1, '2028-02-29'],
  ['2026-01-15', 1, '2026-02-15'],
  ['2026-11-30', 1, '2026-12-30'],
  ['2026-12-31', 1, '2027-01-31'],
  ['2026-10-31', 14, '2027-12-31'],
  ['2026-03-31', -1, '2026-02-28'],
  ['2026-01-31', -1, '2025-12-31'],
  ['2026-05-05', 0, '2026-05-05'],
  ['0999-12-05', 1, '1000-01-05'],
])('[CLT-41] %s and %d months is %s', (day, months, expected) => {
  expect(addMonths(day, months)).toBe(expected);
});

test.each([
  ['2026-06-01', 25],
  ['2026-06-02', 26],
  ['2026-06-03', 26],
  ['2026-05-31', 25],
  ['2026-07-01', 26],
  ['2000-06-02', 0],
])('[CLT-41] born 2000-06-02, on %s: %d years', (on, years) => {
  expect(yearsBetween('2000-06-02', on)).toBe(years);
});

test('[CLT-41] a time of day is hours since midnight', () => {
  expect(['8:30', '0:15', '23:00', '7', undefined].map(time => hourOfDay(time))).toEqual([8.5, 0.25, 23, 7, 0]);
});
