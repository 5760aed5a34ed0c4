import { describe, expect, it } from 'vitest';
import { decodeText } from './decodeText.ts';

const bytes = (...values: number[]) => Uint8Array.from(values);
const utf8 = (text: string) => new TextEncoder().encode(text);

describe('decodeText', () => {
  it('[CSV-1] UTF-8 with and without a mark is read, and the mark is not part of the text', () => {
    expect(decodeText(utf8('crème'))).toEqual({ value: 'crème', issues: [] });
    expect(decodeText(bytes(0xef, 0xbb, 0xbf, 0x61))).toEqual({ value: 'a', issues: [] });
  });

  it('[CSV-1] UTF-16 is read by its mark, either way round', () => {
    expect(decodeText(bytes(0xff, 0xfe, 0x61, 0x00, 0xe9, 0x00))).toEqual({ value: 'aé', issues: [] });
    expect(decodeText(bytes(0xfe, 0xff, 0x00, 0x61, 0x00, 0xe9))).toEqual({ value: 'aé', issues: [] });
  });

  // Code table: Windows code page 1252 as registered with IANA; 0x80 is the euro sign, 0x92 an apostrophe, 0xE9 é.
  it('[CSV-2] bytes that are not UTF-8 are Windows-1252, and that is reported', () => {
    const { value, issues } = decodeText(bytes(0x80, 0x92, 0xe9));
    expect(value).toBe('€’é');
    expect(issues.map(({ code }) => code)).toEqual(['encoding-not-utf8']);
  });

  it('[CSV-3] a few broken bytes do not turn a UTF-8 file into another encoding', () => {
    const { value, issues } = decodeText(Uint8Array.from([...utf8('crème brûlée, jalapeño'), 0xff]));
    expect(value).toBe('crème brûlée, jalapeño\uFFFD');
    expect(issues.map(({ code, found }) => [code, found])).toEqual([['encoding-damaged', '1 broken characters, shown as \uFFFD']]);
  });
});
