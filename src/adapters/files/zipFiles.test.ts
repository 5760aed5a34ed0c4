import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { zipFiles } from './zipFiles.ts';

test('[GDE-24] the same files give the same ZIP file, and it holds them', () => {
  const files = new Map<string, string | Uint8Array>([
    ['index.html', '<p>Grüße</p>'],
    ['guides/a.pdf', new Uint8Array([37, 80, 68, 70])],
  ]);
  const packed = zipFiles(files);
  expect(Buffer.from(zipFiles(files)).equals(packed)).toBe(true);
  const unpacked = unzipSync(packed);
  expect(Object.keys(unpacked)).toEqual([...files.keys()]);
  expect(strFromU8(unpacked['index.html']!)).toBe('<p>Grüße</p>');
  expect([...unpacked['guides/a.pdf']!]).toEqual([37, 80, 68, 70]);
});
