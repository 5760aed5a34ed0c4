import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { readBytes } from './readBytes.ts';
import { readTable } from './readTable.ts';
import { streamTable } from './streamTable.ts';

const place = mkdtempSync(join(tmpdir(), 'platewright-files-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));
const at = (name: string) => join(place, name);

describe.skipIf(process.platform === 'win32')('what is named as a file (skipped on Windows, which has no such files)', () => {
  test.each([
    ['a folder', place],
    ['a device that never ends', '/dev/zero'],
    ['a device that holds nothing', '/dev/null'],
  ])('[FIL-20] %s is refused at once', async (_, path) => {
    await expect(readBytes(path)).rejects.toMatchObject({ code: 'file-not-readable' });
    await expect(streamTable(path)).rejects.toMatchObject({ code: 'file-not-readable' });
  });

  test('[FIL-21] a pipe is read to its end, and one into which nobody writes is given up', { timeout: 60_000 }, async () => {
    const pipe = at('pipe');
    execFileSync('mkfifo', [pipe]);
    const [read] = await Promise.all([readBytes(pipe), writeFile(pipe, 'name,sodiumMg\n'.repeat(50_000))]);
    expect(read.length).toBe(14 * 50_000);
    expect(await streamTable(pipe)).toBeUndefined();
    await expect(readBytes(pipe)).rejects.toMatchObject({ code: 'file-took-too-long' });
  });

  test('[FIL-22] a file gone through in blocks gives the rows and issues of the file read whole, however often', async () => {
    const rows = Array.from({ length: 40_000 }, (_, row) => (row % 997 === 0 ? `"open ${row},1` : `"a ${row}, é",${row}`));
    writeFileSync(at('long.csv'), Buffer.from(`name,sodiumMg\r\n${rows.join('\r\n')}\r\n`, 'latin1'));
    const whole = readTable(await readBytes(at('long.csv')));
    const blocks = await streamTable(at('long.csv'));
    for (let round = 0; round < 2; round += 1) {
      const found = [];
      const stream = blocks!();
      let next = await stream.next();
      for (; !next.done; next = await stream.next()) found.push(...next.value);
      expect(found[0]?.cells).toEqual(whole.headings);
      expect(found.slice(1)).toEqual(whole.rows);
      expect(next.value).toEqual(whole.issues);
    }
    expect(whole.rows).toHaveLength(40_000);
  });
});
