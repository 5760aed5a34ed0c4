import { expect, test } from 'vitest';
import { personOfFhir } from './subject.ts';

const observation = (display?: string) => ({
  resourceType: 'Observation',
  subject: { reference: 'Patient/1', ...(display === undefined ? {} : { display }) },
});
const bundle = (...resources: readonly unknown[]) => ({ resourceType: 'Bundle', entry: resources.map(resource => ({ resource })) });

test('[FHR-13] whose results FHIR holds: a Patient beside them, else what the subject is shown as', () => {
  const patient = { resourceType: 'Patient', birthDate: '1958-03-02', name: [{ family: 'Orla', given: ['Ines', 'M.'] }] };
  expect(personOfFhir(bundle(observation('somebody'), patient))).toEqual({ name: 'Ines M. Orla', bornOn: '1958-03-02' });
  expect(personOfFhir(bundle(patient, { ...patient, birthDate: '1960-01-01' }))).toEqual({ name: 'Ines M. Orla', bornOn: '1958-03-02' });
  expect(personOfFhir(bundle({ ...patient, name: [{ text: 'Orla, Ines', family: 'O.' }] }))).toEqual({
    name: 'Orla, Ines',
    bornOn: '1958-03-02',
  });
  expect(personOfFhir(bundle({ ...patient, name: [{ family: 'Orla' }], birthDate: '1958' }))).toEqual({ name: 'Orla' });
  expect(personOfFhir([observation(), observation('Ines Orla')])).toEqual({ name: 'Ines Orla' });
  expect(personOfFhir(observation('Ines Orla'))).toEqual({ name: 'Ines Orla' });
});

test.each([
  [undefined],
  [null],
  ['Patient'],
  [[null, 3]],
  [{ entry: [null, { resource: 5 }] }],
  [bundle({ resourceType: 'Patient' })],
  [bundle({ resourceType: 'Patient', name: 'Ines' })],
  [bundle({ resourceType: 'Patient', name: [{}], birthDate: 1958 })],
  [bundle({ resourceType: 'Patient', name: [{ given: 'Ines', text: ' ' }] })],
  [observation(' ')],
])('[FHR-10] nothing is told where nothing is: %j', json => {
  expect(personOfFhir(json)).toEqual({});
});
