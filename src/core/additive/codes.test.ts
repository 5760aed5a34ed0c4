import { describe, expect, test } from 'vitest';
import { found } from './foundIn.fixture.ts';

const phosphates = (text: string): string[] => found(text, 'phosphate');

// Names behind the numbers: Codex CAC/GL 36-1989.
describe('E and INS numbers', () => {
  test.each([
    ['E450', 'P+ diphosphates'],
    ['INS450', 'P+ diphosphates'],
    ['INS 450', 'P+ diphosphates'],
    ['E 451', 'P+ triphosphates'],
    ['E 451(I)', 'P+ sodium-tripolyphosphate'],
    ['E451I', 'P+ sodium-tripolyphosphate'],
    ['E 452', 'P+ polyphosphates'],
    ['E 340', 'P+ potassium-phosphates'],
    ['E450(II)', 'P+ trisodium-diphosphate'],
    // The letter decides; a bracket behind it adds nothing.
    ['E450II (I)', 'P+ trisodium-diphosphate'],
    // A bracket that is no roman number, or is never closed, is none of the code.
    ['E450 (X)', 'P+ diphosphates'],
    ['E450 (II', 'P+ diphosphates'],
    ['VITAMIN E, E 450', 'P+ diphosphates'],
  ])('[ADD-11] %s', (text, expected) => {
    expect(phosphates(text)).toEqual([expected]);
  });
  test.each(['EMULSIFIERS (450 OR 451)', 'EMULSIFIERS (450/451)'])('[ADD-11] bare numbers otherwise parted: %s', text => {
    expect(phosphates(text)).toEqual(['P+ diphosphates', 'P+ triphosphates']);
  });
  test('[ADD-11] a number whose first salt alone is in the table stands for it', () => {
    expect(found('E500')).toEqual(['S+ sodium-carbonate']);
    expect(found('E501')).toEqual(['K+ potassium-carbonate']);
    expect(found('E331')).toEqual(['S+ monosodium-citrate']);
  });
  test.each(['VITAMIN E 450', 'BUTTER (450)', 'EMULSIFIER: 450', '450', 'E 99', 'E'])('[ADD-11] no code: %s', text => {
    expect(found(text)).toEqual([]);
  });
  test('[ADD-11] bare numbers go on over commas and "and" in the bracket of a class word', () => {
    expect(phosphates('EMULSIFIERS (450 AND 451)')).toEqual(['P+ diphosphates', 'P+ triphosphates']);
    expect(phosphates('STABILISERS (1442, 450, 451)')).toEqual([
      'P- hydroxypropyl-distarch-phosphate',
      'P+ diphosphates',
      'P+ triphosphates',
    ]);
    expect(phosphates('EMULSIFIERS (450 AND/OR 452)')).toEqual(['P+ diphosphates alternative', 'P+ polyphosphates alternative']);
    // As Australia and New Zealand print it: a name, then a code.
    expect(phosphates('EMULSIFIERS (SOY LECITHIN, 450)')).toEqual(['P- lecithin', 'P+ diphosphates']);
    expect(phosphates('MINERAL SALTS (SODIUM BICARBONATE (SODA), 450)')).toEqual(['P+ diphosphates']);
    expect(phosphates('ACID (E338, WATER, 450)')).toEqual(['P+ phosphoric-acid', 'P+ diphosphates']);
    for (const none of ['STABILISERS (450 MG)', 'ACIDS (ABOUT 450)', 'EMULSIFIERS (LECITHIN), 450', 'HAM (SALT, 450)'])
      expect([none, phosphates(none)]).toEqual([none, none.includes('LECITHIN') ? ['P- lecithin'] : []]);
  });
  test('[ADD-11] a finding quotes the code with its bracket, and goes on behind it', () => {
    expect(found('E451(I) 338, E338')).toEqual(['P+ sodium-tripolyphosphate', 'S+ sodium-tripolyphosphate', 'P+ phosphoric-acid']);
  });
});

describe('abbreviations', () => {
  test.each([['MCP, SALT'], ['SALT, MCP'], ['MCP, A, B, SALT'], ['SALT, A, B, MCP']])(
    '[ADD-12] another additive at most six words and commas away: %s',
    text => {
      expect(phosphates(text)).toEqual(['P+ monocalcium-phosphate']);
    },
  );
  test.each(['MCP, A B, C, SALT', 'SALT, A B, C, MCP', 'MCP', 'MCP, MCP', 'MCP, WATER'])('[ADD-12] not told alone: %s', text => {
    expect(phosphates(text)).toEqual([]);
  });
  test('[ADD-12] clear ones need no neighbor, and are one for others', () => {
    expect(found('KCL')).toEqual(['K+ potassium-chloride']);
    expect(found('MCP, KCL')).toEqual(['P+ monocalcium-phosphate', 'K+ potassium-chloride']);
  });
});
