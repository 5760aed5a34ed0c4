import { inClear } from './clearText.ts';
import type { Home, Program } from './program.ts';
import type { Tally } from './tally.ts';

/** Stands in every word of the invented clients and in their passphrases, and nowhere else in the world. */
export const mark = 'Zyqvorthumbel';
export const passphrase = `${mark} counts herons at dusk`;

/** Clients with every kind of field that holds words: assessed, signed for, told of, with meals and a handout. Gives their ids. */
export async function addMarkedClients(program: Program, count: number): Promise<readonly string[]> {
  const ids: string[] = [];
  for (let index = 0; index < count; index += 1) ids.push(await addMarkedClient(program, `${mark} ${index}`));
  return ids;
}

async function addMarkedClient(program: Program, name: string): Promise<string> {
  const { id, version } = await program.done('POST', '/clients', { name });
  const path = `/clients/${id}`;
  let client = await program.done('POST', `${path}/assessments`, { version, assessment });
  const targets = client.targets.map(({ item, range, limit, says }: Record<string, unknown>) => ({
    item,
    from: 'proposal',
    says,
    ...(range === undefined ? {} : { range, limit }),
  }));
  const signing = { version: client.version, assessmentId: client.assessmentId, targets, by: `${mark} signs`, credentials: 'RDN' };
  client = await program.done('POST', `${path}/prescriptions`, signing);
  const contact = { version: client.version, cautionId: 'potassium-6.5', told: `Nurse ${mark}`, note: `${mark} was called` };
  client = await program.done('POST', `${path}/contacts`, contact);
  client = await program.done('PUT', `${path}/meals`, { version: client.version, pattern: [{ name: `${mark} tea`, percent: 100 }] });
  await program.done('PUT', `${path}/handout`, { version: client.version, handout });
  await program.done('PUT', `${path}/drafts/assessment`, { revision: null, value: { goals: `${mark} is half typed` } });
  return id;
}

const today = new Date().toISOString().slice(0, 10);
const assessment = {
  on: today,
  sex: 'female',
  age: { years: 64 },
  treatment: { setting: 'hemodialysis', place: 'in-center', startedOn: '2024-01-10' },
  diabetes: false,
  height: { feet: 5, inches: 5 },
  weighings: [{ weight: { value: 154, unit: 'lb' }, kind: 'dry', on: today }],
  labs: [{ analyte: 'potassium', value: 6.8, unit: 'mmol/L', takenOn: today }],
  conditions: [],
  medicines: [],
  supplements: [],
  symptoms: [],
  allergies: [`${mark} nuts`],
  avoidedFoods: [`${mark} garlic`],
  foodAccess: `${mark} has no stove`,
  goals: [`${mark} wants soup`],
};

/** What is written for a client's handout, on the shelf of the demo. */
export const handout = {
  language: 'en',
  author: { name: `${mark} writes`, credentials: 'RDN' },
  categories: [{ category: 'sandwich slices', plateId: 'slices-on-low-sodium-bread', meal: `${mark} tea`, aisle: 'Deli counter' }],
};

/** Looks through everything that the program could have written for a client's words. */
export function lookForClients(home: Home, ids: readonly string[], tally: Tally, said = ''): void {
  const { files, hits } = inClear([home.root], [mark, ...ids]);
  tally.filesRead += files;
  for (const hit of hits) tally.miss('inClear', hit);
  if (said.includes(mark)) tally.miss('inClear', 'in what the program said');
}
