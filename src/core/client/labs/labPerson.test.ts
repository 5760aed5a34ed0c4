import { expect, test } from 'vitest';
import { differencesOf } from './labPerson.ts';

test.each([
  ['Orla, Ines', 'I. O.', []],
  ['Ines M. Orla', 'I. O. (demo)', []],
  ['INES ORLA', 'Ines Orla', []],
  ['Ínes Örla', 'Ö. Í.', []],
  ['إيناس عرلا', 'إ. ع.', []],
  ['Orla, Ines', 'L. O.', ['name']],
  ['Ines', 'I. I.', ['name']],
  ['Ines Orla', 'Ina Orla', ['name']],
  ['MRN 4471', 'client 4471', ['name']],
  ['4471', '4471', []],
  ['Orla, Ines', '(demo)', ['name']],
])('[FHR-13] results of %s for the record of %s: %j', (name, record, expected) => {
  expect(differencesOf({ name }, { name: record })).toEqual(expected);
});

test('[FHR-13] another day of birth is a difference, one that is not known is none', () => {
  expect(differencesOf({ bornOn: '1958-03-02' }, { name: 'I. O.', bornOn: '1958-02-03' })).toEqual(['bornOn']);
  expect(differencesOf({ name: 'Lea Sand', bornOn: '1958-03-02' }, { name: 'I. O.', bornOn: '1958-03-02' })).toEqual(['name']);
  expect(differencesOf({ bornOn: '1958-03-02' }, { name: 'I. O.' })).toEqual([]);
  expect(differencesOf({}, { name: 'I. O.', bornOn: '1958-02-03' })).toEqual([]);
});
