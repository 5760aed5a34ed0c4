import { describe, expect, test } from 'vitest';
import type { Watch } from '#app/watch.ts';
import { Fault } from '#core/errors.ts';
import { readTable } from './readTable.ts';
import { readingLimits, readTableApart } from './readTableApart.ts';
import { inline, sheetData, workbookFile } from './workbook.fixture.ts';

const csv = (rows: number) => new TextEncoder().encode(`name,sodiumMg\n${'Slices,200\n'.repeat(rows)}`);
const workbook = workbookFile({
  sheets: [
    {
      name: 'A',
      xml: sheetData([
        ['name', 'sodiumMg'],
        ['Slices', '200'],
      ]),
    },
  ],
});

describe('reading on a thread of its own', () => {
  test('[FIL-2] gives what reading in place gives, and leaves the bytes to their owner', async () => {
    const read = readTableApart();
    for (const bytes of [csv(1_000), workbook]) {
      expect(await read(bytes)).toEqual(readTable(bytes));
      expect(bytes.length).toBeGreaterThan(0);
    }
  });

  test('[FIL-2] tells how many kilobytes are read, up to all', async () => {
    const told: [string, number, number][] = [];
    const watch: Watch = { step: async (what, done, of) => void told.push([what, done, of]) };
    const bytes = csv(90_000);
    await readTableApart()(bytes, watch);
    const kilobytes = Math.ceil(bytes.length / 1024);
    expect(told[0]).toEqual(['Reading kilobytes', 0, kilobytes]);
    expect(told.some(([, done]) => done > 0 && done < kilobytes)).toBe(true);
    expect(told.at(-1)).toEqual(['Reading kilobytes', kilobytes, kilobytes]);
  });

  test('[FIL-3] stops when nobody waits any more, also while others wait for their turn', async () => {
    const gone: Watch = {
      step: async (_, done) => {
        if (done > 0) throw new Fault('work-cancelled', 'stopped');
      },
    };
    const read = readTableApart();
    const [stopped, next] = await Promise.allSettled([read(csv(90_000), gone), read(csv(2))]);
    expect(stopped).toMatchObject({ status: 'rejected', reason: { code: 'work-cancelled' } });
    expect(next).toMatchObject({ status: 'fulfilled', value: { rows: [{ row: 2 }, { row: 3 }] } });
  });

  test('[FIL-4] is stopped at its limit of time, and the next file is read', async () => {
    const read = readTableApart({ ...readingLimits, seconds: { first: 0.02, eachMegabyte: 0, most: 60 } });
    await expect(read(csv(99_000))).rejects.toMatchObject({ code: 'file-took-too-long' });
    expect((await readTableApart()(csv(1))).rows).toHaveLength(1);
  });

  test('[FIL-4] is stopped at its limit of memory, and the program goes on', async () => {
    const texts = Array.from({ length: 400_000 }, (_, at) => `<si><t>text number ${at}, longer than the space that it gets</t></si>`).join(
      '',
    );
    const file = workbookFile({ sheets: [{ name: 'A', xml: `<sheetData><row>${inline('name')}</row></sheetData>` }], texts });
    const read = readTableApart({ ...readingLimits, megabytes: 16, seconds: { first: 60, eachMegabyte: 0, most: 60 } });
    await expect(read(file)).rejects.toMatchObject({ code: 'table-too-large' });
    expect((await read(csv(1))).rows).toHaveLength(1);
  });
});
