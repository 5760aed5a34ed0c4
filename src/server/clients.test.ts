import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

type Server = Awaited<ReturnType<typeof testServer>>;
let server: Server;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());
const call = (...given: Parameters<Server['call']>) => server.call(...given);

// Today is 2026-06-15 in this world. The client is invented.
const assessment = {
  on: '2026-06-15',
  sex: 'female',
  age: { years: 64 },
  treatment: { setting: 'hemodialysis', place: 'in-center', startedOn: '2024-01-10' },
  diabetes: false,
  height: { feet: 5, inches: 5 },
  weighings: [{ weight: { value: 154, unit: 'lb' }, kind: 'dry', on: '2026-06-10' }],
  labs: [{ analyte: 'phosphate', value: 6.8, unit: 'mg/dL', takenOn: '2026-06-08' }],
  conditions: [],
  medicines: [],
  supplements: [],
  symptoms: [],
  allergies: [],
  avoidedFoods: ['garlic'],
  goals: [],
};

interface Target {
  readonly item: string;
  readonly range?: [number, number | null];
  readonly limit?: string;
  readonly says: string;
}
function takenOver(targets: readonly Target[]) {
  return targets.map(({ item, range, limit, says }) => ({
    item,
    from: 'proposal',
    says,
    ...(range === undefined ? {} : { range, limit }),
  }));
}

describe('one client from the first entry to what fits', () => {
  let id: string;
  let version: number;
  test('[SRV-12] is added by initials, assessed, and targets are proposed with unit, basis, reason and source', async () => {
    const added = (await call('POST', '/clients', { name: 'Q. X.' })).body;
    ({ id, version } = added);
    const { body } = await call('POST', `/clients/${id}/assessments`, { version, assessment });
    version = body.version;
    const protein = body.targets.find(({ item }: Target) => item === 'protein');
    // 154 lb are 69.85 kg; 1.0 to 1.2 g/kg on hemodialysis (KDOQI 2020; kidney facts 3.2): 69.9 to 83.8 g.
    // 154 lb: 69.85 to 83.82 g, outward to tenths as on every paper (design: a range is rounded outward at the last line of output).
    expect(protein).toMatchObject({ kind: 'proposed', figure: '69.8 – 83.9 g a day', weightBasis: 'dry' });
    for (const target of body.targets) {
      expect(target.unit, target.item).not.toBe('');
      expect(target.sources.length, target.item).toBeGreaterThan(0);
      expect(target.reasons.length + target.says.length, target.item).toBeGreaterThan(0);
    }
    expect(body.standingCaution).toContain('licensed dietitians');
  });
  test('[SRV-12] is not signed without a reason where a target is not as proposed, nor without every target', async () => {
    const { body } = await call('GET', `/clients/${id}`);
    const targets = takenOver(body.targets);
    const sign = (changed: unknown[], by = 'A. Dietitian') =>
      call('POST', `/clients/${id}/prescriptions`, { version, assessmentId: body.assessmentId, targets: changed, by, credentials: 'RDN' });
    const own = targets.map(one => (one.item === 'sodium' ? { ...one, from: 'own', range: [0, 2000], limit: 'at-most' } : one));
    expect((await sign(own)).body).toMatchObject({
      code: 'prescription-not-complete',
      detail: expect.stringContaining('reason for the sodium'),
    });
    expect((await sign(targets.slice(1))).body.detail).toContain('decision on energy');
    expect((await sign(targets, ' ')).body.detail).toContain('who signs');
    const reasoned = own.map(one => (one.item === 'sodium' ? { ...one, reason: 'thirst between sessions' } : one));
    const signed = (await sign(reasoned)).body;
    expect(signed.prescriptions).toMatchObject([{ stands: true, signedBy: 'A. Dietitian, RDN' }]);
    expect(signed.prescriptions[0].targets.find(({ item }: Target) => item === 'sodium')).toMatchObject({
      figure: 'at most 2000 mg a day',
      from: 'own',
      reason: 'thirst between sessions',
    });
    version = signed.version;
  });
  test('[SRV-12] a later prescription takes the place of what was signed and leaves it as it was', async () => {
    const before = (await call('GET', `/clients/${id}`)).body;
    const next = {
      version,
      assessmentId: before.assessmentId,
      targets: takenOver(before.targets),
      by: 'A. Dietitian',
      credentials: 'RDN',
    };
    // The own figure for sodium would go without a word.
    const unseen = await call('POST', `/clients/${id}/prescriptions`, next);
    expect(unseen).toMatchObject({ status: 409, body: { code: 'signed-choice-left-out', detail: expect.stringContaining('Sodium') } });
    expect(unseen.body.detail).not.toMatch(/\d/);
    const { body } = await call('POST', `/clients/${id}/prescriptions`, { ...next, acknowledgedChanges: true });
    version = body.version;
    expect(body.prescriptions).toHaveLength(2);
    // [CLT-71] What it rested on stays beside it.
    expect(body.prescriptions[0].targets.find(({ item }: Target) => item === 'protein').line).toEqual({
      basis: '1 – 1.2 g × 69.9 kg',
      why: 'dialysis takes protein away',
      source: 'KDOQI 2020',
    });
    expect(body.targets.map((target: { differsSinceSigned?: boolean }) => target.differsSinceSigned)).not.toContain(true);
    expect(body.prescriptions[0]).toMatchObject({ stands: true, supersedes: before.prescriptions[0].id });
    expect({ ...body.prescriptions[1], stands: true }).toEqual(before.prescriptions[0]);
    expect(
      (await call('PUT', `/clients/${id}/meals`, { version: version - 1, pattern: [{ name: 'lunch', percent: 100 }] })).body.code,
    ).toBe('changed-meanwhile');
  });
  test('[SRV-12] the shelf is judged by a meal’s share of the day; avoided foods and phosphate additives do not fit', async () => {
    const served = [
      { category: 'sandwich slices', plate: 'slices-on-low-sodium-bread' },
      { category: 'soups and broths', plate: 'soup-with-rice' },
    ];
    const { body } = await call('POST', `/clients/${id}/fits`, { served, meal: 'lunch' });
    // Sodium under 2300 mg a day (KDOQI 2020), 30 % of it for lunch: under 690 mg on the plate.
    expect(body.tests.join(' ')).toContain(
      'less than 690 mg sodium, what the food is eaten with counted (30% of 2,300 mg a day for lunch)',
    );
    const beef = body.rows.find(({ name }: { name: string }) => name === 'Beef, reduced sodium');
    expect(beef).toMatchObject({ verdict: 'over', inMeal: 'none' });
    const gouda = body.rows.find(({ name }: { name: string }) => name === 'Gouda slices');
    expect(gouda.verdict).not.toBe('over');
    // Each category on its own plate, and every food counted once.
    expect(new Set(body.rows.map(({ category, plate }: { category: string; plate: string }) => `${category} on ${plate}`))).toEqual(
      new Set(served.map(({ category, plate }) => `${category} on ${plate}`)),
    );
    const { fits, nearly, over, avoided, ...rest } = body.counts;
    expect(fits + nearly + over + avoided + rest["can't tell"]).toBe(body.rows.length);
    // The Food screen asks for one food, and is told the very same.
    const alone = { foodId: beef.foodId, served: [{ plate: 'slices-on-low-sodium-bread' }], meal: 'lunch' };
    expect((await call('POST', `/clients/${id}/fits`, alone)).body.rows).toEqual([{ ...beef, place: 0 }]);
    expect((await call('POST', `/clients/${id}/fits`, { ...alone, foodId: 'not-on-the-shelf' })).body.code).toBe('food-not-found');
    expect((await call('POST', '/clients', { name: 'N. N.' })).status).toBe(200);
  });
  test('[SRV-12] the chart note as text and as a document, the prescription as FHIR R4', async () => {
    const { text } = (await call('GET', `/clients/${id}/note`)).body;
    expect(text).toContain('Signed by A. Dietitian, RDN');
    const headers = { host: '127.0.0.1:4173' };
    const docx = await server.app.request(`http://127.0.0.1:4173/api/clients/${id}/note-docx`, { headers });
    expect(docx.headers.get('content-type')).toContain('wordprocessingml');
    expect(new Uint8Array(await docx.arrayBuffer()).slice(0, 2)).toEqual(new TextEncoder().encode('PK'));
    const { body } = await call('GET', `/clients/${id}/fhir`);
    expect(body).toMatchObject({ resourceType: 'Bundle' });
    expect(JSON.stringify(body)).not.toContain('Q. X.');
  });
  test('[SRV-12] results come from CSV or FHIR; one without a unit is told and left out', async () => {
    const csv = 'analyte,value,unit,date\npotassium,5.1,mmol/L,2026-06-08\nphosphate,5.5,,2026-06-08\n';
    const read = (await call('POST', '/clients/labs', { text: csv })).body;
    expect(read.labs).toMatchObject([{ analyte: 'potassium', value: 5.1, unit: 'mmol/L', takenOn: '2026-06-08' }]);
    expect(read.issues).toEqual([expect.stringContaining('row 3: found phosphate 5.5 without a unit')]);
    // LOINC 2823-3: potassium in serum or plasma.
    const observation = {
      resourceType: 'Observation',
      status: 'final',
      code: { coding: [{ system: 'http://loinc.org', code: '2823-3' }] },
      effectiveDateTime: '2026-06-08',
      valueQuantity: { value: 4.9, unit: 'mmol/L', system: 'http://unitsofmeasure.org', code: 'mmol/L' },
    };
    expect((await call('POST', '/clients/labs', { text: JSON.stringify([observation]) })).body.labs).toMatchObject([
      { analyte: 'potassium', value: 4.9 },
    ]);
    expect((await call('POST', '/clients/labs', { text: '{"broken' })).body.code).toBe('assessment-not-valid');
  });
  test('[SRV-12] who was told of a value is kept with the time', async () => {
    const urgent = { ...assessment, labs: [{ analyte: 'potassium', value: 6.8, unit: 'mmol/L', takenOn: '2026-06-15' }] };
    const raised = (await call('POST', `/clients/${id}/assessments`, { version, assessment: urgent })).body;
    const caution = raised.cautions.find(({ sameDay }: { sameDay: boolean }) => sameDay);
    expect(JSON.stringify(caution)).toContain('otassium');
    expect((await call('GET', '/clients')).body.find((one: { id: string }) => one.id === id).openContacts).toBeGreaterThan(0);
    const { body } = await call('POST', `/clients/${id}/contacts`, {
      version: raised.version,
      cautionId: caution.id,
      told: 'the kidney unit, by telephone',
    });
    expect(body.contacts).toMatchObject([{ told: 'the kidney unit, by telephone', on: '2026-06-15' }]);
    version = body.version;
  });
  test('[SRV-12] impossible, mixed-up and unsuitable: a question or a refusal, never a target', async () => {
    const propose = async (more: object) => (await call('POST', '/clients/propose', { assessment: { ...assessment, ...more } })).body;
    expect(await propose({ labs: [{ analyte: 'potassium', value: 55, unit: 'mmol/L', takenOn: '2026-06-08' }] })).toMatchObject({
      targets: [],
    });
    expect(await propose({ labs: [{ analyte: 'creatinine', value: 180, unit: 'mg/dL', takenOn: '2026-06-08' }] })).toMatchObject({
      targets: [],
      issues: [{ kind: 'question', told: expect.stringContaining('umol/L') }],
    });
    expect((await propose({ labs: [{ analyte: 'potassium', value: 5, unit: 'mmol/L', takenOn: '2026-07-01' }] })).issues[0].told).toContain(
      'after today',
    );
    expect((await propose({ age: { years: 16 } })).targets).toEqual([]);
    expect((await propose({ pregnant: true })).targets).toEqual([]);
    expect((await call('POST', '/clients/propose', { assessment: { on: 'yesterday' } })).body.code).toBe('assessment-not-valid');
  });
  test('[SRV-12] addresses, faults and the log hold nothing of a client', async () => {
    const wrong = await call('POST', `/clients/${id}/assessments`, {
      version,
      assessment: { ...assessment, sex: 'Quentin Xavier', labs: 'secret' },
    });
    expect(wrong.body.code).toBe('assessment-not-valid');
    expect(JSON.stringify(wrong.body)).not.toMatch(/Quentin|secret/);
    expect(server.logged.join('')).toBe('');
    expect((await call('GET', '/clients/00000000-0000-4000-8000-0000000000ff')).body.code).toBe('client-not-found');
  });
});

describe('results between two assessments', () => {
  test('[SRV-16] join the newest assessment, are checked like one, and a newer assessment takes their place', async () => {
    const { id, version } = (await call('POST', '/clients', { name: 'Q. Y.' })).body;
    const potassium = { analyte: 'potassium', value: 5.2, unit: 'mmol/L', takenOn: '2026-06-14' };
    const add = (seen: number, labs: unknown[], weighings: unknown[] = []) =>
      call('POST', `/clients/${id}/results`, { version: seen, labs, weighings });
    expect((await add(version, [potassium])).body).toMatchObject({ code: 'assessment-not-valid' });
    let seen = (await call('POST', `/clients/${id}/assessments`, { version, assessment })).body.version;
    expect((await add(seen, [])).body).toMatchObject({ code: 'assessment-not-valid' });
    expect((await add(seen, [{ ...potassium, unit: 7 }])).body).toMatchObject({ code: 'assessment-not-valid' });
    const added = (await add(seen, [potassium])).body;
    expect(added.labs).toContainEqual(expect.stringMatching(/^potassium 5\.2 mmol\/L/));
    expect(added.issues).toEqual([]);
    expect((await add(seen, [potassium])).body).toMatchObject({ code: 'changed-meanwhile' });
    seen = added.version;
    const asked = (await add(seen, [{ analyte: 'glucose', value: 30, unit: 'mg/dL', takenOn: '2026-06-14' }])).body;
    expect(asked.issues).toMatchObject([{ kind: 'question', code: 'unit-in-question', answeredBy: { list: 'labs', at: 1 } }]);
    expect(asked.targets).toEqual([]);
    const anew = (await call('POST', `/clients/${id}/assessments`, { version: asked.version, assessment })).body;
    expect(anew.issues).toEqual([]);
    expect(anew.assessment.labs).toEqual(assessment.labs);
  });
});

describe('an assessment that was wrong', () => {
  test('[CLT-74] is corrected by a later one that says so; an earlier one cannot be', async () => {
    const { id, version } = (await call('POST', '/clients', { name: 'C. O.' })).body;
    const first = (await call('POST', `/clients/${id}/assessments`, { version, assessment })).body;
    const corrected = await call('POST', `/clients/${id}/assessments`, {
      version: first.version,
      assessment: { ...assessment, weighings: [] },
      corrects: first.assessmentId,
    });
    expect(corrected.body.assessments).toMatchObject([{ corrects: first.assessmentId }, { id: first.assessmentId }]);
    expect(corrected.body.changes).toEqual([]);
    const again = { version: corrected.body.version, assessment, corrects: first.assessmentId };
    expect((await call('POST', `/clients/${id}/assessments`, again)).body).toMatchObject({ code: 'assessment-not-valid' });
    expect((await call('GET', `/clients/${id}`)).body.assessments).toHaveLength(2);
  });
});

describe('the figures of the clinic', () => {
  test('[SRV-17] are set within their limits, with who and when; they are no client', async () => {
    const before = (await call('GET', '/care-figures')).body;
    const dry = (body: { figures: { id: string }[] }) => body.figures.find(({ id }) => id === 'age.dry-weight');
    expect(dry(before)).toMatchObject({ usual: 60, unit: 'days' });
    expect(dry(before)).not.toHaveProperty('set');
    const set = (version: number, more: object) =>
      call('PUT', '/care-figures', { version, id: 'age.dry-weight', value: 45, by: 'A. Dietitian', ...more });
    expect((await set(0, { value: 0 })).body).toMatchObject({
      code: 'care-figure-not-valid',
      detail: expect.stringContaining('1 to 1000 days'),
    });
    expect((await set(0, { id: 'age.unicorn' })).body).toMatchObject({ code: 'care-figure-not-valid' });
    expect((await set(0, { by: ' ' })).status).toBe(422);
    const after = (await set(0, {})).body;
    expect(dry(after)).toMatchObject({ usual: 60, set: { value: 45, by: 'A. Dietitian', on: '2026-06-15' } });
    expect((await set(0, { value: 30 })).body).toMatchObject({ code: 'changed-meanwhile' });
    expect(dry((await set(after.version, { value: 30 })).body)).toMatchObject({ set: { value: 30 } });
    expect((await call('GET', '/clients')).body.map(({ id }: { id: string }) => id)).not.toContain('clinic-figures');
    const exported = (await call('GET', '/clients/export')).body;
    expect(exported.find(({ id }: { id: string }) => id === 'clinic-figures')?.figures).toHaveLength(2);
  });
});

describe('the lock', () => {
  const passphrase = 'correct horse battery';
  test('[SRV-13] a locked vault answers nothing; the passphrase opens it; a short one is refused', async () => {
    expect((await call('PUT', '/clients/passphrase', { next: 'short' })).body.code).toBe('passphrase-too-short');
    await call('PUT', '/clients/passphrase', { next: passphrase });
    await call('POST', '/clients/lock', { open: false });
    expect((await call('GET', '/clients/lock')).body).toMatchObject({ state: 'locked', hasPassphrase: true, idleMinutes: 15 });
    for (const path of ['/clients', '/clients/export', '/clients/health', '/clients/erased'])
      expect((await call('GET', path)).body.code, path).toBe('clients-locked');
    expect((await call('POST', '/clients/set-aside', { confirm: 'set aside what is damaged' })).body.code).toBe('clients-locked');
    expect((await call('PUT', '/clients/lock/idle', { minutes: 5 })).body.code).toBe('clients-locked');
    expect((await call('POST', '/clients/lock', { open: true, passphrase: 'wrong horse battery' })).body.code).toBe('passphrase-wrong');
    await call('POST', '/clients/lock', { open: true, passphrase });
    expect((await call('GET', '/clients')).body.length).toBeGreaterThan(5);
  });
  test('[SRV-13] what was left empty never takes the passphrase off; asked plainly it goes', async () => {
    expect((await call('PUT', '/clients/passphrase', { current: passphrase })).body.code).toBe('not-confirmed');
    expect((await call('PUT', '/clients/passphrase', { current: passphrase, next: '' })).body.code).toBe('passphrase-too-short');
    expect((await call('GET', '/clients/lock')).body.hasPassphrase).toBe(true);
    const off = await call('PUT', '/clients/passphrase', { current: passphrase, confirm: 'take the passphrase off' });
    expect(off.body).toMatchObject({ state: 'open', hasPassphrase: false });
    await call('PUT', '/clients/passphrase', { next: passphrase });
  });
  test('[SRV-13] minutes go from 1 to 120 and are kept', async () => {
    for (const minutes of [0, 121, 1.5, '5'])
      expect((await call('PUT', '/clients/lock/idle', { minutes })).body.code, String(minutes)).toBe('request-not-valid');
    expect((await call('PUT', '/clients/lock/idle', { minutes: 7 })).body.idleMinutes).toBe(7);
    expect((await call('GET', '/clients/lock')).body.idleMinutes).toBe(7);
  });
  test('[SRV-22] one client is erased by the name it goes by, and can be brought back until the lock', async () => {
    const { id, version } = (await call('POST', '/clients', { name: 'E. R.' })).body;
    const erase = (name: string, seen = version) => call('DELETE', `/clients/${id}`, { version: seen, name });
    expect((await erase('E. X.')).body.code).toBe('not-confirmed');
    expect((await erase('E. R.', 9)).body.code).toBe('changed-meanwhile');
    expect((await erase(' E. R. ')).status).toBe(200);
    expect((await call('GET', `/clients/${id}`)).body.code).toBe('client-not-found');
    expect((await call('GET', '/clients/erased')).body).toMatchObject([{ id, name: 'E. R.', until: '2026-06-15T12:10:00.000Z' }]);
    const back = (await call('POST', `/clients/${id}/bring-back`)).body;
    // A window that saw it before must not write over it unseen.
    expect(back).toEqual({ id, version: version + 1 });
    expect((await call('GET', `/clients/${id}`)).body.name).toBe('E. R.');
    expect((await call('GET', '/clients/erased')).body).toEqual([]);
    expect((await call('POST', `/clients/${id}/bring-back`)).body.code).toBe('client-not-found');
    await erase('E. R.', back.version);
    await call('POST', '/clients/lock', { open: false });
    await call('POST', '/clients/lock', { open: true, passphrase });
    expect((await call('GET', '/clients/erased')).body).toEqual([]);
    expect((await call('POST', `/clients/${id}/bring-back`)).body.code).toBe('client-not-found');
  });
  test('[SRV-13] everything is exported whole and erased whole; locked, that needs the passphrase', async () => {
    const exported = (await call('GET', '/clients/export')).body;
    expect(exported.length).toBeGreaterThan(5);
    expect((await call('DELETE', '/clients', { confirm: 'yes' })).body.code).toBe('request-not-valid');
    await call('POST', '/clients/lock', { open: false });
    expect((await call('DELETE', '/clients', { confirm: 'erase every client' })).body.code).toBe('passphrase-wrong');
    await call('DELETE', '/clients', { confirm: 'erase every client', passphrase });
    expect((await call('GET', '/clients')).body).toEqual([]);
  });
});
