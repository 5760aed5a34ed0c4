import { unzipSync } from 'fflate';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

type Server = Awaited<ReturnType<typeof testServer>>;
let server: Server;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());
const call = (...given: Parameters<Server['call']>) => server.call(...given);

async function someone(setting = 'ckd-not-on-dialysis'): Promise<{ id: string; version: number; name: string }> {
  const { body } = await call('GET', '/clients');
  return body.find((one: { setting?: string }) => one.setting === setting);
}
const sent = (version: number, more: object = {}) => ({
  version,
  kind: 'full',
  sections: [{ heading: 'Assessment', text: 'Salty soups twice a day.\nΔ weight ½ kg.' }],
  own: { statements: [], monitoring: [] },
  by: '',
  ...more,
});
const textOf = async (path: string): Promise<string> => (await call('GET', path)).body.text;

describe('notes for the chart', () => {
  test('[NOTE-25] a note is kept, listed, read, filed as DOCX and FHIR; a correction leaves it as it was', async () => {
    const { id, version, name } = await someone();
    const first = await call('POST', `/clients/${id}/notes`, sent(version, { by: 'Ottoline Farrowby, RDN' }));
    expect(first.status).toBe(200);
    const path = `/clients/${id}/notes/${first.body.id}`;
    const text = await textOf(path);
    expect(text).toContain('ASSESSMENT\nSalty soups twice a day.\nΔ weight ½ kg.\n');
    expect(text).toContain('By Ottoline Farrowby, RDN, 2026-06-15 12:00 UTC.');
    expect(text).toContain(name);
    const docx = await server.app.request(`http://127.0.0.1:4173/api${path}/docx`, { headers: { host: '127.0.0.1:4173' } });
    const xml = new TextDecoder().decode(unzipSync(new Uint8Array(await docx.arrayBuffer()))['word/document.xml']);
    expect(xml).toContain('Salty soups twice a day.');
    const fhir = (await call('GET', `${path}/fhir`)).body;
    expect(fhir).toMatchObject({ resourceType: 'DocumentReference', status: 'current', subject: { reference: `Patient/${id}` } });
    const held = Buffer.from(fhir.content[0].attachment.data, 'base64').toString();
    expect(held).toContain('Δ weight ½ kg.');
    expect(held).not.toContain(name);
    const second = await call(
      'POST',
      `/clients/${id}/notes`,
      sent(version + 1, { kind: 'lines', sections: [{ heading: 'Next', text: 'Call.' }], corrects: first.body.id }),
    );
    expect(second.status).toBe(200);
    expect((await call('GET', `/clients/${id}/notes`)).body).toMatchObject([
      { id: second.body.id, kind: 'lines', on: '2026-06-15', corrects: first.body.id, isCorrected: false },
      { id: first.body.id, kind: 'full', by: 'Ottoline Farrowby, RDN', isCorrected: true },
    ]);
    expect((await textOf(path)).startsWith(text.slice(0, text.indexOf('WRITTEN')))).toBe(true);
    expect((await call('GET', `${path}/fhir`)).body.status).toBe('superseded');
  });

  test('[NOTE-25] 50,000 characters stay to the letter; one more is refused, and nothing is kept', async () => {
    const { id, version } = await someone('hemodialysis');
    const half = 'ש'.repeat(25_000);
    const sections = (last: string) => [
      { heading: 'Assessment', text: half },
      { heading: 'Diagnosis', text: half + last },
    ];
    expect(await call('POST', `/clients/${id}/notes`, sent(version, { sections: sections('x') }))).toMatchObject({
      status: 413,
      body: { code: 'note-too-long', detail: 'A note holds up to 50000 characters; this one has 50001.' },
    });
    expect((await call('GET', `/clients/${id}/notes`)).body).toEqual([]);
    const kept = await call('POST', `/clients/${id}/notes`, sent(version, { sections: sections('') }));
    expect(kept.status).toBe(200);
    expect((await textOf(`/clients/${id}/notes/${kept.body.id}`)).match(/ש/gu)).toHaveLength(50_000);
    // As a draft it lies with the vault too.
    const draft = `/clients/${id}/drafts/note`;
    expect((await call('PUT', draft, { revision: null, value: { values: { text: half + half } } })).status).toBe(200);
    expect((await call('GET', draft)).body.draft.value.values.text).toHaveLength(50_000);
  });

  test('[NOTE-25] a heading of another kind, one twice, a note that is not there, another version: refused', async () => {
    const { id, version } = await someone('peritoneal-dialysis');
    const post = async (more: object) => (await call('POST', `/clients/${id}/notes`, sent(version, more))).body.code;
    const section = (heading: string) => ({ heading, text: 'x' });
    expect(await post({ sections: [section('Next')] })).toBe('request-not-valid');
    expect(await post({ sections: [section('Diagnosis'), section('Diagnosis')] })).toBe('request-not-valid');
    expect(await post({ sections: [] })).toBe('request-not-valid');
    const unknown = '0d6f9a52-7a3e-4a4e-8a54-0f1f0c2e7c1f';
    expect(await post({ corrects: unknown })).toBe('request-not-valid');
    expect(await post({ version: version + 1 })).toBe('changed-meanwhile');
    expect(await call('GET', `/clients/${id}/notes/${unknown}`)).toMatchObject({ status: 404, body: { code: 'note-not-found' } });
    const { id: unassessed, version: first } = (await call('POST', '/clients', { name: 'N. N.' })).body;
    expect((await call('POST', `/clients/${unassessed}/notes`, sent(first))).body.code).toBe('assessment-not-valid');
    expect((await call('GET', `/clients/${unassessed}/note-to-write`)).body.code).toBe('assessment-not-valid');
  });

  test('[NOTE-24] what is written from: each kind by its headings, goals to ask about, own sentences of the last note', async () => {
    const { id, version } = await someone('transplant');
    const before = (await call('GET', `/clients/${id}/note-to-write`)).body;
    expect(Object.keys(before.kinds)).toEqual(['full', 'interval', 'lines']);
    expect(before.kinds.lines.sections.map(({ heading }: { heading: string }) => heading)).toEqual(['State', 'Decided', 'Next']);
    expect(before.own).toEqual({ statements: [], monitoring: [] });
    const own = { statements: ['Little time to cook.'], monitoring: ['Weigh on Mondays.'] };
    await call('POST', `/clients/${id}/notes`, sent(version, { own }));
    expect((await call('GET', `/clients/${id}/note-to-write`)).body.own).toEqual(own);
    expect(await textOf(`/clients/${id}/note?kind=lines`)).toMatch(/^Nutrition note in three lines, /);
    expect((await call('GET', `/clients/${id}/note?kind=short`)).status).toBe(422);
  });

  test('[NOTE-26] a name from right to left, and signs that would act on the reader, in what is read back', async () => {
    const { id } = (await call('POST', '/clients', { name: 'דנה לוי' })).body;
    const source = await someone('transplant');
    const { assessment } = (await call('GET', `/clients/${source.id}`)).body;
    const { version } = (await call('POST', `/clients/${id}/assessments`, { version: 1, assessment })).body;
    const { body } = await call(
      'POST',
      `/clients/${id}/notes`,
      sent(version, { sections: [{ heading: 'Assessment', text: 'a\u0000b\u202Ec' }] }),
    );
    const text = await textOf(`/clients/${id}/notes/${body.id}`);
    expect(text).toContain('Nutrition note, \u2068דנה לוי\u2069, 2026-06-15');
    expect(text).toContain('a b c');
  });
});
