import { existsSync, globSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { asvsLevel1 } from './asvsLevel1.ts';

const root = fileURLToPath(new URL('..', import.meta.url));
const page = readFileSync(`${root}docs/security.md`, 'utf8');
const titles = globSync(['{src,test}/**/*.test.ts', 'src/**/*Contract.ts'], { cwd: root }).map(file =>
  readFileSync(`${root}${file}`, 'utf8'),
);
const quoted = new Set(
  titles.flatMap(text =>
    [...text.matchAll(/['"`]((?:\[[A-Z]{3,4}-\d+\]\s*)+)/g)].flatMap(([, head]) => head!.match(/[A-Z]{3,4}-\d+/g) ?? []),
  ),
);
const states = ['met', 'partly', 'not met', 'not verified', 'does not apply'];

/** The rows of the tables of requirements: number or word, state, and what the last column names. */
function rowsOf(text: string) {
  return [...text.matchAll(/^\| (V[\d.]+|SHALL|SHALL NOT|SHOULD) \|.*\|$/gm)].map(([line]) => {
    const [number = '', , state = '', , test = ''] = line.slice(2, -2).split(' | ');
    const named = test.split(', ').filter(name => name !== 'none');
    return { number, state, test, named };
  });
}

/** Level 1 has a table of its own: its part of the page. */
const level1 = page.split('## OWASP ASVS 5.0.0, level 1')[1]!.split('\n## ')[0]!;
const notThere = (named: readonly string[]) =>
  named.filter(name => !quoted.has(name) && !(name.endsWith('.test.ts') && existsSync(`${root}${name}`)));

describe('docs/security.md', () => {
  it('[SUP-9] names each requirement of level 1 once, in the order of the standard', () => {
    // ASVS 5.0.0 has 70 requirements of level 1 (see asvsLevel1.ts).
    expect(asvsLevel1).toHaveLength(70);
    expect(rowsOf(level1).map(({ number }) => number)).toEqual(asvsLevel1);
  });

  it('[SUP-9] names no requirement twice on the whole page', () => {
    const numbers = rowsOf(page).flatMap(({ number }) => (number.startsWith('V') ? [number] : []));
    expect(numbers.filter((number, at) => numbers.indexOf(number) !== at)).toEqual([]);
  });

  it('[SUP-9] every row has one of the states and a last column, and every test it names exists', () => {
    const rows = rowsOf(page);
    expect(rows.length).toBeGreaterThan(130);
    expect(rows.filter(({ state, test }) => !states.includes(state) || test === '')).toEqual([]);
    expect(rows.filter(({ named }) => notThere(named).length > 0)).toEqual([]);
  });

  it('[SUP-9] a rule that no test quotes and a file that is not there are found', () => {
    const [row] = rowsOf('| V1.1.1 | asks | met | how | SRV-1, SRV-99999, test/none.test.ts |\n');
    expect(notThere(row!.named)).toEqual(['SRV-99999', 'test/none.test.ts']);
  });

  it('[SUP-9] what is met names a test or says that there is none; what is not met is never called met', () => {
    expect(rowsOf(page).filter(({ state, named, test }) => state === 'met' && named.length === 0 && test !== 'none')).toEqual([]);
  });
});
