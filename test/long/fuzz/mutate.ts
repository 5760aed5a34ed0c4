import type { Chance } from './chance.ts';

/** Texts that programs trip over: prototypes, NUL, lone surrogates, marks of direction, SQL, paths, markup, endless runs. */
export const oddTexts: readonly string[] = [
  '',
  ' ',
  '\0',
  'a\0b',
  '\ud800',
  '\udc00x',
  '\uFEFF',
  '\u202e\u0000',
  'é'.normalize('NFD'),
  '🥕'.repeat(40),
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  "x'; drop table foods; --",
  '" onload="alert(1)',
  '<script>alert(1)</script>',
  '../../../etc/passwd',
  '/',
  '%00',
  '%E0%A4%A',
  // biome-ignore lint/suspicious/noTemplateCurlyInString: a text as it stands
  '${7*7}',
  '=1+1',
  '\r\nset-cookie: a=b',
  'NaN',
  'Infinity',
  '-0',
  '1e999',
  '99999999999999999999',
  '0x10',
  '٣',
  'null',
  'undefined',
  '2026-02-30',
  '0000-00-00',
  '-000001-01-01',
  '+275760-09-14',
  '2026-06-15T12:00:00Z',
  '00000000-0000-4000-8000-000000000000',
  '((((((((((',
  '[[[[[[[[[[',
  ',,,,;;;;::::',
  'a'.repeat(5_000),
  '('.repeat(3_000),
  '\n'.repeat(500),
];
export const oddNumbers: readonly number[] = [
  0,
  -0,
  1,
  -1,
  0.1,
  1e-300,
  5e-324,
  1e21,
  1e300,
  1.7976931348623157e308,
  2 ** 31,
  2 ** 31 - 1,
  -(2 ** 31),
  2 ** 53,
  2 ** 53 - 1,
  -(2 ** 53),
  1e16,
  99_999,
  12_345.678_9,
];

/** A text changed in a few places. */
export function mutateText(chance: Chance, text: string, other: string = text): string {
  let now = text;
  for (let times = 1 + chance.below(3); times > 0; times -= 1) {
    const at = chance.below(now.length + 1);
    const end = Math.min(now.length, at + chance.below(chance.oneIn(3) ? 200 : 6));
    switch (chance.below(8)) {
      case 0:
        now = now.slice(0, at) + now.slice(end);
        break;
      case 1:
        now = now.slice(0, at) + chance.of(oddTexts) + now.slice(end);
        break;
      case 2:
        now = now.slice(0, at) + String.fromCharCode(chance.below(chance.oneIn(2) ? 128 : 65_536)) + now.slice(at + 1);
        break;
      case 3:
        now = now.slice(0, end) + now.slice(at, end).repeat(1 + chance.below(20)) + now.slice(end);
        break;
      case 4: {
        const from = chance.below(other.length + 1);
        now = now.slice(0, at) + other.slice(from, from + chance.below(80)) + now.slice(end);
        break;
      }
      case 5:
        now = now.slice(0, at);
        break;
      case 6:
        now =
          now.slice(0, at) +
          chance.of([',', '"', "'", '(', ')', '[', ']', '{', '}', ';', ':', '.', '\n', '\r', '\t', '%', '*']) +
          now.slice(at);
        break;
      default:
        now = now.slice(0, at) + String(chance.of(oddNumbers)) + now.slice(end);
    }
  }
  return now.slice(0, 200_000);
}

/** Bytes changed in a few places. */
export function mutateBytes(chance: Chance, bytes: Uint8Array): Uint8Array<ArrayBuffer> {
  const now = Buffer.from(bytes);
  const odd = [0, 1, 0x7f, 0x80, 0xff, 0x22, 0x0a, 0x2c, 0x50];
  for (let times = 1 + chance.below(8); times > 0 && now.length > 0; times -= 1) {
    const at = chance.below(now.length);
    switch (chance.below(5)) {
      case 0:
        now[at]! ^= 1 << chance.below(8);
        break;
      case 1:
        now[at] = chance.of(odd);
        break;
      case 2:
        if (at + 4 <= now.length) now.writeUInt32LE(chance.of([0, 1, 0xffffffff, 0x7fffffff, 0x80000000, now.length]), at);
        break;
      case 3:
        now.copy(now, at, chance.below(now.length), now.length);
        break;
      default:
        now.fill(chance.of(odd), at, Math.min(now.length, at + chance.below(40)));
    }
  }
  const cut = chance.below(6);
  if (cut === 0) return new Uint8Array(now.subarray(0, chance.below(now.length + 1)));
  if (cut === 1) {
    const at = chance.below(now.length + 1);
    return new Uint8Array(
      Buffer.concat([now.subarray(0, at), now.subarray(chance.below(now.length + 1)).subarray(0, 4_096), now.subarray(at)]),
    );
  }
  return new Uint8Array(now);
}
