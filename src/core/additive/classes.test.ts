import { describe, expect, test } from 'vitest';
import { parseStatement } from '#core/statement/parseStatement.ts';
import { countedClasses } from './countedClasses.ts';
import { findAdditives } from './findAdditives.ts';
import { found } from './foundIn.fixture.ts';

const reasons = (text: string): string[] =>
  findAdditives(parseStatement(text).value).map(
    ({ class: kind, counts, certainty, why }) => `${kind}, ${counts ? 'counts' : 'does not count'}, ${certainty}: ${why}`,
  );

describe('what a name of the table means', () => {
  test.each([
    [
      'TRICALCIUM PHOSPHATE',
      ['phosphate, counts, named: Tricalcium phosphate: adds inorganic phosphorus, counts as a phosphate additive.'],
    ],
    ['MILK MINERALS', ['phosphate, does not count, possible: Milk minerals: may hold a phosphate; the label does not say.']],
    ['FERRIC ORTHOPHOSPHATE', ['phosphate, does not count, named: Ferric orthophosphate: a trace of phosphorus, reported, not counted.']],
    ['POTASSIUM LACTATE', ['potassium, counts, named: Potassium lactate: adds potassium in an amount that can matter.']],
    ['POTASSIUM SORBATE', ['potassium, does not count, named: Potassium sorbate: used in traces, its potassium is reported, not counted.']],
    ['COCONUT WATER', ['potassium, does not count, named: Coconut water: rich in potassium by nature, an ingredient, not an additive.']],
    ['SODIUM CITRATE', ['sodium, counts, named: Sodium citrate: adds sodium, the panel measures how much.']],
    ['SODIUM FERROCYANIDE', ['sodium, does not count, named: Sodium ferrocyanide: a trace of sodium, reported, not counted.']],
    [
      'PHOSPHATES',
      [
        'phosphate, counts, named: Phosphates: adds inorganic phosphorus, counts as a phosphate additive.',
        'sodium, does not count, possible: Phosphates: may be sodium salts; the label does not say.',
      ],
    ],
  ])('[ADD-2] [ADD-3] [ADD-4] %s', (text, expected) => {
    // The name in the sentence is that of the table, which may be longer than the label's.
    expect(reasons(text).map(reason => reason.replace(/ \([^)]*\)/g, ''))).toEqual(expected);
  });
  test('[ADD-3] [ADD-4] an ingredient that may hold potassium, and one that is rich in sodium', () => {
    expect(found('COCOA (PROCESSED WITH ALKALI), RYE')).toEqual(['K- cocoa-processed-with-alkali possible']);
    expect(found('COCOA, PROCESSED WITH ALKALI')).toEqual([]);
    expect(found('SALT WATER')).toEqual(['S- brine-pickle']);
    expect(found('SALT WATER TAFFY, EPSOM SALT, MELTING SALTS, LEMON LIME SODA')).toEqual([]);
  });
  test('[ADD-7] [ADD-8] what else the sentence says', () => {
    expect(reasons('MAY CONTAIN POTASSIUM LACTATE')[0]).toMatch(/, may-contain: .* The statement only allows it\.$/);
    expect(reasons('OIL OR POTASSIUM LACTATE')[0]).toMatch(/, alternative: .* One of several that may be in the package\.$/);
    expect(reasons('POTASSIUM LACTATTE')[0]).toMatch(/, misspelled: .* The spelling on the label was mended: check the package\.$/);
    expect(reasons('NO POTASSIUM LACTATE')).toEqual([
      'potassium, does not count, named: The label says it holds no potassium lactate: not counted.',
    ]);
  });
  test('[ADD-7] the weakest word around a name holds, whichever stands outside', () => {
    expect(found('MAY CONTAIN: OIL (SALT OR SODIUM CITRATE)')).toEqual(['S+ salt may-contain', 'S+ sodium-citrate may-contain']);
    expect(found('BLEND (ONE OR MORE OF: OIL [MAY CONTAIN SODIUM CITRATE], RYE)')).toEqual(['S+ sodium-citrate may-contain']);
    expect(found('BLEND (ONE OR MORE OF: OIL [SALT, RYE], MACE)')).toEqual(['S+ salt alternative']);
  });
});

describe('what a name tells that is not in the table', () => {
  test.each([
    [
      'POTASSIUM FLUOROPHOSPHATE',
      [
        'phosphate, counts, named: Potassium fluorophosphate is not in the table; its name says phosphate, so it counts.',
        'potassium, counts, named: Potassium fluorophosphate is not in the table; its name says potassium, so it counts.',
      ],
    ],
    [
      'SODIUM FLUOROPHOSPHATE',
      [
        'phosphate, counts, named: Sodium fluorophosphate is not in the table; its name says phosphate, so it counts.',
        'sodium, counts, named: Sodium fluorophosphate is not in the table; its name says sodium.',
      ],
    ],
    ['FLUOROPHOSPHATE', ['phosphate, counts, named: Fluorophosphate is not in the table; its name says phosphate, so it counts.']],
    [
      'GLYCEROPHOSPHATE',
      ['phosphate, does not count, named: Glycerophosphate is an organic phosphate: reported, not counted as an added phosphate.'],
    ],
    ['PHOSPHEX', ['phosphate, does not count, possible: Phosphex looks like a phosphate and is not in the table: read the package again.']],
    [
      'DIPOTASSIUM PYROGLUTAMATE',
      ['potassium, counts, named: Dipotassium pyroglutamate is not in the table; its name says potassium, so it counts.'],
    ],
    ['SODIUM PYROGLUTAMATE', ['sodium, counts, named: Sodium pyroglutamate is not in the table; its name says sodium.']],
  ])('[ADD-13] %s', (text, expected) => {
    expect(reasons(text)).toEqual(expected);
  });
  test.each([
    'CALCIUM PYROGLUTAMATE',
    'POTASSIUM',
    'POTASSIUM CHOCOLATE',
    'POTASSIUM RATES',
    'POTASSIUM (CRATES)',
    'POTASSIUM. CRATES',
    'SODIUM WATER',
    'PHOSPHORYLASE',
    'PHOSPH',
    'FOSFI1',
  ])('[ADD-13] [ADD-15] nothing: %s', text => {
    expect(found(text)).toEqual([]);
  });
  test.each([
    ['POTASSIUM CRATES', 'K+ stem:potassium-crates'],
    ['PHOSPHI', 'P- stem:phosphi possible'],
    ['DIFOSFATO', 'P+ stem:difosfato'],
    ['CREATINE PHOSPHATES', 'P- stem:creatine-phosphates'],
    ['GLYCEROL PHOSPHATE', 'P- stem:glycerol-phosphate'],
    ['CREATINE PHOSPHORIC ACID', 'P+ phosphoric-acid'],
    ['CALCIUM (PHOSPHATE)', 'P+ calcium-phosphate'],
  ])('[ADD-13] %s', (text, expected) => {
    expect(found(text)).toEqual([expected]);
  });
  test('[ADD-5] a finding quotes the brackets of its name, and what follows is read on', () => {
    const quoted = (text: string) => findAdditives(parseStatement(text).value).map(finding => finding.found);
    expect(quoted('CALCIUM (PHOSPHATE) SALT')).toEqual(['CALCIUM (PHOSPHATE)', 'SALT']);
    expect(quoted('CREATINE PHOSPHATE SALT')).toEqual(['CREATINE PHOSPHATE', 'SALT']);
    expect(quoted('POTASSIUM PYROGLUTAMATE SALT')).toEqual(['POTASSIUM PYROGLUTAMATE', 'SALT']);
    expect(quoted('KCL SALT')).toEqual(['KCL', 'SALT']);
    expect(quoted('E508 SALT')).toEqual(['E508', 'SALT']);
    expect(quoted('INS 508 SALT')).toEqual(['INS 508', 'SALT']);
    expect(quoted('E501(I) SALT')).toEqual(['E501(I)', 'SALT']);
    expect(quoted('EMULSIFYING SALTS SALT')).toEqual(['SALT']);
    expect(quoted('POTASSIUM LACTATE AND CITRATE SALT')).toEqual(['POTASSIUM LACTATE', 'CITRATE', 'SALT']);
    expect(quoted('SALT (FLUOROPHOSPHATE) SALT')).toEqual(['SALT', 'FLUOROPHOSPHATE', 'SALT']);
  });
});

describe('plurals, prefixes and absences', () => {
  test.each([
    ['POTASSIUM LACTATES', 'K+ potassium-lactate'],
    ['PHOSPHORIC ACIDS', 'P+ phosphoric-acid'],
    ['SEA SALTS', 'S+ salt'],
    ['SOY SAUCES', 'S- soy-sauce'],
  ])('[ADD-1] %s', (text, expected) => {
    expect(found(text)).toEqual([expected]);
  });
  test.each([
    ['POLY PHOSPHATE', 'P+ polyphosphates'],
    ['PYRO PHOSPHATE', 'P+ diphosphates'],
    ['DI-PHOSPHATE', 'P+ diphosphates'],
    ['HEXAMETA-PHOSPHATE', 'P+ sodium-hexametaphosphate'],
    ['FREE OF PHOSPHATES', 'P- phosphates'],
    ['FREE FROM ADDED PHOSPHATES', 'P- phosphates'],
    ['PHOSPHATES FREE OF SALT', 'P+ phosphates'],
    ['FREE RUNNING PHOSPHATES', 'P+ phosphates'],
  ])('[ADD-9] [ADD-14] %s', (text, expected) => {
    expect(found(text, 'phosphate')).toEqual([expected]);
  });
});

describe('what is told of a food in one look', () => {
  const told = (text: string): string[] =>
    countedClasses(findAdditives(parseStatement(text).value)).map(one => `${one.class}${one.isCertain ? '' : '?'}`);
  test.each([
    ['TRICALCIUM PHOSPHATE', ['phosphate']],
    ['TRICALCIUM PHOSPATE', ['phosphate']],
    ['POTASSIUM LACTATE, TRICALCIUM PHOSPHATE', ['phosphate', 'potassium']],
    ['MAY CONTAIN TRICALCIUM PHOSPHATE', ['phosphate?']],
    ['OIL OR POTASSIUM LACTATE', ['potassium?']],
    ['MILK MINERALS', ['phosphate?']],
    ['MILK MINERALS, TRICALCIUM PHOSPHATE', ['phosphate']],
    ['LECITHIN, POTASSIUM SORBATE, SALT', []],
    ['NO PHOSPHATES', []],
    ['WATER', []],
  ])('[ADD-2] [ADD-7] %s', (text, expected) => {
    expect(told(text)).toEqual(expected);
  });
});
