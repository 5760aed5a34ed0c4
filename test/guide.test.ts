import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { HtmlValidate } from 'html-validate';
import Papa from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { lowInSodiumAsEaten } from '#core/yardstick/yardsticks/lowInSodiumAsEaten.ts';
import { asAnybody, canCloseFolders, closeFolder, openFolder } from './closedFolder.ts';
import { program } from './program.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const guide = join(root, 'data/demo/guides/sandwich-slices.json');
const labels = join(root, 'data/demo/labels.csv');
const place = mkdtempSync(join(tmpdir(), 'platewright-guide-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

function build(out: string, { file = guide, table = labels, more = [] as string[] } = {}) {
  const args = [
    'guide',
    'build',
    file,
    '--labels',
    table,
    '--plates',
    join(root, 'data/demo/plates'),
    '--today',
    '2026-11-15',
    '--out',
    out,
  ];
  const command = asAnybody(process.execPath, program, ...args, ...more);
  const { status, stdout, stderr } = spawnSync(...command, { encoding: 'utf8', timeout: 60_000 });
  return { status, stdout, stderr };
}

function files(folder: string): Record<string, string> {
  const paths = readdirSync(folder, { recursive: true, withFileTypes: true }).filter(entry => entry.isFile());
  return Object.fromEntries(
    paths.map(({ parentPath, name }) => [join(parentPath, name).slice(folder.length), readFileSync(join(parentPath, name), 'utf8')]),
  );
}

function guideWith(name: string, more: Readonly<Record<string, unknown>>): string {
  const path = join(place, name);
  writeFileSync(path, JSON.stringify({ ...(JSON.parse(readFileSync(guide, 'utf8')) as object), ...more }));
  return path;
}

describe('platewright guide build', () => {
  it('[GDE-16] the demo guide is valid HTML, and the same input gives the same bytes', async () => {
    const [a, b] = [join(place, 'a'), join(place, 'b')];
    const more = ['--site-url', 'https://guides.example/'];
    const { status, stdout } = build(a, { more });
    expect(status).toBe(0);
    expect(stdout.trim().split('\n')).toContain(join(a, 'guides/sandwich-slices.html'));
    build(b, { more });
    const built = files(a);
    expect(files(b)).toEqual(built);
    expect(Object.keys(built)).toEqual(expect.arrayContaining(['/index.html', '/feed.xml', '/sitemap.xml', '/guides/sandwich-slices.csv']));
    const validator = new HtmlValidate({ extends: ['html-validate:standard', 'html-validate:a11y'] });
    for (const [path, html] of Object.entries(built).filter(([name]) => name.endsWith('.html') && !name.includes('fragment'))) {
      const { results } = await validator.validateString(html);
      expect({ path, messages: results.flatMap(({ messages }) => messages.map(({ message }) => message)) }).toEqual({ path, messages: [] });
    }
  });

  it('[GDE-16] the script of the demo builds the same pages into a folder that opens from disk', () => {
    const [a, b] = [join(place, 'by-hand'), join(place, 'by-script')];
    build(a);
    const { status } = spawnSync(process.execPath, [join(root, 'data/demo/buildGuides.ts'), b], { encoding: 'utf8', timeout: 60_000 });
    expect(status).toBe(0);
    expect(files(b)).toEqual(files(a));
    expect(Object.values(files(b)).join('')).not.toMatch(/(?:href|src)="\//);
  });

  it('[GDE-1] tells the verdicts of the demo survey: 14 fit, 3 nearly, 14 left out', () => {
    const out = join(place, 'counts');
    build(out);
    expect(files(out)['/guides/sandwich-slices.html']).toContain('31 foods judged: 14 fit, 3 nearly, 14 left out.');
    const { data } = Papa.parse<Record<string, string>>(files(out)['/guides/sandwich-slices.csv']!.trim(), { header: true });
    expect(data.filter(({ verdict }) => verdict === 'fits').length).toBe(14);
    // By hand from the label: turkey 60 kcal and 180 mg on bread of 160 kcal and 20 mg.
    expect(data.find(({ foodId }) => foodId === 'turkey-lower-sodium-2026-10')).toMatchObject({
      ...{ energyKcal: '60', sodiumMg: '180', phosphorusMg: '', plateEnergyKcal: '220', plateSodiumMg: '200', toSpare: '20 mg to spare' },
    });
  });

  it('[GDE-13] no cell of the table runs as a formula', () => {
    const table = join(place, 'formula.csv');
    const statement = 'Turkey.';
    const rows = ['=1+1', '+1', '-1', '@SUM(A1)', '\u200F=1', '\t=1'].map(name => ({
      ...{
        name,
        maker: name,
        category: 'sandwich slices',
        readOn: '2026-11-01',
        servingGrams: '56',
        energyKcal: '80',
        sodiumMg: '90',
        statement,
      },
    }));
    writeFileSync(table, Papa.unparse(rows));
    const out = join(place, 'formula');
    expect(build(out, { table }).status).toBe(0);
    const { data } = Papa.parse<string[]>(files(out)['/guides/sandwich-slices.csv']!.trim());
    expect(data.length).toBe(7);
    for (const cell of data.flat()) expect(cell).not.toMatch(/^[\s\u200F]*[=+\-@]/);
  });

  it('[GDE-10] a label that was removed is reported, and the guide is built', () => {
    const file = guideWith('removed.json', { portionNotes: { gone: 'Weigh it.' } });
    const { status, stderr } = build(join(place, 'removed'), { file });
    expect([status, stderr]).toEqual([0, expect.stringContaining('portionNotes.gone')]);
  });

  it.each([
    ['no JSON', () => labels, 'The guide file is not valid'],
    ['an id that is a path', () => guideWith('path.json', { id: '../../x' }), 'The guide file is not valid'],
    [
      'no such category',
      () => guideWith('none.json', { survey: { category: 'hats', plateId: 'on-its-own', yardstickId: 'low-in-sodium-as-eaten' } }),
      'The guide file is not valid',
    ],
    [
      'a plate outside',
      () =>
        guideWith('plate.json', {
          survey: { category: 'sandwich slices', plateId: '../plates/slices-on-low-sodium-bread', yardstickId: 'low-in-sodium-as-eaten' },
        }),
      'Plate not found',
    ],
    [
      'a yardstick outside',
      () => {
        // Yardsticks are looked for beside the guide: the way out of its folder leads to a good one, as that of the plate does.
        writeFileSync(join(place, 'outside.json'), JSON.stringify({ ...lowInSodiumAsEaten, id: 'outside' }));
        const survey = { category: 'sandwich slices', plateId: 'on-its-own', yardstickId: `../${basename(place)}/outside` };
        return guideWith('yardstick.json', { survey });
      },
      'Yardstick not found',
    ],
  ])('[GDE-20] %s is told in words and the last build stays', (_, file, title) => {
    const out = join(place, 'kept');
    build(out);
    const before = files(out);
    const { status, stderr } = build(out, { file: file() });
    expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(new RegExp(`${title}[\\s\\S]*Next: `)) });
    expect(files(out)).toEqual(before);
  });

  it('[GDE-19] a link in place of the folder is refused', () => {
    symlinkSync(root, join(place, 'link'));
    const { status, stderr } = build(join(place, 'link'));
    expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(/is a link[\s\S]*Next: /) });
  });

  it.skipIf(!canCloseFolders)(
    '[GDE-20] a folder that may not be written: told, nothing changed, nothing left beside it (skipped where a folder cannot be closed)',
    () => {
      const closed = mkdtempSync(join(tmpdir(), 'platewright-closed-'));
      build(join(closed, 'site'));
      const before = files(closed);
      expect(Object.keys(before).length).toBeGreaterThan(5);
      closeFolder(closed);
      const { status, stderr } = build(join(closed, 'site'));
      openFolder(closed);
      expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(/you may not write there[\s\S]*Next: /) });
      expect(files(closed)).toEqual(before);
      expect(readdirSync(closed)).toEqual(['site']);
      rmSync(closed, { recursive: true });
    },
  );

  it('[GDE-21] without a browser --pdf says what to do, before anything is written', () => {
    const args = [program, 'guide', 'build', guide, '--labels', labels, '--out', join(place, 'nopdf'), '--pdf'];
    const env = { ...process.env, PLATEWRIGHT_BROWSER: '/nowhere/browser' };
    const { status, stderr } = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', env });
    expect({ status, stderr }).toMatchObject({
      status: 1,
      stderr: expect.stringMatching(/No browser to make the PDF with[\s\S]*Next: Install/),
    });
    expect(readdirSync(place)).not.toContain('nopdf');
  });
});
