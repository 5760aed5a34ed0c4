import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('..', import.meta.url));

/** The rules that a page writes: bold at the head of a sentence, "**ABC-1** …", or the first cell of a table's row. */
function rulesOn(page: string): string[] {
  return [...page.matchAll(/\*\*\[?([A-Z]{3,4}-\d+)\]?\*\*|^\|\s*([A-Z]{3,4}-\d+)\s*\|/gm)].map(([, bold, cell]) => bold ?? cell!);
}

/** The rules that test titles quote: one or several numbers in square brackets at the head of a text. */
function rulesQuotedIn(tests: string): string[] {
  const heads = tests.matchAll(/['"`]((?:\[[A-Z]{3,4}-\d+\]\s*)+)/g);
  return [...heads].flatMap(([, head]) => [...head!.matchAll(/[A-Z]{3,4}-\d+/g)].map(([rule]) => rule));
}

/** What does not match: quoted and written nowhere, written and quoted nowhere, written twice. */
function mismatches(pages: readonly string[], tests: readonly string[]) {
  const written = pages.flatMap(rulesOn);
  const quoted = new Set(tests.flatMap(rulesQuotedIn));
  return {
    notWritten: [...quoted].filter(rule => !written.includes(rule)).sort(),
    notQuoted: [...new Set(written)].filter(rule => !quoted.has(rule)).sort(),
    writtenTwice: [...new Set(written.filter((rule, at) => written.indexOf(rule) !== at))].sort(),
  };
}

/** Files of a folder, at any depth, whose name ends so. */
function textsIn(folder: string, ending: RegExp): string[] {
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .filter(name => ending.test(name))
    .map(name => readFileSync(join(root, folder, name), 'utf8'));
}

describe('rules and tests', () => {
  test('each rule that a test quotes is written once in docs/rules, and each rule written there is quoted by a test', () => {
    // A contract is a suite that several test files run.
    const tests = ['src', 'test'].flatMap(folder => textsIn(folder, /\.test\.tsx?$|Contract\.ts$/));
    expect(mismatches(textsIn('docs/rules', /\.md$/), tests)).toEqual({ notWritten: [], notQuoted: [], writtenTwice: [] });
  });

  test('a missing, a surplus and a doubled rule are found, in lists and in tables', () => {
    const title = (number: number): string => `test('[XMP-${number}] holds', () => {});`;
    const pages = ['- **XMP-1** One. **XMP-2** Two.\n- **[XMP-3]** Three.\n', '| rule | says |\n| ---- | ---- |\n| XMP-4 | Four. |\n'];
    const tests = [1, 2, 3, 4].map(title);
    const none = { notWritten: [], notQuoted: [], writtenTwice: [] };
    expect(mismatches(pages, tests)).toEqual(none);
    expect(mismatches(pages, [...tests, title(5)])).toEqual({ ...none, notWritten: ['XMP-5'] });
    expect(mismatches(pages, tests.slice(0, 3))).toEqual({ ...none, notQuoted: ['XMP-4'] });
    expect(mismatches([...pages, '- **XMP-2** Again.'], tests)).toEqual({ ...none, writtenTwice: ['XMP-2'] });
    expect(mismatches(pages.slice(1), tests).notWritten).toEqual(['XMP-1', 'XMP-2', 'XMP-3']);
  });
});
