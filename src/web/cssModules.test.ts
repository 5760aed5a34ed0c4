import { globSync, readFileSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const root = import.meta.dirname;
const sheets = globSync('**/*.module.css', { cwd: root }).map(file => join(root, file));
const sources = globSync('**/*.{ts,tsx}', { cwd: root, exclude: ['**/*.test.ts'] }).map(file => join(root, file));
const allSheets = globSync('**/*.css', { cwd: root })
  .filter(file => file !== 'tokens.css')
  .map(file => join(root, file));

/** The classes that a sheet gives a look, those that it takes from another sheet included. */
const classesOf = (sheet: string): ReadonlySet<string> =>
  new Set(
    [
      ...readFileSync(sheet, 'utf8')
        .replaceAll(/\/\*[\s\S]*?\*\/|"[^"]*"/g, '')
        .matchAll(/\.([a-zA-Z][\w-]*)(?=[^{}]*\{)/g),
    ].map(([, name]) => name!),
  );

interface Use {
  readonly file: string;
  readonly sheet: string;
  readonly name: string;
}
/** `styles.name`; what is looked up by a key that is only known when it runs, `styles[key]`, counts for every class of the sheet. */
const anyName = '*';
const uses: readonly Use[] = sources.flatMap(file => {
  const text = readFileSync(file, 'utf8');
  return [...text.matchAll(/^import (\w+) from '([^']+\.module\.css)';$/gm)].flatMap(([, local, path]) => {
    const sheet = resolve(dirname(file), path!);
    const named = [...text.matchAll(new RegExp(`(?<![\\w.'])${local}\\.(?!module\\b)(\\w+)`, 'g'))].map(([, name]) => ({
      file,
      sheet,
      name: name!,
    }));
    return text.includes(`${local}[`) ? [...named, { file, sheet, name: anyName }] : named;
  });
});

describe('the look of the screens', () => {
  it('[WEB-1] every class that is used has a look', () => {
    const known = new Map(sheets.map(sheet => [sheet, classesOf(sheet)]));
    expect(uses.length).toBeGreaterThan(300);
    expect(uses.filter(({ sheet, name }) => name !== anyName && !known.get(sheet)?.has(name))).toEqual([]);
  });

  it('[WEB-1] every class that has a look is used', () => {
    const unused = sheets.flatMap(sheet => {
      const own = uses.filter(use => use.sheet === sheet).map(({ name }) => name);
      return own.includes(anyName) ? [] : [...classesOf(sheet)].filter(name => !own.includes(name)).map(name => `${sheet}: ${name}`);
    });
    expect(unused).toEqual([]);
  });

  it('[WEB-1] no class is global: names are given by sheets, and tokens stand in one file', () => {
    const written = sources.filter(file =>
      /className\s*=\s*(?:["']|\{\s*["'])|className\s*=\s*\{\s*`(?!\$\{)|classList\./.test(readFileSync(file, 'utf8')),
    );
    expect(written).toEqual([]);
    const color =
      /#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|hwb|lab|lch|oklab|oklch)a?\(|:[^;{]*\b(?:white|black|red|green|blue|gray|grey|yellow|orange)\b[^;{]*;/i;
    const colors = allSheets.filter(sheet => color.test(readFileSync(sheet, 'utf8').replaceAll(/url\([^)]*\)|\/\*[\s\S]*?\*\//g, '')));
    expect(colors).toEqual([]);
  });
});
