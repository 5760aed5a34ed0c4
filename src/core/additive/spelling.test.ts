import { describe, expect, test } from 'vitest';
import { found } from './foundIn.fixture.ts';
import { repairWord } from './spelling.ts';

const mended = (word: string): string | undefined => repairWord(word)?.words.join(' ');

describe('mending a word', () => {
  test.each([
    ['dropped', 'phosphat', 'phosphate'],
    ['dropped in front', 'hosphate', 'phosphate'],
    ['added', 'carbonatee', 'carbonate'],
    ['changed', 'phosphote', 'phosphate'],
    ['swapped', 'soduim', 'sodium'],
    ['swapped at the end', 'phosphaet', 'phosphate'],
    ['swapped in front', 'oshpphate', undefined],
    ['a digit behind', 'phosphates1', 'phosphates'],
    ['a digit behind a short word', 'sodium2', 'sodium'],
    ['by ear', 'fosfate', 'phosphate'],
    ['by ear in the middle', 'pyrophosfate', 'pyrophosphate'],
    ['by ear, the other way', 'fosphate', 'phosphate'],
    ['apart', 'chlordie', 'chloride'],
    ['a number word whose count is open goes by its first letter', 'tisodium', 'trisodium'],
    ['the same for two', 'dsodium', 'disodium'],
    ['swapped, the first two', 'osdium', 'sodium'],
    ['swapped, the last two', 'sodimu', 'sodium'],
    ['moved to the end', 'sdiumo', undefined],
    ['twice', 'ssodium', 'sodium'],
    ['changed in front', 'xodium', 'sodium'],
    ['changed at the end', 'sodiux', 'sodium'],
  ])('[ADD-8] a letter %s: %s', (_, word, expected) => {
    expect(mended(word)).toBe(expected);
  });
  test.each([
    ['eleven letters', 'tripolyphos', undefined],
    ['twelve letters, two of them wrong', 'tripolyphospat', 'tripolyphosphate'],
    ['thirteen letters', 'orthophosphe', 'orthophosphate'],
    ['three wrong', 'tripolyphosfat', undefined],
    ['of a word of eleven letters', 'bicarbonnatte', 'bicarbonate'],
    ['of a word of ten letters', 'propionnatte', undefined],
    ['eleven letters, two missing', 'metabisulfi', undefined],
    ['eleven letters, two wrong', 'pyrophosfat', undefined],
    ['two wrong in a short word', 'phophte', undefined],
  ])('[ADD-8] two letters only from twelve letters on: %s', (_, word, expected) => {
    expect(mended(word)).toBe(expected);
  });
  test.each([
    ['sodiumphosphate', 'sodium phosphate'],
    ['calciumphosphates', 'calcium phosphates'],
    ['soylecithin', 'soy lecithin'],
    // "Salt" is too short to be told from the end of another word.
    ['sodiumsalt', undefined],
  ])('[ADD-9] glued together: %s', (word, expected) => {
    expect(mended(word)).toBe(expected);
  });
  test('[ADD-8] a plural of a known word, a short word and an endless one stay as they are', () => {
    for (const word of ['citrates', 'sodiums', 'salts', 'sodum', 'a'.repeat(41)]) expect(mended(word), word).toBeUndefined();
  });
});

describe('names broken at a line end', () => {
  test.each([
    ['SODIUM METABISUL- FITE', 'S+ sodium-metabisulfite misspelled'],
    ['SODIUM BICAR- BONATE', 'S+ sodium-bicarbonate misspelled'],
    ['SODIUM CHLO- RIDE', 'S+ salt misspelled'],
    ['SODIUM C- ITRATE', 'S+ sodium-citrate misspelled'],
    // Nothing but a hyphen between: no line was broken.
    ['SODIUM BICAR-BONATE', 'S+ sodium-bicarbonate'],
    ['MONO-SODIUM GLUTAMATE', 'S+ monosodium-glutamate'],
    ['MONO- SODIUM GLUTAMATE', 'S+ monosodium-glutamate'],
    ['SODIUM BI CARBONATE', 'S+ sodium-bicarbonate'],
    ['SODIUM BI-CARBONATE', 'S+ sodium-bicarbonate'],
    ['SODIUM-CITRATE', 'S+ sodium-citrate'],
    ['SODIUM - CITRATE', 'S+ sodium-citrate'],
    ['SODIUM* CITRATE', 'S+ sodium-citrate'],
  ])('[ADD-9] %s', (text, expected) => {
    expect(found(text)).toEqual([expected]);
  });
  test('[ADD-9] broken and misspelled at once', () => {
    expect(found('SODIUM PHOSP- HAT', 'phosphate')).toEqual(['P+ sodium-phosphates misspelled']);
  });
  test('[ADD-9] only a hyphen joins two words, and a separator joins none', () => {
    expect(found('SODIUM CIT RATE')).toEqual([]);
    for (const sign of ['.', ';', ':', ' /']) expect(found(`SODIUM${sign} CITRATE`), sign).toEqual([]);
    expect(found('SODIUM, CITRATE')).toEqual(['S+ sodium-citrate']);
  });
});
