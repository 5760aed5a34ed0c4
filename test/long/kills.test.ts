import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { zipSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { inClear } from './kills/clearText.ts';
import { Ledger } from './kills/ledger.ts';
import { losses, Tally } from './kills/tally.ts';
import { kills } from './kills.ts';

// A kill a scenario; `npm run test:long -- kills` makes three hundred, and docs/long-run.json keeps what it found.
test('[STO-7] [VLT-11] kills of the program, its database and its works: nothing acknowledged is lost, doubled, half or readable', async () => {
  const { figures, found } = await kills(5, 20_261_130);
  expect(found).toEqual([]);
  for (const [scenario, figure] of Object.entries(figures)) {
    expect(figure, scenario).toMatchObject(Object.fromEntries(losses.map(loss => [loss, 0])));
    if (figure.seen['skipped: PostgreSQL is not on this machine'] === undefined) expect(figure.kills, scenario).toBeGreaterThan(0);
  }
  expect(figures.server?.acknowledged).toBeGreaterThan(0);
}, 600_000);

describe('the looks after a kill can fail', () => {
  const done = (key: string, state: string, ledger: Ledger) => ledger.write(key, state, async () => ({ status: 200, body: {} }));
  const unanswered = (key: string, state: string, ledger: Ledger) => ledger.write(key, state, () => Promise.reject(new Error('killed')));
  const refused = (key: string, state: string, ledger: Ledger) =>
    ledger.write(key, state, async () => ({ status: 503, body: { code: 'database-unreachable' } }));

  test.each<[what: string, found: [string, string][], lost: number, doubled: number, half: number]>([
    [
      'all of it',
      [
        ['a', '2'],
        ['b', '1'],
      ],
      0,
      0,
      0,
    ],
    [
      'also what was not answered',
      [
        ['a', '2'],
        ['b', '1'],
        ['c', '1'],
      ],
      0,
      0,
      0,
    ],
    ['one missing', [['b', '1']], 1, 0, 0],
    [
      'one as it was before',
      [
        ['a', '1'],
        ['b', '1'],
      ],
      1,
      0,
      0,
    ],
    [
      'one twice',
      [
        ['a', '2'],
        ['a', '2'],
        ['b', '1'],
      ],
      0,
      1,
      0,
    ],
    [
      'one half',
      [
        ['a', '2'],
        ['b', '1'],
        ['c', ''],
      ],
      0,
      0,
      1,
    ],
    [
      'one that was refused',
      [
        ['a', '2'],
        ['b', '1'],
        ['d', '1'],
      ],
      0,
      0,
      1,
    ],
  ])('acknowledged writes, %s', async (_, found, lost, doubled, half) => {
    const tally = new Tally('a test', 1);
    const ledger = new Ledger(tally);
    await done('a', '1', ledger);
    await done('a', '2', ledger);
    await done('b', '1', ledger);
    await unanswered('c', '1', ledger);
    await refused('d', '1', ledger);
    ledger.compare(found);
    expect(tally.figures()).toMatchObject({ acknowledged: 3, lost, doubled, half });
  });

  test('a word of a client is found in every writing, in a name and within a packed file', () => {
    const folder = mkdtempSync(join(tmpdir(), 'platewright-clear-'));
    try {
      const word = 'Zyqvorthumbel';
      writeFileSync(join(folder, 'nothing'), 'Zyqvorthumbe');
      expect(inClear([folder], [word])).toEqual({ files: 1, hits: [] });
      const writings = [
        Buffer.from(`name ${word}`),
        Buffer.from(`name ${word}`, 'utf16le'),
        Buffer.from(`name ${word}`, 'utf16le').swap16(),
        Buffer.from(Buffer.from(`name ${word}`).toString('hex')),
        ...['', 'a', 'ab'].map(before => Buffer.from(Buffer.from(`${before}${word} more`).toString('base64'))),
        Buffer.from(zipSync({ inside: Buffer.from(`packed ${word} ${word} ${word}`) })),
      ];
      for (const [at, bytes] of writings.entries()) writeFileSync(join(folder, `writing ${at}`), bytes);
      writeFileSync(join(folder, word), '');
      expect(inClear([folder], [word]).hits).toHaveLength(writings.length + 1);
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  });
});
