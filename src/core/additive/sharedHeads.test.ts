import { describe, expect, test } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { findAdditives } from './findAdditives.ts';
import { found } from './foundIn.fixture.ts';

describe('several cations before one salt', () => {
  test.each([
    ['SODIUM, POTASSIUM LACTATE', ['S+ sodium-lactate', 'K+ potassium-lactate']],
    ['SODIUM & POTASSIUM LACTATE', ['S+ sodium-lactate', 'K+ potassium-lactate']],
    ['SODIUM, AND POTASSIUM LACTATE', ['S+ sodium-lactate', 'K+ potassium-lactate']],
    // "Plus" is no choice: both are there.
    ['SODIUM PLUS POTASSIUM LACTATE', ['S+ sodium-lactate', 'K+ potassium-lactate']],
    ['SODIUM / POTASSIUM LACTATE', ['S+ sodium-lactate alternative', 'K+ potassium-lactate alternative']],
    ['SODIUM, OR POTASSIUM LACTATE', ['S+ sodium-lactate alternative', 'K+ potassium-lactate alternative']],
    ['SODIUM, POTASSIUM, CALCIUM LACTATE', ['S+ sodium-lactate', 'K+ potassium-lactate']],
    ['SODIUM, AND, OR POTASSIUM LACTATE', ['K+ potassium-lactate alternative']],
    ['MONO AND DICALCIUM PHOSPHATE', ['P+ monocalcium-phosphate', 'P+ dicalcium-phosphate']],
    ['MONO- OR DICALCIUM PHOSPHATE', ['P+ monocalcium-phosphate alternative', 'P+ dicalcium-phosphate alternative']],
    ['MONO, DI AND TRICALCIUM PHOSPHATE', ['P+ monocalcium-phosphate', 'P+ dicalcium-phosphate', 'P+ tricalcium-phosphate']],
    ['DI, TRI- CALCIUM PHOSPHATE', ['P+ dicalcium-phosphate', 'P+ tricalcium-phosphate']],
    ['SODIUM AND POTASSIUM LACTOSE', []],
    ['SODIUM AND POTASSIUM', []],
    ['DI AND WATER', []],
  ])('[ADD-10] %s', (text, expected) => {
    expect(found(text)).toEqual(expected);
  });
  test('[ADD-10] each finding begins at its own word and ends with the shared one; what follows is read on', () => {
    const findings = findAdditives(parseStatement('POTASSIUM AND SODIUM LACTATE SALT').value);
    expect(findings.map(finding => finding.found)).toEqual(['POTASSIUM AND SODIUM LACTATE', 'SODIUM LACTATE', 'SALT']);
  });
  test('[ADD-10] a misspelled tail is told of every name', () => {
    expect(found('POTASSIUM AND SODIUM LACTATTE')).toEqual(['K+ potassium-lactate misspelled', 'S+ sodium-lactate misspelled']);
  });
});

describe('several phosphates of one cation', () => {
  test.each([
    ['SODIUM (TRIPOLY) PHOSPHATE', ['P+ sodium-tripolyphosphate']],
    ['SODIUM TRI POLYPHOSPHATE', ['P+ sodium-tripolyphosphate']],
    ['POTASSIUM (MONO, PYRO) PHOSPHATE', ['P+ monopotassium-phosphate', 'P+ tetrapotassium-pyrophosphate']],
    ['CALCIUM (MONO, POLY) PHOSPHATES', ['P+ monocalcium-phosphate', 'P+ calcium-polyphosphate']],
    ['SODIUM TRIPOLY AND POLYPHOSPHATE', ['P+ sodium-tripolyphosphate', 'P+ sodium-polyphosphates']],
    ['SODIUM (HEXAMETA OR TRIPOLY) PHOSPHATE', ['P+ sodium-hexametaphosphate alternative', 'P+ sodium-tripolyphosphate alternative']],
    ['SODIUM ACID, PYROPHOSPHATE', ['P+ sodium-acid-pyrophosphate']],
    ['SODIUM (MONO, HEXAMETA) SALTS', []],
  ])('[ADD-10] %s', (text, expected) => {
    expect(found(text, 'phosphate')).toEqual(expected);
  });
  test('[ADD-10] the bracket is quoted, and what follows is read on', () => {
    const findings = findAdditives(parseStatement('SODIUM (HEXAMETA, TRIPOLY) PHOSPHATE SALT').value);
    expect(findings.map(finding => finding.found)).toEqual([...Array(4).fill('SODIUM (HEXAMETA, TRIPOLY) PHOSPHATE'), 'SALT']);
  });
});

describe('several anions of one cation', () => {
  test.each([
    ['POTASSIUM LACTATE AND CITRATE', ['K+ potassium-lactate', 'K+ potassium-citrate']],
    ['POTASSIUM LACTATE OR CITRATE', ['K+ potassium-lactate', 'K+ potassium-citrate alternative']],
    ['SODIUM LACTATE / DIACETATE AND CITRATE', ['S+ sodium-lactate', 'S+ sodium-diacetate alternative', 'S+ sodium-citrate']],
    ['SODIUM LACTATE AND CITRATTE', ['S+ sodium-lactate', 'S+ sodium-citrate misspelled']],
    ['SODIUM LACTATE, DIACETATE', ['S+ sodium-lactate']],
    ['SODIUM LACTATE AND', ['S+ sodium-lactate']],
    ['SODIUM LACTATE AND WATER', ['S+ sodium-lactate']],
    ['SALT AND CITRATE', ['S+ salt']],
  ])('[ADD-10] %s', (text, expected) => {
    // "X or y" is a choice of the whole item: here only what the shared name itself says.
    expect(found(`(${text}`)).toEqual(
      text.includes(' OR ') ? expected.map(name => name.replace(/( alternative)?$/, ' alternative')) : expected,
    );
  });
});
