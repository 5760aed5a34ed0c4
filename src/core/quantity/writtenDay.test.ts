import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from './calendarDay.ts';
import { dayOrderOf, readWrittenDay } from './writtenDay.ts';

const day = (words: string, order: 'month-first' | 'day-first' = 'month-first') => readWrittenDay(words, order)?.day;

describe('a day as it is written', () => {
  test.each([
    ['2026-11-03', '2026-11-03'],
    ['2026/11/03', '2026-11-03'],
    ['20261103', '2026-11-03'],
    ['3-Nov-26', '2026-11-03'],
    ['03 November 2026', '2026-11-03'],
    ['Nov 3, 2026', '2026-11-03'],
    ['Sept. 3, 2026', '2026-09-03'],
    ['11/13/2026', '2026-11-13'],
    ['13/11/2026', '2026-11-13'],
    ['3.11.2026', '2026-11-03'],
    ['11/03/26', '2026-11-03'],
    ['2/29/2028', '2028-02-29'],
  ])('%s is %s', (words, expected) => {
    expect(day(words)).toBe(expected);
    expect(readWrittenDay(words, 'month-first')?.isByOrder).toBe(words === '11/03/26');
  });

  test.each([
    '',
    'today',
    '2026-13-01',
    '2026-02-30',
    '2/29/2026',
    '13/13/2026',
    '32.1.2026',
    '11/03',
    '1103/2026',
    '11/03-2026',
    'Novel 3, 2026',
    '3-Mayor-26',
    '0/3/2026',
    '26-11-03',
    '2026-11-03 25:00',
    '2026-11-03 soon',
    '2026-11-03 0:30 PM',
  ])('%j is none', words => {
    expect(readWrittenDay(words, 'month-first')).toBeUndefined();
    expect(readWrittenDay(words, 'day-first')).toBeUndefined();
  });

  test.each([
    ['11/03/2026 7:30 AM', '07:30'],
    ['11/03/2026 12:05 am', '00:05'],
    ['11/03/2026, 12:05 p.m.', '12:05'],
    ['2026-11-03T07:30:15.000Z', '07:30'],
    ['2026-11-03 0730', '07:30'],
    ['20261103 1930', '19:30'],
    ['3-Nov-2026 19:30', '19:30'],
  ])('%s has a time', (words, time) => {
    expect(readWrittenDay(words, 'month-first')).toMatchObject({ day: '2026-11-03', time });
  });

  test('law: every day written with the month first or the day first is read back in that order', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 40_000 }), fc.boolean(), (days, isMonthFirst) => {
        const written = addDays('1990-01-01', days);
        const [year, month, date] = written.split('-').map(Number);
        const words = isMonthFirst ? `${month}/${date}/${year}` : `${date}/${month}/${year}`;
        const read = readWrittenDay(words, isMonthFirst ? 'month-first' : 'day-first');
        expect(read).toEqual({ day: written, isByOrder: month !== date && month! <= 12 && date! <= 12 });
      }),
    );
  });
});

describe('the order in which days are written', () => {
  test.each([
    [['11/03/2026', '11/13/2026'], 'month-first'],
    [['3/11/2026', '13/11/2026'], 'day-first'],
    [['11/03/2026', '10/06/2026'], undefined],
    [['11/11/2026', '2026-10-13', '13.10.2026'], undefined],
    [['13/11/2026', '11/13/2026'], 'mixed'],
    // Month first it would be in December, which is not yet.
    [['12/11/2026'], 'day-first'],
    [['11/12/2026'], 'month-first'],
    [['12/12/2026'], undefined],
    [[''], undefined],
  ] as const)('%j on 2026-11-30: %s', (all, order) => {
    expect(dayOrderOf(all, '2026-11-30')).toBe(order);
  });
});
