import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';

const ranges = {
  latin: 'U+0000-00FF,U+0131,U+0152-0153,U+02BB-02BC,U+02C6,U+02DA,U+02DC,U+2000-206F,U+20AC,U+2122,U+2191,U+2193,U+2212,U+2215,U+FFFD',
  'latin-ext': 'U+0100-02BA,U+02BD-02C5,U+02C7-02CC,U+02CE-02D7,U+02DD-02FF,U+1E00-1E9F,U+1EF2-1EFF,U+20A0-20AB,U+20AD-20C0',
} as const;

/**
 * The typeface that pages for readers ask for, as a style with the font inside it. Pages themselves do not carry it (45 kB each, of
 * 300): on paper it is always there, on a screen where it is installed. Its ranges are those of the font's own style sheet.
 */
export async function readingFontStyle(): Promise<string> {
  const folder = join(
    dirname(createRequire(import.meta.url).resolve('@fontsource-variable/atkinson-hyperlegible-next/package.json')),
    'files',
  );
  const faces = await Promise.all(
    Object.entries(ranges).map(async ([script, range]) => {
      const font = await readFile(join(folder, `atkinson-hyperlegible-next-${script}-wght-normal.woff2`));
      return `@font-face{font-family:"Atkinson Hyperlegible Next";font-weight:200 800;unicode-range:${range};src:url(data:font/woff2;base64,${font.toString('base64')})}`;
    }),
  );
  return `<style>${faces.join('')}</style>`;
}
