import { strFromU8, unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openClientVault } from '#adapters/clients/sqliteVault.ts';
import { testServer } from './testWorld.fixture.ts';

/** What must stand, by item: in note, document and FHIR; in the handout in English; in Spanish. An empty handout text: no line at all. */
type Said = readonly [note: string, en: string, es: string];
type Given = { readonly kind?: string; readonly range?: readonly [number, number | null]; readonly limit?: string };
type Row = readonly [item: string, given: Given, said: Said];

const between = (lo: number, hi: number): Given => ({ range: [lo, hi], limit: 'within' });
const upTo = (hi: number): Given => ({ range: [0, hi], limit: 'at-most' });
const atLeast = (lo: number): Given => ({ range: [lo, null], limit: 'at-least' });
const exactly = (value: number): Given => between(value, value);

const noLimit: Given = { kind: 'no-limit' };
const withheld: Given = { kind: 'withheld' };
const items = [
  'energy',
  'protein',
  'sodium',
  'potassium',
  'phosphorus',
  'calcium',
  'fluid',
  'fiber',
  'phosphateAdditives',
  'potassiumAdditives',
];
const additives: readonly Row[] = [
  [
    'phosphateAdditives',
    upTo(0),
    [
      'Phosphate additives: none named on the label',
      'Phosphate additives: none named on the label.',
      'Aditivos de fosfato: ninguno nombrado en la etiqueta.',
    ],
  ],
  [
    'potassiumAdditives',
    upTo(0),
    [
      'Potassium additives: none named on the label',
      'Potassium additives: none named on the label.',
      'Aditivos de potasio: ninguno nombrado en la etiqueta.',
    ],
  ],
];
const fluidMost: Row = [
  'fluid',
  upTo(1000),
  [
    'Fluid: at most 1000 mL (4 cups, 33 fl oz)',
    'Fluid: up to 1,000 mL (4 cups, or 33 fluid ounces) a day.',
    'Líquidos: hasta 1,000 mL (4 tazas, o 33 onzas líquidas) al día.',
  ],
];
const fluidLeast: Row = [
  'fluid',
  atLeast(2500),
  [
    'Fluid: at least 2500 mL (10½ cups, 85 fl oz)',
    'Fluid: at least 2,500 mL (10½ cups, or 85 fluid ounces) a day.',
    'Líquidos: al menos 2,500 mL (10½ tazas, o 85 onzas líquidas) al día.',
  ],
];

const forms: Readonly<Record<string, readonly Row[]>> = {
  range: [
    [
      'energy',
      between(1800, 2100),
      ['Energy: 1800 – 2100 kcal', 'Calories: 1,800 to 2,100 kcal a day.', 'Calorías: de 1,800 a 2,100 kcal al día.'],
    ],
    ['protein', between(69.85, 83.82), ['Protein: 69.8 – 83.9 g', 'Protein: 70 to 83 g a day.', 'Proteína: de 70 a 83 g al día.']],
    ['sodium', between(1500, 2000), ['Sodium: 1500 – 2000 mg', '1,500 to 2,000 mg', 'de 1,500 a 2,000 mg']],
    ['potassium', between(2000, 3000), ['Potassium: 2000 – 3000 mg', '2,000 to 3,000 mg', 'de 2,000 a 3,000 mg']],
    ['phosphorus', between(800, 1000), ['Phosphorus: 800 – 1000 mg', '800 to 1,000 mg', 'de 800 a 1,000 mg']],
    ['calcium', between(800, 1000), ['Calcium: 800 – 1000 mg', '800 to 1,000 mg a day.', 'de 800 a 1,000 mg al día.']],
    fluidMost,
    ['fiber', between(25, 38), ['Fiber: 25 – 38 g', 'Fiber: 25 to 38 g a day.', 'Fibra: de 25 a 38 g al día.']],
    ...additives,
  ],
  'at most': [
    ['energy', upTo(2100), ['Energy: at most 2100 kcal', 'Calories: up to 2,100 kcal a day.', 'Calorías: hasta 2,100 kcal al día.']],
    ['protein', upTo(55.88), ['Protein: at most 55.8 g', 'Protein: up to 55 g a day.', 'Proteína: hasta 55 g al día.']],
    ['sodium', upTo(2000), ['Sodium: at most 2000 mg', 'Sodium: up to', 'Sodio: hasta']],
    ['potassium', upTo(2400), ['Potassium: at most 2400 mg', 'Potassium: up to', 'Potasio: hasta']],
    ['phosphorus', upTo(900), ['Phosphorus: at most 900 mg', 'Phosphorus: up to', 'Fósforo: hasta']],
    ['calcium', upTo(1200), ['Calcium: at most 1200 mg', 'up to 1,200 mg a day.', 'hasta 1,200 mg al día.']],
    fluidMost,
    ['fiber', upTo(30), ['Fiber: at most 30 g', 'Fiber: up to 30 g a day.', 'Fibra: hasta 30 g al día.']],
    ...additives,
  ],
  'at least': [
    [
      'energy',
      atLeast(1746.33),
      ['Energy: at least 1747 kcal', 'Calories: at least 1,747 kcal a day.', 'Calorías: al menos 1,747 kcal al día.'],
    ],
    ['protein', atLeast(98), ['Protein: at least 98 g', 'Protein: at least 98 g a day.', 'Proteína: al menos 98 g al día.']],
    ['sodium', atLeast(2000), ['Sodium: at least 2000 mg', 'Sodium: at least 2,000 mg a day.', 'Sodio: al menos 2,000 mg al día.']],
    [
      'potassium',
      atLeast(3000),
      ['Potassium: at least 3000 mg', 'Potassium: at least 3,000 mg a day.', 'Potasio: al menos 3,000 mg al día.'],
    ],
    ['phosphorus', atLeast(700), ['Phosphorus: at least 700 mg', 'Phosphorus: at least 700 mg a day.', 'Fósforo: al menos 700 mg al día.']],
    ['calcium', atLeast(1000), ['Calcium: at least 1000 mg', 'at least 1,000 mg a day.', 'al menos 1,000 mg al día.']],
    fluidLeast,
    ['fiber', atLeast(25), ['Fiber: at least 25 g', 'Fiber: at least 25 g a day.', 'Fibra: al menos 25 g al día.']],
    ...additives,
  ],
  'single figure': [
    ['energy', exactly(1900), ['Energy: 1900 kcal', 'Calories: about 1,900 kcal a day.', 'Calorías: cerca de 1,900 kcal al día.']],
    ['protein', exactly(55.9), ['Protein: 55.9 g', 'Protein: about 56 g a day.', 'Proteína: cerca de 56 g al día.']],
    ['sodium', exactly(1900), ['Sodium: 1900 mg', 'Sodium: up to', 'Sodio: hasta']],
    ['potassium', exactly(2300), ['Potassium: 2300 mg', 'Potassium: up to', 'Potasio: hasta']],
    ['phosphorus', exactly(850), ['Phosphorus: 850 mg', 'Phosphorus: up to', 'Fósforo: hasta']],
    ['calcium', exactly(950), ['Calcium: 950 mg', 'up to 950 mg a day.', 'hasta 950 mg al día.']],
    fluidLeast,
    ['fiber', exactly(28), ['Fiber: 28 g', 'Fiber: about 28 g a day.', 'Fibra: cerca de 28 g al día.']],
    ...additives,
  ],
};

const noteNames = [
  'Energy',
  'Protein',
  'Sodium',
  'Potassium',
  'Phosphorus',
  'Calcium',
  'Fluid',
  'Fiber',
  'Phosphate additives',
  'Potassium additives',
];
const without = (given: Given, words: string): readonly Row[] =>
  items.map((item, at): Row => [item, given, [`${noteNames[at]}: ${words}`, '', '']]);
const all: Readonly<Record<string, readonly Row[]>> = {
  ...forms,
  withheld: without(withheld, 'no figure set: to be checked'),
  'no limit': without(noLimit, 'no limit set'),
};

const assessment = {
  on: '2026-06-15',
  sex: 'female',
  age: { years: 64 },
  treatment: { setting: 'hemodialysis', place: 'in-center', startedOn: '2024-01-10' },
  diabetes: false,
  weighings: [{ weight: { value: 70, unit: 'kg' }, kind: 'dry', on: '2026-06-10' }],
  labs: [],
  conditions: [],
  medicines: [],
  supplements: [],
  symptoms: [],
  allergies: [],
  avoidedFoods: [],
  goals: [],
};
const neverPrinted = /Infinity|null|NaN|9007199254740991|undefined/;
const headers = { host: '127.0.0.1:4173' };

let server: Awaited<ReturnType<typeof testServer>>;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());

async function textAt(path: string): Promise<string> {
  return (await server.app.request(`http://127.0.0.1:4173/api${path}`, { headers })).text();
}

/** The words of a page, markup taken off. */
function words(markup: string): string {
  return markup
    .replace(/<style[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ');
}

async function signed(rows: readonly Row[]) {
  const { id, version } = (await server.call('POST', '/clients', { name: 'T. T.' })).body;
  const assessed = (await server.call('POST', `/clients/${id}/assessments`, { version, assessment })).body;
  const targets = rows.map(([item, given]) => ({ item, ...given, from: 'own', reason: 'as agreed', says: 'set by the dietitian' }));
  const draft = { version: assessed.version, assessmentId: assessed.assessmentId, targets, by: 'A. Dietitian', credentials: 'RDN' };
  return server.call('POST', `/clients/${id}/prescriptions`, draft);
}

describe('what is signed is what is printed', () => {
  test.each(Object.entries(all))('[CLT-50] %s: the same in note, document, FHIR and handout, in both languages', async (_, rows) => {
    const { status, body } = await signed(rows);
    expect(status, JSON.stringify(body)).toBe(200);
    const { id } = body;
    const note = (await server.call('GET', `/clients/${id}/note`)).body.text;
    const docx = await server.app.request(`http://127.0.0.1:4173/api/clients/${id}/note-docx`, { headers });
    const document = words(strFromU8(unzipSync(new Uint8Array(await docx.arrayBuffer()))['word/document.xml']!));
    const fhir = JSON.stringify((await server.call('GET', `/clients/${id}/fhir`)).body);
    const handout = async (language: string) => {
      const draft = { language, author: { name: 'A. Dietitian' }, parts: ['numbers'], notes: [] };
      const told = (await server.call('POST', `/clients/${id}/handout`, { handout: draft })).body;
      return words(await textAt(`/client-previews/${told.previewId}`));
    };
    const [en, es] = [await handout('en'), await handout('es')];
    for (const [, , [inNote, inEnglish, inSpanish]] of rows) {
      expect(note).toContain(inNote);
      expect(document).toContain(inNote.replace(': ', ' '));
      expect(fhir).toContain(inNote);
      expect(en).toContain(inEnglish);
      expect(es).toContain(inSpanish);
    }
    if (rows.every(([, { range }]) => range === undefined)) {
      expect(en).not.toMatch(/no limit|\d (?:mg|g|mL|kcal) a day/);
      expect(es).not.toMatch(/ningún límite|sin límite|\d (?:mg|g|mL|kcal) al día/);
    }
    for (const text of [note, document, fhir, en, es]) expect(text).not.toMatch(neverPrinted);
    expect(
      JSON.stringify(body.prescriptions.map(({ targets }: { targets: { figure: string }[] }) => targets.map(one => one.figure))),
    ).not.toMatch(neverPrinted);
  });

  test('[CLT-50] what is kept reads the same after the vault was opened anew', async () => {
    const { body } = await signed(forms['at least']!);
    const before = (await server.call('GET', `/clients/${body.id}`)).body.prescriptions;
    await server.vault.close();
    const vault = await openClientVault(server.folder, { n: 2 ** 10, r: 8, p: 1 });
    const kept = JSON.stringify(await vault.get(body.id));
    expect(kept).toContain('"range":[98,null]');
    expect(kept).not.toMatch(/Infinity|9007199254740991/);
    await vault.close();
    expect(before[0].targets[1]).toMatchObject({ item: 'protein', kind: 'bounded', range: [98, null], figure: 'at least 98 g a day' });
  });
});
