import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { closeSync, existsSync, mkdtempSync, openSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import Papa from 'papaparse';
import { afterAll, describe, expect, it } from 'vitest';
import { foodDes, nutData } from '#adapters/datasets/datasets.fixture.ts';
import { faultCatalogue } from '#core/faultCatalogue.ts';
import { program } from './program.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const launcher = join(root, 'bin/platewright');
const demoTable = join(root, 'data/demo/labels.csv');
const demoPlate = join(root, 'data/demo/plates/slices-on-low-sodium-bread.json');
const yardstick = 'low-in-sodium-as-eaten';
const place = mkdtempSync(join(tmpdir(), 'platewright-cli-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

function run(args: readonly string[], input: string | Uint8Array = '') {
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    input,
    cwd: place,
    encoding: 'utf8',
    maxBuffer: 1 << 28,
    timeout: 60_000,
  });
  return { status, stdout, stderr };
}

function file(name: string, content: string | Uint8Array): string {
  const path = join(place, name);
  writeFileSync(path, content);
  return path;
}

const survey = (table: string, ...more: string[]) => run(['survey', table, '--plate', 'on-its-own', '--yardstick', yardstick, ...more]);

describe('platewright as a process', () => {
  it('[CLI-1] help names every command, and nothing is said on standard error', () => {
    const { status, stdout, stderr } = run(['help']);
    expect([status, stderr]).toEqual([0, '']);
    for (const command of ['survey', 'statement', 'label', 'yardsticks', 'formula', 'start', 'help'])
      expect(stdout).toContain(`platewright ${command}`);
  });

  it('[CLI-28] minerals answers a line for a line, with ranges outward, or says why it cannot', () => {
    const lines = [
      {
        id: 1,
        statement: 'Milk.',
        servingG: 240,
        panel: { fatG: 8, saturatedFatG: 4.5, carbohydrateG: 12, proteinG: 8, calciumMg: 280, sodiumMg: 105 },
      },
      { id: 2, statement: '', servingG: 240, panel: {} },
    ];
    const { status, stdout } = run(['minerals', '--jsonl'], lines.map(line => JSON.stringify(line)).join('\n'));
    const [milk, none] = stdout
      .trim()
      .split('\n')
      .map(line => JSON.parse(line));
    expect(status).toBe(0);
    // USDA SR28 01077, whole milk: 84 mg phosphorus and 132 mg potassium in 100 g.
    expect(milk.phosphorusMg.sure[0]).toBeLessThan(202);
    expect(milk.phosphorusMg.sure[1]).toBeGreaterThan(202);
    expect(milk.addedPhosphorusMg.sure).toEqual([0, 0]);
    expect(none.cannotBeBounded).toBe('the ingredient statement could not be read');
  });

  it('[CLI-40] formula lists, describes and works out, as text and as JSON', () => {
    const list = run(['formula']);
    expect([list.status, list.stderr]).toEqual([0, '']);
    for (const subject of ['kidney function', 'weight', 'protein and nutrition', 'minerals', 'dialysis', 'fluid'])
      expect(list.stdout).toMatch(new RegExp(`^${subject}$`, 'm'));
    expect(list.stdout).toMatch(/^ {2}egfr-ckd-epi-2021 +eGFR, CKD-EPI 2021 creatinine$/m);
    const described = run(['formula', 'phosphate-binder-load']).stdout;
    expect(described).toContain('tablet: Strength of a tablet; 1 to 3000 mg, or 0.001 to 3 g');
    expect(described).toContain('Source: Daugirdas, Semin Dial 2011, to be confirmed');
    const result = run(['formula', 'body-mass-index', 'weight=82kg', 'height=175 cm']);
    expect([result.status, result.stderr]).toEqual([0, '']);
    expect(result.stdout).toContain('Body mass index: 26.8 kg/m²');
    expect(result.stdout).toContain('Caution: Local protocol and clinical judgment come first.');
    expect(JSON.parse(run(['formula', 'fluid-from-urine', 'urine=0.3L', '--json']).stdout)).toMatchObject({
      name: 'fluid-from-urine',
      results: [{ kind: 'range', text: '800 – 1300 mL/day', range: [800, 1300], unit: 'mL/day' }],
      sources: ['common practice, no source'],
    });
    const all = JSON.parse(run(['formula', '--json']).stdout);
    expect(all.length).toBeGreaterThan(35);
  });

  it('[CLI-41] worked examples give what they say when they are typed as printed', () => {
    for (const name of ['ideal-weight-devine', 'weight-before-amputation', 'protein-energy-wasting', 'kt-v-single-pool']) {
      const described = run(['formula', name]).stdout.replace(/\s+/g, ' ');
      const [, line = '', given = ''] = /Example: platewright (.*?) Gives: (?:[^0-9]*) ([\d.]+)/.exec(described) ?? [];
      const words = [...line.matchAll(/(?:[^\s"]|"[^"]*")+/g)].map(([word]) => word.replaceAll('"', ''));
      const { status, stdout } = run(words);
      expect([name, status]).toEqual([name, 0]);
      expect(stdout).toContain(given);
    }
  });

  it('[CLI-42] what cannot be worked out names each input, what was found and expected', () => {
    const odd = run(['formula', 'body-mass-index', 'weight=72', 'height=1.75 cm', 'size=2']);
    expect([odd.status, odd.stdout]).toEqual([1, '']);
    expect(odd.stderr).toBe(`This cannot be worked out
Body mass index:
weight: found "72", expected its unit: kg or lb
height: found "1.75 cm", expected 100 to 250 cm; was it m?
size: found "size", expected one of: weight, height
Next: Mend the inputs named in the message; \`platewright formula NAME\` shows what a formula asks for.
`);
    expect(run(['formula', 'body-mass']).stderr).toContain('Formula not found\nThere is no formula "body-mass".\nNext: ');
    expect(run(['formula', 'body-mass-index', '72']).stderr).toContain('"72" is no input: write INPUT=VALUE');
    expect(run(['formula', 'body-mass-index', 'weight=1kg', 'weight=2kg']).stderr).toContain('The input "weight" is given twice.');
  });

  it('[CLI-27] reference import writes a file that minerals uses; a folder with no dataset says what to do next', () => {
    const folder = mkdtempSync(join(tmpdir(), 'sr28-'));
    try {
      writeFileSync(join(folder, 'FOOD_DES.txt'), foodDes);
      writeFileSync(join(folder, 'NUT_DATA.txt'), `${nutData}~11241~^~307~^twenty^\n`);
      const out = join(folder, 'larger.json');
      const imported = run(['reference', 'import', folder, '--out', out]);
      expect([imported.status, imported.stdout]).toEqual([0, '']);
      expect(imported.stderr).toContain('NUT_DATA.txt, line 16: found ""twenty"", expected a number for sodiumMg');
      expect(imported.stderr).toContain('release 28: 6 foods');
      expect(imported.stderr).toContain('5 names of ingredients');
      const line = JSON.stringify({ id: 1, statement: 'Kohlrabi.', servingG: 100, panel: { carbohydrateG: 6, proteinG: 2, sodiumMg: 20 } });
      const widths = [
        ['minerals', '--jsonl'],
        ['minerals', '--reference', out, '--jsonl'],
      ].map(args => {
        const { sure } = JSON.parse(run(args, line).stdout).phosphorusMg;
        return sure[1] - sure[0];
      });
      expect(widths[1]).toBeLessThan(widths[0]! / 3);
      rmSync(join(folder, 'NUT_DATA.txt'));
      rmSync(out);
      const refused = run(['reference', 'import', folder, '--out', out]);
      expect([refused.status, existsSync(out)]).toEqual([1, false]);
      expect(refused.stderr).toContain('NUT_DATA.txt is missing beside food_des.txt.\nNext: Unpack the download');
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
    for (const args of [['reference'], ['reference', 'import'], ['reference', 'import', 'somewhere']])
      expect(run(args).stderr).toContain('missing');
    expect(run(['minerals', '--reference', 'nowhere.json', '--jsonl'], '').stderr).toContain('File not found');
  });

  it('[CLI-29] prescribe prints the proposal; a fault names the place and not what was typed', () => {
    const assessment = {
      on: '2026-06-15',
      sex: 'male',
      age: { years: 70 },
      treatment: { setting: 'hemodialysis', place: 'in-center' },
      diabetes: false,
      weighings: [{ weight: { value: 70, unit: 'kg' }, kind: 'dry', on: '2026-06-10' }],
      labs: [],
      conditions: [],
      medicines: [],
      supplements: [],
      symptoms: [],
      allergies: [],
      avoidedFoods: [],
      goals: [],
    };
    const { status, stdout } = run(['prescribe', file('client.json', JSON.stringify({ assessment, today: '2026-06-15' }))]);
    expect(status).toBe(0);
    // 1.0 to 1.2 g protein per kg on hemodialysis (KDOQI 2020; kidney facts 3.2).
    expect(JSON.parse(stdout).targets.protein.range).toEqual([70, 84]);
    const wrong = run(['prescribe', file('wrong.json', JSON.stringify({ assessment: { ...assessment, sex: 'Quentin' } }))]);
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toContain('sex: expected');
    expect(wrong.stderr).not.toContain('Quentin');
  });

  it('[CLI-2] it runs through a symbolic link from another folder', () => {
    const link = join(place, 'linked');
    symlinkSync(launcher, link);
    const { status, stdout, stderr } = spawnSync(link, ['help'], { cwd: '/', encoding: 'utf8' });
    expect([status, stderr, stdout.startsWith('Platewright')]).toEqual([0, '', true]);
  });

  it.each([
    [['surway'], 'Unknown command'],
    [['survey'], 'An option is missing'],
    [['survey', 'none.csv', '--yardstick', yardstick], 'An option is missing'],
    [['survey', 'none.csv', '--plate', 'on-its-own', '--yardstick', yardstick], 'File not found'],
    [['survey', demoTable, '--plate', 'no-such-plate', '--yardstick', yardstick], 'Plate not found'],
    [['survey', demoTable, '--plate', 'on-its-own', '--yardstick', 'no-such'], 'Yardstick not found'],
    [['survey', demoTable, '--plate', demoTable, '--yardstick', yardstick], 'The plate file is not valid'],
    [['survey', demoTable, '--plate', 'on-its-own', '--yardstick', demoTable], 'The yardstick file is not valid'],
    [['survey', place, '--plate', 'on-its-own', '--yardstick', yardstick], 'File cannot be read'],
    [['survey', demoTable, '--plate', 'on-its-own', '--yardstick', yardstick, '--setting', 'dialysis'], 'Setting not known'],
    [['survey', demoTable, '--plate', 'on-its-own', '--yardstick', yardstick, '--setting', 'pregnancy'], 'Not for this setting'],
    [['survey', demoTable, '--plate', 'on-its-own', '--yardstick', yardstick, '--format', 'pdf'], 'Option not understood'],
    [['survey', demoTable, '--colour'], 'Option not understood'],
    [['survey', demoTable, 'other.csv', '--plate', 'on-its-own', '--yardstick', yardstick], 'Option not understood'],
    [['statement'], 'An option is missing'],
    [['label'], 'An option is missing'],
  ])("[CLI-3] a person's mistake has a title, a message and a next step, and exit code 1: %s", (args, title) => {
    const { status, stdout, stderr } = run(args);
    expect([status, stdout]).toEqual([1, '']);
    const lines = stderr.trimEnd().split('\n');
    expect(lines[0]).toBe(title);
    expect(lines.length).toBeGreaterThanOrEqual(3);
    expect(lines.at(-1)).toMatch(/^Next: ./);
  });

  it('[CLI-11] a reader that closes the pipe early is no fault', async () => {
    const child = spawn(launcher, ['statement', '--jsonl'], { stdio: ['pipe', 'pipe', 'pipe'] });
    let said = '';
    child.stderr.on('data', (text: Buffer) => {
      said += text.toString();
    });
    child.stdin.on('error', () => {});
    child.stdin.end('{"id":1,"statement":"WATER, SALT"}\n'.repeat(20_000));
    child.stdout.once('data', () => child.stdout.destroy());
    const code = await new Promise(resolve => child.on('exit', resolve));
    expect([code, said]).toEqual([0, '']);
  });

  it.skipIf(!existsSync('/dev/full'))('[CLI-25] a disk that is full is told in words (skipped where there is no /dev/full)', () => {
    const full = openSync('/dev/full', 'w');
    const { status, stderr } = spawnSync(launcher, ['yardsticks'], { stdio: ['ignore', full, 'pipe'], encoding: 'utf8' });
    closeSync(full);
    expect(status).toBe(1);
    expect(stderr).toMatch(/^The results cannot be written\n.*ENOSPC.*\nNext: /);
  });

  it('[CLI-26] stopping it stops the work under it', async () => {
    const child = spawn(launcher, ['statement', '--jsonl'], { stdio: ['pipe', 'pipe', 'ignore'] });
    child.stdin.write('{"id":1,"statement":"SALT"}\n');
    await once(child.stdout, 'data');
    child.kill('SIGTERM');
    // It closes when the last process that holds its output has ended.
    const [code, signal] = await once(child, 'close');
    expect(signal ?? code).toSatisfy(end => end === 'SIGTERM' || end === 143);
  });
});

describe('platewright survey', () => {
  it('[CLI-12] the demo as a table: counts first, every verdict as a word, nothing wider than 80 columns', () => {
    const { status, stdout } = run(['survey', demoTable, '--plate', demoPlate, '--yardstick', yardstick]);
    expect(status).toBe(0);
    const lines = stdout.split('\n');
    const [, foods, ...counts] = /^(\d+) foods: (\d+) fits, (\d+) nearly, (\d+) over, (\d+) can't tell$/m.exec(stdout)!.map(Number);
    expect(counts.reduce((sum, count) => sum + count)).toBe(foods);
    const words = lines.map(line => /^(fits|nearly|over|can't tell) {2}/.exec(line)?.[1]).filter(word => word !== undefined);
    expect(words).toHaveLength(foods!);
    expect(Math.max(...lines.map(line => [...line].length))).toBeLessThanOrEqual(80);
  });

  it('[CLI-13] json, csv and table tell the same verdicts', () => {
    const asked = [demoTable, '--plate', demoPlate, '--yardstick', yardstick, '--setting', 'hemodialysis'];
    const json = JSON.parse(run(['survey', ...asked, '--format', 'json']).stdout);
    expect([json.plate, json.yardstick, json.setting]).toEqual(['slices-on-low-sodium-bread', yardstick, 'hemodialysis']);
    const fromJson = json.foods.map((food: { name: string; verdict: string }) => [food.name, food.verdict]);
    const { data } = Papa.parse<Record<string, string>>(run(['survey', ...asked, '--format', 'csv']).stdout.trimEnd(), { header: true });
    expect(data.map(({ name, verdict }) => [name, verdict])).toEqual(fromJson);
    const counted: Record<string, number> = { fits: 0, nearly: 0, over: 0, "can't tell": 0 };
    for (const [, verdict] of fromJson) counted[verdict] = (counted[verdict] ?? 0) + 1;
    expect(json.counts).toEqual(counted);
    expect(run(['survey', ...asked]).stdout).toContain(`${counted.fits} fits, ${counted.nearly} nearly, ${counted.over} over`);
  });

  // Worked by hand: 100 kcal and 100 mg fit a yardstick of "sodium mg no more than energy kcal"; 110 mg is over by its slack of 10.
  it('[CLI-14] ways, bounds and unknowns of a table made by hand', () => {
    const table = file('hand.csv', 'name,servingGrams,energyKcal,sodiumMg\nA,50,100,100\nB,50,100,110\nC,50,100,300\nD,50,100,\n');
    const { status, stdout, stderr } = survey(table, '--format', 'json');
    expect([status, stderr]).toEqual([0, '']);
    const { foods, counts } = JSON.parse(stdout);
    expect(foods.map((food: { verdict: string }) => food.verdict)).toEqual(['fits', 'nearly', 'over', "can't tell"]);
    expect(counts).toEqual({ fits: 1, nearly: 1, over: 1, "can't tell": 1 });
    expect(foods[3].onPlate.sodiumMg.missing).toHaveLength(1);
    expect(foods[0].statementRead).toBe(false);
  });

  // "On its own" is one serving. 60 mg phosphorus to 5 g protein is 12 mg/g.
  it('[CLI-30] columns of nutrients and ratios are told in table, CSV and JSON alike', () => {
    const heading = 'name,servingGrams,energyKcal,sodiumMg,proteinG,potassiumMg,phosphorusMg';
    const table = file('columns.csv', `${heading}\nA,50,100,100,5,100,60\nB,50,100,100,5,,60\n`);
    const asked = ['--columns', 'potassiumMg, phosphorusMgPerProteinG,potassiumMg'];
    const { foods } = JSON.parse(survey(table, ...asked, '--format', 'json').stdout);
    const shown = foods.map(({ columns }: { columns: Record<string, { text: string; low: number | null }> }) => columns);
    expect(Object.keys(shown[0])).toEqual(['potassiumMg', 'phosphorusMgPerProteinG']);
    expect(shown[0].potassiumMg).toEqual({ text: '100 mg', low: 100 });
    expect(shown[0].phosphorusMgPerProteinG).toEqual({ text: '12 mg/g', low: 12 });
    expect(shown[1].potassiumMg).toEqual({ text: 'not on the label', low: null });
    const { data, meta } = Papa.parse<Record<string, string>>(survey(table, ...asked, '--format', 'csv').stdout.trimEnd(), {
      header: true,
    });
    expect(meta.fields?.slice(-2)).toEqual(['potassiumMg', 'phosphorusMgPerProteinG']);
    expect(data.map(row => row.potassiumMg)).toEqual(['100', '']);
    const lines = survey(table, ...asked).stdout.split('\n');
    expect(lines).toContain(`${' '.repeat(12)}Potassium: 100 mg; Phosphorus per g protein: 12 mg/g`);
    const without = lines.filter(line => !line.includes('Potassium: ')).join('\n');
    expect(without).toBe(survey(table).stdout);
  });

  it('[CLI-31] a column that is none is refused with the list of those there are', () => {
    const { status, stdout, stderr } = survey(file('one.csv', 'name,sodiumMg\nA,1\n'), '--columns', 'potassiumMg,salt');
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(/"salt" is none of: .*potassiumMg.*phosphorusMgPerProteinG/);
  });

  it('[CLI-15] the report names row, heading, what was found and what was expected', () => {
    const table = file('odd.csv', 'name;Sodium (mg);energyKcal;price\nA;plenty;100;3\n;1;2;3\n');
    const { status, stderr, stdout } = survey(table, '--format', 'csv');
    expect(status).toBe(0);
    expect(stderr).toMatch(/^row 2, Sodium \(mg\): found "plenty", expected ./m);
    expect(stderr).toMatch(/^row 3: found "no name", expected ./m);
    expect(stderr).toMatch(/^price: found "price", expected ./m);
    expect(stdout.trimEnd().split('\n')).toHaveLength(2);
  });

  it.each([
    ['empty', '', 'table-without-headings'],
    ['headings that are none', '1,2\n3,4\n', 'table-without-headings'],
    ['no figures', 'name,maker\nA,B\n', 'table-heading-missing'],
    ['twice the same', 'name,sodiumMg,Sodium\nA,1,2\n', 'table-heading-twice'],
  ] as const)('[CLI-16] a table that is none: %s', (name, content, fault) => {
    const { status, stdout, stderr } = survey(file(`${name}.csv`, content));
    expect([status, stdout, stderr.split('\n')[0]]).toEqual([1, '', faultCatalogue[fault].title]);
    expect(stderr).toContain(`\nNext: ${faultCatalogue[fault].nextStep}`);
  });

  it('[CLI-17] a table with headings alone is a survey of no foods', () => {
    const { status, stdout } = survey(file('bare.csv', 'name,sodiumMg\n'));
    expect(status).toBe(0);
    expect(stdout.split('\n')[0]).toBe("0 foods: 0 fits, 0 nearly, 0 over, 0 can't tell");
  });

  it('[CLI-18] a name from outside can neither run as a formula nor steer the terminal', () => {
    const table = file('sly.csv', 'name,sodiumMg,energyKcal\n"=HYPERLINK(""x"")",1,2\n\u001B[2Jgone,1,2\n');
    expect(survey(table, '--format', 'csv').stdout).toContain(`"'=HYPERLINK(""x"")"`);
    expect(survey(table).stdout).not.toContain('\u001B');
  });
});

describe('platewright statement and label', () => {
  const answers = (command: string, input: string | Uint8Array) => {
    const { status, stdout, stderr } = run([command, '--jsonl'], input);
    expect([status, stderr]).toEqual([0, '']);
    return stdout
      .split('\n')
      .slice(0, -1)
      .map(line => JSON.parse(line));
  };

  it('[CLI-19] one line in, one line out, with the tree and the additives', () => {
    const [answer] = answers('statement', '{"id":"1","statement":"WATER, CONTAINS 2% OR LESS OF: SODIUM PHOSPHATE, SALT"}');
    expect(answer.id).toBe('1');
    expect(answer.ingredients[0]).toMatchObject({ kind: 'ingredient', name: 'WATER', start: 0, end: 5, presence: 'certain', parts: [] });
    expect(answer.additives.map((additive: { class: string; counts: boolean }) => [additive.class, additive.counts])).toContainEqual([
      'phosphate',
      true,
    ]);
    expect(answer.issues).toEqual([]);
  });

  it('[CLI-20] a bad line has its issue in its place and the others are answered', () => {
    const bytes = Buffer.concat([
      Buffer.from('{"id":1,"statement":"SALT"}\nnot json\n\n[1]\n{"id":2}\n'),
      Buffer.from([0x22, 0xff, 0x22, 0x0a]),
      Buffer.from('{"id":3,"statement":"SA\0LT"}\n'),
      Buffer.from(`{"id":4,"statement":"${'x'.repeat(10_000_000)}"}\n`),
      Buffer.from('{"id":5,"statement":"SALT, \\ud800 \\u0000, SUGAR"}\n{"id":6,"statement":"SALT"}'),
    ]);
    const read = answers('statement', bytes);
    expect(read.map(({ id, issues }) => [id, issues[0]?.code])).toEqual([
      [1, undefined],
      [null, 'line-not-json'],
      [null, 'line-not-json'],
      [null, 'line-not-json'],
      [2, 'statement-not-text'],
      [null, 'line-not-utf8'],
      [null, 'line-not-json'],
      [null, 'line-too-long'],
      [5, 'text-damaged'],
      [6, undefined],
    ]);
  });

  it('[CLI-21] labels: the example of docs/formats.md reads without an issue', () => {
    const page = readFileSync(join(root, 'docs/formats.md'), 'utf8');
    const example = JSON.parse(/## Label JSON[\s\S]*?```json\n([\s\S]*?)```/.exec(page)![1]!);
    const [answer, bad] = answers('label', `${JSON.stringify(example)}\n{"panel": 3}\n`);
    expect(answer.id).toBe(example.id);
    expect(answer.amounts.sodiumMg).toMatchObject({ kind: 'known', printed: 230, range: [225, 235], source: 'printed' });
    expect(answer.issues).toEqual([]);
    expect(bad.issues.length).toBeGreaterThan(0);
  });

  it('[CLI-22] any bytes at all give one JSON line a line, from both commands', () => {
    const numRuns = process.env.PLATEWRIGHT_LONG ? 100_000 : 300;
    const text = fc.string({ unit: 'binary', maxLength: 60 });
    const line = fc.oneof(
      fc.uint8Array({ maxLength: 60 }).map(bytes => Buffer.from(bytes.filter(byte => byte !== 0x0a))),
      fc
        .record({ id: fc.integer(), statement: text, panel: fc.dictionary(text, fc.jsonValue()) })
        .map(value => Buffer.from(JSON.stringify(value))),
      fc.json().map(json => Buffer.from(json)),
    );
    const lines = fc.sample(line, numRuns);
    const input = Buffer.concat(lines.flatMap(bytes => [bytes, Buffer.from('\n')]));
    for (const command of ['statement', 'label']) expect(answers(command, input)).toHaveLength(lines.length);
  });
});

describe('platewright yardsticks', () => {
  it('[CLI-23] every test of every yardstick is listed with its source', () => {
    const listed: { id: string; tests: { source: { text: string } }[] }[] = JSON.parse(run(['yardsticks', '--format', 'json']).stdout);
    const { status, stdout } = run(['yardsticks']);
    expect(status).toBe(0);
    expect(listed.length).toBeGreaterThan(0);
    for (const { id, tests } of listed) {
      expect(stdout).toContain(`${id}\n`);
      for (const { source } of tests) expect(stdout.replace(/\s+/g, ' ')).toContain(source.text.replace(/\s+/g, ' '));
    }
  });
});

describe('setup', () => {
  it('[CLI-24] the packages are in place: setup says and does nothing', () => {
    expect(existsSync(join(root, 'node_modules'))).toBe(true);
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(root, 'bin/setup.mjs')], { encoding: 'utf8', cwd: place });
    expect([status, stdout, stderr]).toEqual([0, '', '']);
  });
});
