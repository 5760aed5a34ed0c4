import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { writeSite } from './writeSite.ts';

const files = (text: string) =>
  new Map([
    ['index.html', text],
    ['guides/a.html', text],
  ]);

describe('the folder of a site', () => {
  let place: string;
  let site: string;
  beforeEach(() => {
    place = mkdtempSync(join(tmpdir(), 'platewright-site-'));
    site = join(place, 'site');
  });
  afterEach(() => rmSync(place, { recursive: true, force: true }));
  const read = () => readFileSync(join(site, 'guides/a.html'), 'utf8');

  it('[GDE-18] is made whole, and made anew over the last build, with nothing left beside it', async () => {
    await writeSite(site, files('one'));
    await writeSite(site, new Map([['guides/a.html', 'two']]));
    expect([read(), existsSync(join(site, 'index.html')), readdirSync(place)]).toEqual(['two', false, ['site']]);
  });

  it('[GDE-19] is refused when it holds what no build wrote, and stays as it was', async () => {
    await writeSite(site, files('one'));
    writeFileSync(join(site, 'notes.txt'), 'mine');
    await expect(writeSite(site, files('two'))).rejects.toMatchObject({
      code: 'folder-not-owned',
      message: expect.stringContaining('notes.txt'),
    });
    expect([read(), readFileSync(join(site, 'notes.txt'), 'utf8'), readdirSync(place)]).toEqual(['one', 'mine', ['site']]);
  });

  it('[GDE-19] a link in its place, or inside it, is refused; nothing is written where it leads', async () => {
    const outside = join(place, 'outside');
    mkdirSync(outside);
    symlinkSync(outside, site);
    await expect(writeSite(site, files('two'))).rejects.toMatchObject({ code: 'folder-not-owned' });
    rmSync(site);
    await writeSite(site, files('one'));
    rmSync(join(site, 'guides'), { recursive: true });
    symlinkSync(outside, join(site, 'guides'));
    await expect(writeSite(site, files('two'))).rejects.toMatchObject({ code: 'folder-not-owned' });
    expect(readdirSync(outside)).toEqual([]);
  });

  it('[GDE-19] a path that leads out of the folder is never written', async () => {
    await expect(writeSite(site, new Map([['../evil.html', 'x']]))).rejects.toThrow(RangeError);
    expect(readdirSync(place)).toEqual([]);
  });

  it('[GDE-18] a build that was stopped halfway through the swap gives the last good one back', async () => {
    await writeSite(site, files('one'));
    const { renameSync } = await import('node:fs');
    renameSync(site, join(place, '.site.previous'));
    await writeSite(site, files('two'));
    expect([read(), readdirSync(place)]).toEqual(['two', ['site']]);
  });

  it('[SRV-46] what a killed build left is swept, what a running one writes is not', async () => {
    // No system gives the first number to a program; ours is running.
    const left = [
      `.site.building-999999999-abcdef`,
      `.site.building-${process.pid}-abcdef`,
      '.site.building-mine',
      '.other.building-999999999-abcdef',
    ];
    for (const name of left) mkdirSync(join(place, name));
    await writeSite(site, files('one'));
    expect(readdirSync(place).sort()).toEqual([...left.slice(1), 'site'].sort());
  });

  it('[GDE-20] a path through a file is told in words', async () => {
    writeFileSync(join(place, 'file'), '');
    await expect(writeSite(join(place, 'file/site'), files('x'))).rejects.toMatchObject({
      code: 'output-not-written',
      message: expect.stringContaining('a part of the path is a file'),
    });
  });
});
