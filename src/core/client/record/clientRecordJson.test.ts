import { describe, expect, test } from 'vitest';
import { decidedWords } from '#core/client/prescription/targetWords.ts';
import { clientRecordFromJson, clientRecordToJson } from './clientRecordJson.ts';
import form1 from './forms/clientRecord.form1.json' with { type: 'json' };
import form2 from './forms/clientRecord.form2.json' with { type: 'json' };
import { prescriptionFromJson, prescriptionToJson } from './prescription.ts';
import type { ClientRecord } from './record.ts';

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

function read(json: unknown): ClientRecord {
  const { value, issues } = clientRecordFromJson(json);
  expect(issues).toEqual([]);
  return value!;
}

describe('the forms in which a record was kept', () => {
  test('[CLT-55] form 1, as a program of its time wrote it, is read whole and written in the newest form', () => {
    const record = read(form1);
    const [signed] = record.prescriptions;
    const words = (item: string) => signed!.targets.filter(target => target.item === item).map(decidedWords);
    // An open end as null, a closed one, and the largest number that stood for an open one.
    expect(words('protein')).toEqual(['at least 98 g']);
    expect(words('sodium')).toEqual(['at most 2000 mg']);
    expect(words('fiber')).toEqual(['at least 25 g']);
    expect(signed!.targets.map(({ kind }) => kind)).toEqual(signed!.targets.map(() => undefined));
    expect(record).toMatchObject({
      name: 'A.B.',
      contacts: [{ told: 'the kidney team' }],
      mealPattern: [{ percent: 40 }, { percent: 60 }],
    });
    const written = plain(clientRecordToJson(record));
    expect(written).toMatchObject({ format: 3 });
    expect(read(written)).toEqual(record);
  });

  test('[CLT-55] form 2 comes back to the letter, in the newest form', () => {
    expect(plain(clientRecordToJson(read(form2)))).toEqual({ ...form2, format: 3 });
  });

  test('[CLT-55] a fault in a record has its place', () => {
    const broken = { ...form2, assessments: form2.assessments.map(one => ({ ...one, assessment: { ...one.assessment, pregnent: true } })) };
    expect(clientRecordFromJson(broken)).toMatchObject({
      value: undefined,
      issues: [{ place: { heading: 'assessments[0].assessment.pregnent' } }, { place: { heading: 'assessments[1].assessment.pregnent' } }],
    });
  });
});

describe('parts of a record by themselves', () => {
  test('[CLT-55] a prescription and a contact come back to the letter, and are refused with the place of a fault', () => {
    const [signed] = form2.prescriptions;
    expect(plain(prescriptionToJson(prescriptionFromJson(signed).value!))).toEqual(signed);
    expect(prescriptionFromJson({ ...signed, targets: [{ ...signed!.targets[0], range: [5, 1] }] }).issues[0]?.place.heading).toBe(
      'targets[0].range',
    );
    const [contact] = form2.contacts;
    expect(clientRecordFromJson({ ...form2, contacts: [{ ...contact, told: 7 }] }).issues[0]?.place.heading).toBe('contacts[0].told');
  });
});
