import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { computed } from '../../../test/processorTime.ts';
import { findAdditives } from './findAdditives.ts';
import { found } from './foundIn.fixture.ts';
import { repairWord } from './spelling.ts';

const long = process.env.PLATEWRIGHT_LONG !== undefined;

const phosphates = (text: string): string[] => found(text, 'phosphate');
const potassium = (text: string): string[] => found(text, 'potassium');

describe('names', () => {
  test('[ADD-1] the longest name wins, wherever it stands', () => {
    expect(phosphates('LEAVENING [BAKING SODA, SODIUM ALUMINUM PHOSPHATE {ACID}], SODIUM ACID PYROPHOSPHATE')).toEqual([
      'P+ sodium-aluminum-phosphate',
      'P+ sodium-acid-pyrophosphate',
    ]);
    expect(found('ACESULFAME POTASSIUM AND POTASSIUM SORBATE')).toEqual(['K- acesulfame-potassium', 'K- potassium-sorbate']);
  });
  test('[ADD-1] a missing separator hides nothing', () => {
    expect(phosphates('WHEAT PROTEIN MONOCALCIUM PHOSPHATE BHA BHT')).toEqual(['P+ monocalcium-phosphate']);
  });
  test('[ADD-5] place, words and path of a finding', () => {
    const [first] = findAdditives(parseStatement('HAM (PORK, CURE [SALT, DIPOTASSIUM PHOSPHATE]), WATER').value).filter(
      finding => finding.id === 'dipotassium-phosphate',
    );
    expect(first).toMatchObject({
      class: 'phosphate',
      found: 'DIPOTASSIUM PHOSPHATE',
      start: 23,
      end: 44,
      path: ['HAM', 'CURE'],
      ins: '340(ii)',
      counts: true,
    });
    expect(found('DIPOTASSIUM PHOSPHATE')).toEqual(['P+ dipotassium-phosphate', 'K+ dipotassium-phosphate']);
  });
});

describe('what counts', () => {
  test('[ADD-2] organic and trace phosphates are reported and do not count', () => {
    expect(
      phosphates("SOY LECITHIN, RIBOFLAVIN-5'-PHOSPHATE, FERRIC ORTHOPHOSPHATE, DISODIUM INOSINATE, HYDROXYPROPYL DISTARCH PHOSPHATE"),
    ).toEqual([
      'P- lecithin',
      'P- riboflavin-5-phosphate-sodium',
      'P- ferric-orthophosphate',
      'P- disodium-inosinate',
      'P- hydroxypropyl-distarch-phosphate',
    ]);
  });
  test('[ADD-3] potassium by role', () => {
    expect(potassium('POTASSIUM CHLORIDE, POTASSIUM LACTATE, POTASSIUM SORBATE, ACESULFAME K, POTASSIUM IODIDE, CREAM OF TARTAR')).toEqual([
      'K+ potassium-chloride',
      'K+ potassium-lactate',
      'K- potassium-sorbate',
      'K- acesulfame-potassium',
      'K- potassium-iodide',
      'K+ potassium-bitartrate',
    ]);
  });
  test('[ADD-3] "potassium salt" is potassium chloride (FDA guidance of December 2020, 85 FR 82332)', () => {
    expect(potassium('POTASSIUM SALT')).toEqual(['K+ potassium-chloride']);
  });
  test('[ADD-4] salt counts, soy sauce and broth are told apart', () => {
    expect(found('SALT, MONOSODIUM GLUTAMATE, SOY SAUCE, CHICKEN BROTH')).toEqual([
      'S+ salt',
      'S+ monosodium-glutamate',
      'S- soy-sauce',
      'S- broth-and-stock',
    ]);
  });
  test('[ADD-6] a bare baking powder is possible; its own list is judged instead', () => {
    expect(phosphates('BAKING POWDER (LEAVENING)')).toEqual(['P- baking-powder possible']);
    expect(phosphates('BAKING POWDER (SODIUM ACID PYROPHOSPHATE, BAKING SODA)')).toEqual(['P+ sodium-acid-pyrophosphate']);
    expect(phosphates('BAKING POWDER (BAKING SODA, CREAM OF TARTAR)')).toEqual([]);
  });
  test('[ADD-15] look-alikes are not reported', () => {
    expect(
      found(
        'CALCIUM CHLORIDE, POLYSORBATE 80, PHOSPHOLIPASE, TARTARIC ACID, CARBONATED WATER, LOW SODIUM, SOURCE OF POTASSIUM, EMULSIFYING SALTS, PHOSPHORUS, CLUB SODA',
      ),
    ).toEqual([]);
  });
});

describe('certainty', () => {
  test('[ADD-7] alternatives and options', () => {
    expect(phosphates('LEAVENING (CALCIUM PHOSPHATE AND/OR BAKING SODA)')).toEqual(['P+ calcium-phosphate alternative']);
    expect(phosphates('YEAST NUTRIENTS (CONTAINS ONE OR MORE OF THE FOLLOWING: MONOCALCIUM PHOSPHATE, CALCIUM SULFATE)')).toEqual([
      'P+ monocalcium-phosphate alternative',
    ]);
    expect(phosphates('PORK, SALT. MAY CONTAIN SMOKE FLAVOR, SODIUM PHOSPHATES.')).toEqual(['P+ sodium-phosphates may-contain']);
  });
  test('[ADD-14] negations are reported, not counted; a separator ends their reach', () => {
    expect(phosphates('TURKEY, WATER. NO PHOSPHATES ADDED.')).toEqual(['P- phosphates']);
    expect(phosphates('WITHOUT ADDED PHOSPHATES')).toEqual(['P- phosphates']);
    expect(phosphates('PHOSPHATE-FREE HAM')).toEqual(['P- phosphates']);
    expect(phosphates('NO MSG, SODIUM PHOSPHATES')).toEqual(['P+ sodium-phosphates']);
    expect(phosphates('ALUMINUM FREE BAKING POWDER (SODIUM ACID PYROPHOSPHATE, CORN STARCH)')).toEqual(['P+ sodium-acid-pyrophosphate']);
    expect(phosphates('FAT FREE MILK, DISODIUM PHOSPHATE')).toEqual(['P+ disodium-phosphate']);
  });
  // "No added sodium or potassium phosphates" has three words between "no" and the name: a shorter reach would count, as added, what the
  // label says was left out, and a food that is right for the client would be kept from them.
  test('[ADD-14] "no" reaches over "added" and over the names it shares its word with', () => {
    expect(phosphates('NO ADDED PHOSPHATES')).toEqual(['P- phosphates']);
    expect(phosphates('NO ARTIFICIALLY ADDED PHOSPHATES')).toEqual(['P- phosphates']);
    expect(found('NO ADDED SODIUM OR POTASSIUM PHOSPHATES', 'phosphate')).toEqual(['P- sodium-phosphates', 'P- potassium-phosphates']);
    expect(phosphates('NO FLAVORS OF ANY KIND BUT SODIUM PHOSPHATES')).toEqual(['P+ sodium-phosphates']);
  });
  test.each([
    'NO PHOSPHATES ADDED',
    'No more phosphates',
    'CONTAINS NO PHOSPHATES',
    'Not a source of phosphates',
    'DOES NOT CONTAIN PHOSPHATES',
    'NOT MADE WITH PHOSPHATES',
    'NO PHOSPHATES AND NOT OVER 2% SALT',
  ])('[ADD-14] still an absence: %s', text => {
    expect(phosphates(`TURKEY, WATER. ${text}.`)).toEqual(['P- phosphates']);
  });
  test('[ADD-14] beside an absence, what is bounded still counts', () => {
    expect(found('SALT, CONTAINS NO MSG AND NOT MORE THAN 2% TRICALCIUM PHOSPHATE', 'phosphate')).toEqual(['P+ tricalcium-phosphate']);
  });
});

describe('spelling', () => {
  // Kinds of error as measured in real statements: dropped, swapped, doubled, look-alike letter, written by ear.
  test.each([
    ['SODIUM PHOSPATES', 'P+ sodium-phosphates misspelled'],
    ['SODIUM PHOSHPATE', 'P+ sodium-phosphates misspelled'],
    ['DISOCIUM PHOSPHATE', 'P+ disodium-phosphate misspelled'],
    ['NONOCALCIUM PHOSPHATE', 'P+ monocalcium-phosphate misspelled'],
    ['SODIUM TRYPOLYPHOSPHATE', 'P+ sodium-tripolyphosphate misspelled'],
    ['SODIUM ACID PYROPHOSPAHTE', 'P+ sodium-acid-pyrophosphate misspelled'],
    ['SODIUM HEXAMETHAPHOSPATE', 'P+ sodium-hexametaphosphate misspelled'],
    ['TRISODIUM PHOSFATE', 'P+ trisodium-phosphate misspelled'],
    ['PHOSPORIC ACID', 'P+ phosphoric-acid misspelled'],
  ])('[ADD-8] %s', (text, expected) => {
    expect(phosphates(text)).toEqual([expected]);
  });
  test('[ADD-8] true words are never mended, and neither is a cation count at two letters', () => {
    for (const word of [
      'carbonated',
      'aspartame',
      'iodine',
      'phosphite',
      'phytase',
      'lactase',
      'chocolate',
      'citrus',
      'caramel',
      'sorbitol',
      'malted',
    ]) {
      expect(repairWord(word), word).toBeUndefined();
    }
    expect(repairWord('tisodiums')).toBeUndefined();
    expect(potassium('CALCIUM CHLORIDE')).toEqual([]);
  });
  test('[ADD-9] hyphens at a line end, glued words, a comma inside the name', () => {
    expect(phosphates('SODIUM PHOS- PHATE')).toEqual(['P+ sodium-phosphates misspelled']);
    expect(phosphates('TRI-CALCIUM PHOSPHATE, MONO CALCIUM PHOSPHATE')).toEqual(['P+ tricalcium-phosphate', 'P+ monocalcium-phosphate']);
    expect(phosphates('SALT, DISODIUMPHOSPHATE')).toEqual(['P+ disodium-phosphate misspelled']);
    expect(phosphates('SODIUM ACID, PYROPHOSPHATE; TETRASODIUM, PYROPHOSPHATE')).toEqual([
      'P+ sodium-acid-pyrophosphate',
      'P+ tetrasodium-pyrophosphate',
    ]);
  });
});

describe('slips that section 8 and 10 of the measurements tell of', () => {
  test('[ADD-9] a comma behind the cation, when what follows is no name of its own', () => {
    expect(found('SODA, SODIUM, ALUMINUM SULFATE')).toEqual(['S+ sodium-aluminum-sulfate']);
    expect(phosphates('SODIUM, ALUMINUM PHOSPHATE')).toEqual(['P+ sodium-aluminum-phosphate']);
    expect(phosphates('SODIUM, ACID PYROPHOSPHATE')).toEqual(['P+ sodium-acid-pyrophosphate']);
    expect(found('SODIUM, STEAROYL LACTYLATE; DISODIUM, EDTA')).toEqual(['S+ sodium-stearoyl-lactylate', 'S+ disodium-edta']);
    expect(found('MINERALS (CALCIUM, POTASSIUM, SALT)')).toEqual(['S+ salt']);
  });
  test('[ADD-8] letters in another order', () => {
    expect(potassium('POTASSIUM CHORLIDE')).toEqual(['K+ potassium-chloride misspelled']);
    expect(found('CALCIUM CHORLIDE')).toEqual([]);
  });
  test('[ADD-8] another true word, told by the word behind it', () => {
    expect(phosphates('TRON PHOSPHATE, FABRIC PYROPHOSPHATE')).toEqual([
      'P- ferric-orthophosphate misspelled',
      'P- ferric-pyrophosphate misspelled',
    ]);
  });
  test('[ADD-10] a prefix and the same cation give one finding', () => {
    expect(found('MONO, SODIUM GLUTAMATE')).toEqual(['S+ monosodium-glutamate']);
  });
});

describe('shared heads and codes', () => {
  test('[ADD-10] each name that shares a head or tail is named', () => {
    expect(found('POTASSIUM AND SODIUM LACTATE')).toEqual(['K+ potassium-lactate', 'S+ sodium-lactate']);
    expect(phosphates('SODIUM AND/OR CALCIUM ACID PYROPHOSPHATE')).toEqual([
      'P+ sodium-acid-pyrophosphate alternative',
      'P+ calcium-acid-pyrophosphate alternative',
    ]);
    expect(phosphates('TRI- AND DICALCIUM PHOSPHATE')).toEqual(['P+ tricalcium-phosphate', 'P+ dicalcium-phosphate']);
    expect(phosphates('SODIUM (MONO, HEXAMETA, AND/OR TRIPOLY) PHOSPHATE')).toEqual([
      'P+ monosodium-phosphate alternative',
      'P+ sodium-hexametaphosphate alternative',
      'P+ sodium-tripolyphosphate alternative',
    ]);
    expect(phosphates('SODIUM PHOSPHATE & POLYPHOSPHATE')).toEqual(['P+ sodium-phosphates', 'P+ sodium-polyphosphates']);
    expect(phosphates('FOOD ACIDS [PHOSPHORIC, CITRIC AND MALIC ACIDS]')).toEqual(['P+ phosphoric-acid']);
  });
  // INS numbers: Codex CAC/GL 36-1989.
  test('[ADD-11] E and INS numbers', () => {
    expect(phosphates('E450, E 451(i), INS 338, EMULSIFIER (322), COLOURS (102, 133), BUTTER (295), VITAMIN E 400')).toEqual([
      'P+ diphosphates',
      'P+ sodium-tripolyphosphate',
      'P+ phosphoric-acid',
      'P- lecithin',
    ]);
    expect(found('E508, E500II, E202')).toEqual(['K+ potassium-chloride', 'S+ sodium-bicarbonate', 'K- potassium-sorbate']);
  });
  test('[ADD-12] abbreviations', () => {
    expect(phosphates('STPP, SAPP')).toEqual(['P+ sodium-tripolyphosphate', 'P+ sodium-acid-pyrophosphate']);
    expect(phosphates('LEAVENING (BAKING SODA, MCP)')).toEqual(['P+ monocalcium-phosphate']);
    expect(found('MCP CAFE BLEND')).toEqual([]);
  });
  test('[ADD-13] a name that is not in the table goes by its stem', () => {
    expect(phosphates('FLUOROPHOSPHATE')).toEqual(['P+ stem:fluorophosphate']);
    expect(phosphates('CREATINE PHOSPHATE')).toEqual(['P- stem:creatine-phosphate']);
    expect(potassium('POTASSIUM PYROGLUTAMATE')).toEqual(['K+ stem:potassium-pyroglutamate']);
    expect(phosphates('PHOSPHEX')).toEqual(['P- stem:phosphex possible']);
  });
});

describe('any text', () => {
  const words = fc.constantFrom(
    'sodium',
    'potassium',
    'di',
    'tri-',
    'phosphate',
    'phosphates',
    'acid',
    'pyro',
    'phos-',
    'and',
    'or',
    'and/or',
    ',',
    '(',
    ')',
    'E450',
    'no',
    'free',
    'of',
    'chloride',
    'salt',
    'MCP',
    'calcium',
    '.',
    '322',
    'emulsifier',
    '😀',
    '\u0000',
    'lecithin',
    '/',
  );
  const text = fc.oneof(
    fc.array(words, { maxLength: 40 }).map(parts => parts.join(' ')),
    fc.string({ unit: 'binary', maxLength: 120 }),
  );
  test('[ADD-5] findings stand in order inside the text and quote it', () => {
    fc.assert(
      fc.property(text, given => {
        const points = [...given];
        for (const { start, end, found: quoted } of findAdditives(parseStatement(given).value)) {
          expect(points.slice(start, end).join('')).toBe(quoted);
        }
      }),
      { numRuns: long ? 100_000 : 300 },
    );
  });
  // Where looking ahead at each word would cost the square of the length: 300,000 characters take under a second.
  test.each(['di, ', 'sodium, ', 'sodium (mono, ', 'phosphate and ', 'e 450 (', 'no salt '])(
    '[ADD-1] endless "%s" is searched in linear time',
    unit => {
      const statement = parseStatement(`a (${unit.repeat(300_000 / unit.length)}`).value;
      expect(computed(() => findAdditives(statement)).milliseconds).toBeLessThan(5_000);
    },
  );
  test('[ADD-1] words around a name never hide it', () => {
    const around = fc.array(
      fc.constantFrom(
        'WATER',
        'GUAR GUM',
        'OIL (SOY)',
        'CHEESE [MILK',
        'SPICES)',
        'CONTAINS 2% OR LESS OF:',
        'COLOR: RED 40.',
        '*ORGANIC',
        'CONTAINS: MILK.',
        'VITAMIN B12',
      ),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(around, around, (before, after) => {
        const given = `${before.join(', ')}, SODIUM TRIPOLYPHOSPHATE, ${after.join(', ')}`;
        expect(phosphates(given)).toContain('P+ sodium-tripolyphosphate');
      }),
      { numRuns: long ? 100_000 : 200 },
    );
  });
});
