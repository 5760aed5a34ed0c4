import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { largestPhoto, photoType } from './photoType.ts';
import { pictures } from './pictures.fixture.ts';

const numRuns = process.env.PLATEWRIGHT_LONG ? 100_000 : 2_000;
const text = (given: string) => new TextEncoder().encode(given);

describe('what a picture is by its bytes', () => {
  test.each(Object.entries(pictures))('[PHO-1] %s, also with bytes behind it', (name, bytes) => {
    const type = `image/${name.match(/png|jpeg|webp/)?.[0]}`;
    expect([photoType(bytes), photoType(Uint8Array.from([...bytes, 0, 0]))]).toEqual([type, type]);
  });

  test.each(Object.entries(pictures))('[PHO-1] %s, cut before its last bytes, is none', (_, bytes) => {
    for (let length = 0; length < bytes.length - 2; length += 1) expect(photoType(bytes.subarray(0, length))).toBeUndefined();
  });

  test.each([
    ['nothing', new Uint8Array()],
    ['a page', text('<!doctype html><script>alert(1)</script>')],
    ['a drawing that may run script', text('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')],
    ['a page behind the first bytes of a PNG', Uint8Array.from([...pictures.png.subarray(0, 8), ...text('<script>alert(1)</script>')])],
    ['a page behind the first bytes of a JPEG', Uint8Array.from([0xff, 0xd8, 0xff, ...text('<script>alert(1)</script>\xff\xd9')])],
    ['a page in a RIFF', text('RIFF\x24\0\0\0WEBP<script>alert(1)</script>....')],
    ['GIF (GIF89a, section 17)', text('GIF89a\x01\0\x01\0\0\0\0;')],
    ['PDF', text('%PDF-1.7\n%%EOF')],
    ['ZIP', Uint8Array.of(0x50, 0x4b, 3, 4, 20, 0)],
  ])('[PHO-2] %s is none', (_, bytes) => {
    expect(photoType(bytes)).toBeUndefined();
  });

  test('[PHO-2] sides beyond 20,000 pixels, or none, are none: a few bytes must not ask for gigabytes', () => {
    for (const side of [16, 20]) {
      for (const pixels of [0, 20_001, 2 ** 31]) {
        const png = pictures.png.slice();
        new DataView(png.buffer).setUint32(side, pixels);
        expect([side, pixels, photoType(png)]).toEqual([side, pixels, undefined]);
      }
    }
  });

  test('[PHO-2] more than 10 MB are none', () => {
    const large = new Uint8Array(largestPhoto + 1);
    large.set(pictures.png);
    expect(photoType(large)).toBeUndefined();
    expect(photoType(large.subarray(0, largestPhoto))).toBe('image/png');
  });

  test('[PHO-3] whatever the bytes: one of the kinds, or none, and never a throw', () => {
    const begun = fc.tuple(fc.constantFrom(...Object.values(pictures)), fc.array(fc.tuple(fc.nat(600), fc.nat(255)), { maxLength: 6 }));
    const spoiled = begun.map(([bytes, changes]) => {
      const copy = bytes.slice();
      for (const [at, value] of changes) if (at < copy.length) copy[at] = value;
      return copy;
    });
    fc.assert(
      fc.property(fc.oneof(spoiled, fc.uint8Array({ maxLength: 300 })), bytes => {
        expect([undefined, 'image/jpeg', 'image/png', 'image/webp']).toContain(photoType(bytes));
      }),
      { numRuns },
    );
  });
});
