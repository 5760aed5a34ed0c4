import { describe, expect, test } from 'vitest';
import { findAdditives } from '#core/additive/findAdditives.ts';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { statementPieces } from './statementPieces.ts';

const marked = (text: string) =>
  statementPieces(text, findAdditives(parseStatement(text).value))
    .map(({ words, mark }) => (mark === undefined ? words : `[${mark}:${words}]`))
    .join('');

describe('marks in the statement', () => {
  test('each additive is marked where it stands, by what it counts as', () => {
    expect(marked('😀 HAM, SODIUM PHOSPHATES, POTASSIUM LACTATE, SOY LECITHIN, SALT')).toBe(
      '😀 HAM, [phosphate:SODIUM PHOSPHATES], [potassium:POTASSIUM LACTATE], [trace:SOY LECITHIN], SALT',
    );
  });
  test('one that is both is marked once, as the phosphate', () => {
    expect(marked('DIPOTASSIUM PHOSPHATE')).toBe('[phosphate:DIPOTASSIUM PHOSPHATE]');
  });
  test('names that share words are one mark, and no letter is lost', () => {
    const text = 'SODIUM AND/OR CALCIUM ACID PYROPHOSPHATE, POTASSIUM AND SODIUM LACTATE.';
    expect(marked(text).replace(/\[\w+:|\]/g, '')).toBe(text);
    expect(marked(text)).toContain('[phosphate:SODIUM AND/OR CALCIUM ACID PYROPHOSPHATE]');
  });
});
