import { globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));
const textOf = (file: string): string => readFileSync(`${root}${file}`, 'utf8');
const sources = globSync('{src,data,bench,docs,bin}/**/*.{ts,tsx,mjs}', { cwd: root }).filter(file => !/\.test\.tsx?$/.test(file));

/** Tables of facts and words: they are read by line, not by eye, and each line is alone. */
const data = [
  'src/core/client/labs/analytes.ts',
  'src/core/faultCatalogue.ts',
  'src/core/handout/words/es.ts',
  'src/core/quantity/nutrients.ts',
];

interface Exported {
  readonly file: string;
  readonly name: string;
}
const exported: readonly Exported[] = sources
  .filter(file => file.startsWith('src/'))
  .flatMap(file =>
    [...textOf(file).matchAll(/^export (?:declare )?(?:abstract )?(?:async )?(?:interface|type|class|function\*?|const|enum) (\w+)/gm)].map(
      ([, name]) => ({ file, name: name! }),
    ),
  );

describe('the house', () => {
  it('[WALL-6] no source file but a table of facts is longer than 250 lines', () => {
    const long = sources.map(file => [file, textOf(file).split('\n').length - 1] as const).filter(([, lines]) => lines > 250);
    expect(long.map(([file]) => file).sort()).toEqual(data);
  });

  const glossary = textOf('docs/glossary.md');
  const rows = [...glossary.matchAll(/^\| ([^|]+) \|(.+)\|$/gm)].map(([, word, rest]) => ({ word: word!.trim(), cells: rest! }));
  const named = rows.flatMap(({ word, cells }) =>
    [...cells.matchAll(/((?:`\w+`(?:, )?)+) in `([^`]+)`/g)].flatMap(([, names, file]) =>
      [...names!.matchAll(/`(\w+)`/g)].map(([, name]) => ({ word, name: name!, file: file! })),
    ),
  );

  it('[WALL-7] the glossary has its words', () => {
    expect(named.length).toBeGreaterThan(25);
  });

  it.each(named)('[WALL-7] $word: $name is exported in $file', ({ name, file }) => {
    expect(exported).toContainEqual({ file, name });
  });

  it('[WALL-7] nothing is told by a word that the glossary turns down', () => {
    const down = /(?:^|[a-z])(?:Bar|Notice|Warning|Complaint|Hint|Alert|Disclaimer|Exception|Failure|Advice)s?$/;
    const lower = /^(?:bar|notice|warning|complaint|hint|alert|disclaimer)(?:s|Of|Text|Words)?$/;
    // A bar that is drawn is a picture, and a bar code a number.
    const pictures = ['MarginBar', 'RangeBar', 'CountBar'];
    const wrong = exported.filter(({ name }) => (down.test(name) || lower.test(name)) && !pictures.includes(name));
    expect(wrong).toEqual([]);
  });

  it('[WALL-7] what ends like a word of the glossary is one: a fault is a Fault, an issue an Issue, a finding a Finding, a caution a Caution', () => {
    const told = exported
      .filter(({ name }) => /(?:Issue|Finding|Caution|Fault)$/.test(name) && /^[A-Z]/.test(name))
      .map(({ name }) => name);
    expect([...new Set(told)].sort()).toEqual([
      'AdditiveFinding',
      'AssessmentIssue',
      'Caution',
      'Fault',
      'Finding',
      'Issue',
      'LabIssue',
      'LabelIssue',
      'UrgentCaution',
    ]);
  });

  it('a test that may be skipped ends with the reason, which the last lines of a run then show', () => {
    const conditions = globSync('{src,test}/**/*.ts', { cwd: root }).flatMap(file =>
      textOf(file)
        .split(/\.(?:skip|runIf|skipIf)\(/)
        .slice(1),
    );
    const titles = conditions.map(rest => /\)\(\s*(['"`])(.*?)\1,/su.exec(rest)?.[2] ?? rest.slice(0, 80));
    expect(titles.length).toBeGreaterThan(20);
    expect(titles.filter(title => !/ \(skipped .+\)$/u.test(title))).toEqual([]);
  });
});
