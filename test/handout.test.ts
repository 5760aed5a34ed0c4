import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { HtmlValidate } from 'html-validate';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { proposePrescription } from '#core/client/prescription/proposePrescription.ts';
import { demoClients } from '../src/app/clients/demoClients.ts';
import type { SignedTarget } from '../src/core/handout/handout.ts';
import { handoutFromJson } from '../src/core/handout/handoutFromJson.ts';
import { program } from './program.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const demoFolder = join(root, 'data/demo/handouts');
const labels = join(root, 'data/demo/labels.csv');
const place = mkdtempSync(join(tmpdir(), 'platewright-handout-'));
afterAll(() => rmSync(place, { recursive: true, force: true }));

const demo = readdirSync(demoFolder).filter(name => name.endsWith('.json'));
const drafts = demo.map(name => handoutFromJson(JSON.parse(readFileSync(join(demoFolder, name), 'utf8'))));

function build(out: string, files: readonly string[], ...more: readonly string[]) {
  const plates = join(root, 'data/demo/plates');
  const args = ['handout', 'build', ...files, '--labels', labels, '--plates', plates, '--today', '2026-11-15', '--out', out, ...more];
  const { status, stdout, stderr } = spawnSync(process.execPath, [program, ...args], {
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { status, stdout, stderr };
}

function files(folder: string): Record<string, string> {
  return Object.fromEntries(readdirSync(folder).map(name => [name, readFileSync(join(folder, name), 'utf8')]));
}

function handoutWith(name: string, more: Readonly<Record<string, unknown>>): string {
  const path = join(place, name);
  const json = JSON.parse(readFileSync(join(demoFolder, 'hemodialysis-no-phosphate.json'), 'utf8')) as object;
  writeFileSync(path, JSON.stringify({ ...json, ...more }));
  return path;
}

describe('platewright handout build', () => {
  const site = join(place, 'demo');
  let said: ReturnType<typeof build>;
  beforeAll(() => {
    said = build(
      site,
      demo.sort().map(name => join(demoFolder, name)),
    );
  });

  it('[HND-20] builds the demo into a folder that opens from disk, by hand and by script the same bytes', () => {
    expect(said.status).toBe(0);
    const other = join(place, 'by-script');
    const script = spawnSync(process.execPath, [join(root, 'data/demo/buildHandouts.ts'), other], { encoding: 'utf8', timeout: 60_000 });
    expect(script.status).toBe(0);
    expect(files(other)).toEqual(files(site));
    for (const { value } of drafts)
      for (const end of ['html', 'large-print.html', 'grade.json']) expect(Object.keys(files(site))).toContain(`${value!.id}.${end}`);
    expect(Object.values(files(site)).join('')).not.toMatch(/(?:href|src)="(?:\/|https?:)/);
  });

  it('[HND-15] every page is valid HTML', async () => {
    const validator = new HtmlValidate({ extends: ['html-validate:standard', 'html-validate:a11y'] });
    for (const [path, html] of Object.entries(files(site)).filter(([name]) => name.endsWith('.html'))) {
      const { results } = await validator.validateString(html);
      expect({ path, messages: results.flatMap(({ messages }) => messages.map(({ message }) => message)) }).toEqual({ path, messages: [] });
    }
  });

  it('[HND-12] the demo has every setting, and each English handout reads at grade 6 or lower, the author’s text with it', () => {
    const settings = new Set(drafts.map(({ value }) => value!.setting));
    expect([...settings].sort()).toEqual(['ckd-not-on-dialysis', 'hemodialysis', 'peritoneal-dialysis', 'transplant']);
    expect(drafts.filter(({ value }) => value!.language === 'es').length).toBeGreaterThan(0);
    for (const { value } of drafts) {
      const grade = JSON.parse(files(site)[`${value!.id}.grade.json`]!);
      if (value!.language === 'es') expect(grade).toEqual({ language: 'es', notGraded: expect.stringContaining('English') });
      else for (const who of ['all', 'program', 'author']) expect(grade[who].withoutFoodNames).toBeLessThanOrEqual(6);
      expect(said.stderr).toContain(value!.language === 'es' ? `${value!.id}: not graded` : `${value!.id}: grade `);
    }
  });

  it('[HND-3] the targets of the demo are those that the demo’s clients are proposed, a position that stands beside, or one figure of the fluid', () => {
    const clients = demoClients('2026-11-15');
    for (const { value } of drafts) {
      if (value?.prescription === undefined) continue;
      const proposals = clients
        .map(({ assessments }) => assessments[0]!.assessment)
        .filter(({ treatment, diabetes }) => treatment.setting === value.setting && !diabetes)
        .map(assessment => proposePrescription(assessment, '2026-11-15'));
      const [proposal] = proposals;
      if (proposal?.kind !== 'proposal') throw new Error(value.id);
      for (const target of value.prescription.targets)
        expect({ id: value.id, ...target }).toSatisfy(() => isOffered(target, proposal.targets[target.item]));
      expect(value.prescription.targets).toHaveLength(10);
    }
  });

  it('[HND-13] a category without labels and an unknown food are reported, and the page is built', () => {
    const categories = [{ category: 'hats', plateId: 'on-its-own', meal: 'lunch', foodAisles: { gone: 'Deli' } }];
    const { status, stderr } = build(join(place, 'hats'), [handoutWith('hats.json', { categories })]);
    expect({ status, stderr }).toMatchObject({
      status: 0,
      stderr: expect.stringMatching(/categories\[0\]\.foodAisles\.gone[\s\S]*found "hats"/),
    });
    expect(files(join(place, 'hats'))['hemodialysis-no-phosphate.html']).toContain('We have not checked any food of this kind yet.');
  });

  it('[HND-12] the author’s hard sentences are pointed out, and cannot steer the terminal', () => {
    const notes = ['Individualized interpretation necessitates multidisciplinary deliberation\u001B[31m.'];
    const { stderr } = build(join(place, 'hard'), [handoutWith('hard.json', { notes })]);
    expect(stderr).toMatch(/grade [\d.]+: “Individualized interpretation.*” \(long words: individualized/);
    expect(stderr).not.toContain('\u001B');
  });

  it.each([
    ['no JSON', () => labels, 'The handout cannot be made'],
    ['an id that is a path', () => handoutWith('path.json', { id: '../../x' }), 'The handout cannot be made'],
    [
      'a plate outside',
      () =>
        handoutWith('plate.json', {
          categories: [{ category: 'sandwich slices', plateId: '../plates/slices-on-low-sodium-bread', meal: 'lunch' }],
        }),
      'Plate not found',
    ],
    [
      'a topic that bounds potassium',
      () =>
        handoutWith('topic.json', {
          prescription: undefined,
          topic: { yardstickId: 'for-hemodialysis', switchedOn: ['potassium-at-most'] },
          meals: [],
          categories: [{ category: 'sandwich slices', plateId: 'on-its-own' }],
        }),
      'The handout cannot be made',
    ],
    ['a setting that is refused', () => handoutWith('setting.json', { setting: 'pregnancy' }), 'The handout cannot be made'],
  ])('[HND-20] %s is told in words and the last build stays', (_, file, title) => {
    const out = join(place, 'kept');
    build(out, [handoutWith('good.json', {})]);
    const before = files(out);
    const { status, stderr } = build(out, [file()]);
    expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(new RegExp(`${title}[\\s\\S]*Next: `)) });
    expect(files(out)).toEqual(before);
  });

  it('[HND-20] two handouts of one id, a link in place of the folder, no browser for the PDF: refused', () => {
    const good = handoutWith('good.json', {});
    expect(build(join(place, 'twins'), [good, good]).stderr).toContain('Two handouts have the id');
    symlinkSync(root, join(place, 'link'));
    expect(build(join(place, 'link'), [good])).toMatchObject({ status: 1, stderr: expect.stringMatching(/is a link[\s\S]*Next: /) });
    const args = [program, 'handout', 'build', good, '--labels', labels, '--out', join(place, 'nopdf'), '--pdf'];
    const env = { ...process.env, PLATEWRIGHT_BROWSER: '/nowhere/browser' };
    const { status, stderr } = spawnSync(process.execPath, args, { cwd: root, encoding: 'utf8', env });
    expect({ status, stderr }).toMatchObject({ status: 1, stderr: expect.stringMatching(/No browser to make the PDF with/) });
    expect(readdirSync(place)).not.toContain('nopdf');
  });
});

/** Whether a proposal, or a position that it shows beside, says the same; without a range also where it holds back or names no figure. */
function isOffered(target: SignedTarget, proposed: ReturnType<typeof proposalTargets>[SignedTarget['item']]): boolean {
  const positions = [...(proposed.kind === 'proposed' ? [proposed] : []), ...proposed.alternatives];
  if (target.range === undefined) return proposed.kind !== 'proposed' || positions.some(({ range }) => range === undefined);
  // Fluid is signed as one figure within what is proposed.
  if (target.item === 'fluid')
    return positions.some(({ range }) => range !== undefined && range.lo <= target.range!.hi && target.range!.hi <= range.hi);
  const close = (a: number, b: number): boolean => a === b || Math.abs(a - b) < 1e-6 * Math.max(1, Math.abs(b));
  return positions.some(({ range }) => range !== undefined && close(range.lo, target.range!.lo) && close(range.hi, target.range!.hi));
}

function proposalTargets() {
  const proposal = proposePrescription(demoClients('2026-11-15')[0]!.assessments[0]!.assessment, '2026-11-15');
  if (proposal.kind !== 'proposal') throw new Error('barred');
  return proposal.targets;
}
