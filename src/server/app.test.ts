import { join } from 'node:path';
import SqliteDatabase from 'better-sqlite3';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { inline, sheetData, workbookFile } from '#adapters/files/workbook.fixture.ts';
import { pictures } from '#app/pictures.fixture.ts';
import { testServer } from './testWorld.fixture.ts';

type Server = Awaited<ReturnType<typeof testServer>>;
let server: Server;
beforeAll(async () => {
  server = await testServer();
});
afterAll(() => server.close());
const call = (...given: Parameters<Server['call']>) => server.call(...given);
const sendTable = (...given: Parameters<Server['sendTable']>) => server.sendTable(...given);
const survey = { category: 'sandwich slices', plate: 'slices-on-low-sodium-bread', yardstick: 'low-in-sodium-as-eaten' };

describe('who is let in', () => {
  test.each(['evil.example', '127.0.0.1.evil.example', '192.168.0.2:4173'])('[SRV-1] Host %s is refused', async host => {
    expect((await call('GET', '/workspace', undefined, { host })).body).toMatchObject({
      code: 'origin-refused',
      status: 403,
    });
  });
  test.each(['localhost:4173', '127.0.0.1:9', '[::1]:4173'])('[SRV-1] Host %s is answered', async host => {
    expect((await call('GET', '/workspace', undefined, { host })).status).toBe(200);
  });
  test('[SRV-2] a page elsewhere can neither read nor change anything', async () => {
    for (const headers of [
      { origin: 'http://evil.example' },
      { origin: 'null' },
      { origin: 'http://127.0.0.1:9999' },
      { 'sec-fetch-site': 'cross-site' },
    ]) {
      expect((await call('DELETE', '/demo', undefined, headers)).body.code).toBe('origin-refused');
    }
    expect((await call('GET', '/workspace')).body.foods).toBe(72);
    expect((await call('POST', '/survey', survey, { origin: 'http://127.0.0.1:4173', 'sec-fetch-site': 'same-origin' })).status).toBe(200);
  });
  test('[SRV-2] a form of another page cannot pass for JSON', async () => {
    // What a browser sends for another page without asking first (Fetch, "CORS-safelisted request-header"): a field's name and value can be JSON together.
    const json = JSON.stringify({ label: { name: 'Ham', panel: {} } });
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=b'])
      expect([type, (await call('POST', '/foods', json, { 'content-type': type })).body.code]).toEqual([type, 'request-not-valid']);
    expect((await call('GET', '/workspace')).body.foods).toBe(72);
  });
  test('[SRV-3] every answer forbids what is not its own', async () => {
    for (const path of ['/workspace', '/nothing-here']) {
      const { headers } = await call('GET', path);
      expect(headers.get('content-security-policy')).toContain("default-src 'none'");
      expect(headers.get('content-security-policy')).not.toContain('unsafe');
      expect(headers.get('x-content-type-options')).toBe('nosniff');
    }
  });
});

describe('faults', () => {
  test('[SRV-4] are problem details with the next step', async () => {
    const { status, headers, body } = await call('GET', '/foods/nobody');
    expect([status, headers.get('content-type')]).toEqual([404, 'application/problem+json']);
    expect(body).toMatchObject({
      code: 'food-not-found',
      title: 'Food not found',
      status: 404,
      nextStep: expect.stringContaining('Foods'),
    });
    expect((await call('GET', '/nothing-here')).body.code).toBe('not-found');
  });
  test('[SRV-5] a body that does not fit names the places', async () => {
    expect((await call('POST', '/survey', { category: 1 })).body).toMatchObject({
      code: 'request-not-valid',
      detail: expect.stringContaining('category'),
    });
    expect((await call('POST', '/survey', '{"category":')).body.code).toBe('request-not-valid');
    expect((await call('DELETE', '/workspace', { confirm: 'yes' })).body.code).toBe('request-not-valid');
    expect((await call('POST', '/survey', { ...survey, plate: 'nobody' })).body.code).toBe('plate-not-found');
    expect((await call('POST', '/survey', { ...survey, yardstick: { id: 'x' } })).body.code).toBe('yardstick-not-valid');
    expect((await call('POST', '/survey', { ...survey, setting: 'pregnancy' })).body.code).toBe('request-not-valid');
  });
  test('[SRV-5] a body too large is refused', async () => {
    const answer = await call('POST', '/imports/look', { fileName: 'big.csv', text: 'x'.repeat(71 * 2 ** 20) });
    expect(answer.body.code).toBe('request-too-large');
  });
  test('[SRV-4] what was not foreseen gets a number; log and answer hold nothing that was typed', async () => {
    const broken = await testServer(false);
    // What a database says may quote what it was given, as PostgreSQL does of its own accord; a line of it may look like one of a stack.
    const file = new SqliteDatabase(join(broken.folder, 'platewright.sqlite'));
    file.exec(`create trigger quotes before insert on labels begin select raise(abort, json_extract(new.printed, '$.statement')); end`);
    file.close();
    const statement = 'WATER, quillfeather\n    at persephone (broth.ts:7:31)\nat last';
    const { status, headers, body } = await broken.call('POST', '/foods', { label: { name: 'Broth', statement, panel: {} } });
    expect([status, headers.get('content-type'), body.code]).toEqual([500, 'application/problem+json', 'program-fault']);
    const logged = broken.logged.join('');
    const [, number] = /^fault ([0-9a-f]{8}): \w+\n +at /.exec(logged)!;
    expect(body.detail).toBe(`Note the number ${number}.`);
    expect(logged + JSON.stringify(body)).not.toMatch(/quillfeather|persephone|last/);
    await broken.close();
  });
  test('[SRV-6] every call that is answered is described, and nothing else', async () => {
    const { body } = await call('GET', '/openapi.json');
    expect(body.openapi).toBe('3.1.0');
    const described = Object.entries<object>(body.paths).flatMap(([path, methods]) =>
      Object.keys(methods).map(method => `${method.toUpperCase()} ${path}`),
    );
    const answered = server.outside.routes
      .filter(({ method, path }) => method !== 'ALL' && path.startsWith('/api/') && path !== '/api/openapi.json')
      .map(({ method, path }) => `${method} ${path.replace(/:(\w+)/g, '{$1}')}`);
    expect(described.length).toBeGreaterThan(80);
    expect(described.sort()).toEqual([...new Set(answered)].sort());
  });
});

describe('what changed since the label before', () => {
  test('[SRV-21] is told where the label before was corrected as well', async () => {
    const label = {
      name: 'Barley broth',
      serving: { grams: 240 },
      panel: { energyKcal: 90, sodiumMg: 140 },
      statement: 'Water, barley, potassium phosphate.',
    };
    const { id, version } = (await call('POST', '/foods', { label })).body;
    const [first] = (await call('GET', `/foods/${id}`)).body.history;
    const mended = { ...label, panel: { energyKcal: 95, sodiumMg: 140 } };
    const correction = { version, label: mended, kind: 'correction', correctsLabelId: first.id, reason: 'misread' };
    const corrected = (await call('POST', `/foods/${id}/labels`, correction)).body;
    const newer = { ...mended, panel: { energyKcal: 95, sodiumMg: 95 }, statement: 'Water, barley.' };
    await call('POST', `/foods/${id}/labels`, { version: corrected.version, label: newer });
    const [now] = (await call('GET', `/foods/${id}`)).body.history;
    expect(now.changes.outcome).toBe('changed');
    expect(now.changes.sentences.join(' ')).toMatch(/sodium.*potassium phosphate/is);
  });
});

describe('two windows', () => {
  test('[STO-5] a saved survey and a recheck day that were changed meanwhile are told', async () => {
    const saved = { title: 'Mine', category: 'soup', plateId: 'p', yardstickId: 'y' };
    const put = (version: number | null, title: string) => call('PUT', '/surveys/mine', { version, survey: { ...saved, title } });
    expect((await put(null, 'Mine')).body).toEqual({ survey: { ...saved, id: 'mine', title: 'Mine', switchedOn: [] }, version: 1 });
    expect((await put(1, 'Ours')).body.version).toBe(2);
    expect(await put(1, 'Lost')).toMatchObject({ status: 409, body: { code: 'changed-meanwhile' } });
    expect((await call('GET', '/surveys')).body.map(({ survey: one }: { survey: { title: string } }) => one.title)).toEqual(['Ours']);
    expect((await call('DELETE', '/surveys/mine?version=1')).status).toBe(409);
    expect((await call('DELETE', '/surveys/mine?version=2')).status).toBe(200);
    expect((await call('GET', '/surveys')).body).toEqual([]);

    const [{ id }] = (await call('GET', '/foods?search=beef')).body;
    const [label] = (await call('GET', `/foods/${id}`)).body.history;
    const seenDueOn = label.recheckOn ?? null;
    const set = (dueOn: string | null, seen: string | null) => call('PUT', `/labels/${label.id}/recheck`, { seenDueOn: seen, dueOn });
    expect((await set('2027-03-01', seenDueOn)).body).toEqual({ dueOn: '2027-03-01' });
    expect(await set('2027-04-01', seenDueOn)).toMatchObject({ status: 409, body: { code: 'changed-meanwhile' } });
    expect((await call('GET', `/foods/${id}`)).body.history[0].recheckOn).toBe('2027-03-01');
    expect((await set(seenDueOn, '2027-03-01')).status).toBe(200);
  });
});

describe('surveys', () => {
  test('[SRV-7] the demo: counts, the food that misses by 10 mg and its way in', async () => {
    const { body } = await call('POST', '/survey', survey);
    expect(body.counts).toEqual({ fits: 14, nearly: 3, over: 13, "can't tell": 1 });
    const beef = body.rows.find(({ name }: { name: string }) => name === 'Beef, reduced sodium');
    expect(beef).toMatchObject({
      verdict: 'nearly',
      margin: '10 mg over',
      energyKcal: 80,
      sodiumMg: 230,
      additives: [
        { class: 'phosphate', isCertain: true },
        { class: 'potassium', isCertain: true },
      ],
    });
    const [detail] = (await call('POST', '/survey/foods', { ...survey, foodIds: [beef.foodId] })).body;
    expect(detail.waysIn[0].what).toContain('52 g');
    expect(detail.why).toContain('common practice, no source');
  });
  test('[SRV-7] further columns, another portion, the same survey as CSV', async () => {
    const asked = { ...survey, columns: ['potassiumMg', 'phosphorusMg'], portion: { servings: 0.5 } };
    const { body } = await call('POST', '/survey', asked);
    const beef = body.rows.find(({ name }: { name: string }) => name === 'Beef, reduced sodium');
    // Half of 410 mg, a multiple of 10; nobody prints phosphorus, and what is not printed is unknown.
    expect(beef).toMatchObject({
      verdict: 'fits',
      sodiumMg: 115,
      columns: [
        { text: '205 mg', low: 205 },
        { text: 'not on the label', low: null },
      ],
    });
    const answer = await server.app.request('http://127.0.0.1:4173/api/survey/csv', {
      method: 'POST',
      headers: { host: '127.0.0.1:4173', 'content-type': 'application/json' },
      body: JSON.stringify(asked),
    });
    const lines = (await answer.text()).trimEnd().split('\n');
    expect(answer.headers.get('content-type')).toBe('text/csv; charset=utf-8');
    expect(lines).toHaveLength(1 + body.rows.length);
    expect(lines.find(line => line.startsWith('"Beef, reduced sodium"') || line.includes('Beef, reduced sodium'))).toContain('fits');
  });
  test('[SRV-11] unprinted minerals are estimated in the background, marked as estimated, and judged only by a test that says so', async () => {
    const asked = { ...survey, columns: ['phosphorusMg'] };
    const first = (await call('POST', '/survey', asked)).body;
    expect(first.estimating.of).toBe(31);
    await expect
      .poll(async () => (await call('POST', '/survey', asked)).body.estimating, { timeout: 90_000 })
      .toEqual({ done: 31, of: 31 });
    const { body } = await call('POST', '/survey', asked);
    const beef = body.rows.find(({ name }: { name: string }) => name === 'Beef, reduced sodium');
    expect(beef.columns[0].text).toMatch(/^estimated \d+ – \d+ mg$/);
    const csv = await server.app.request('http://127.0.0.1:4173/api/survey/csv', {
      method: 'POST',
      headers: { host: '127.0.0.1:4173', 'content-type': 'application/json' },
      body: JSON.stringify(asked),
    });
    const line = (await csv.text()).split('\n').find(one => one.includes('Beef, reduced sodium'));
    expect(line?.trimEnd()).toMatch(/,estimated \d+–\d+$/);
    const test = (useEstimates: boolean) => ({
      id: 'own',
      title: 'little phosphorus',
      purpose: 'A bound of one’s own.',
      settings: 'any',
      classScales: [],
      cautions: [],
      tests: [
        {
          id: 'phosphorus',
          basis: 'as-eaten',
          measure: { kind: 'nutrient', nutrient: 'phosphorusMg' },
          atMost: 1_000,
          useEstimates,
          source: { kind: 'clinic', text: 'own clinic' },
        },
      ],
    });
    const judged = async (useEstimates: boolean) =>
      (await call('POST', '/survey', { ...survey, yardstick: test(useEstimates) })).body.rows.find(
        ({ foodId }: { foodId: string }) => foodId === beef.foodId,
      );
    expect(await judged(true)).toMatchObject({ verdict: 'fits', estimated: true });
    expect(await judged(false)).toMatchObject({ verdict: "can't tell", estimated: false });
  });
  test('[SRV-11] the minerals of a food: sure and likely, from additives, why, and what to ask', async () => {
    const [beef] = (await call('GET', '/foods?search=beef%20reduced')).body;
    const { body } = await call('GET', `/foods/${beef.id}/minerals`);
    const [phosphorus, potassium] = body.minerals;
    expect(phosphorus.sureMg[0]).toBeLessThanOrEqual(phosphorus.likelyMg[0]);
    expect(phosphorus.likelyMg[2]).toBeLessThanOrEqual(phosphorus.sureMg[1]);
    // 21 CFR 424.21(c): phosphates at most 0.5 % of 56 g; no sodium phosphate holds more than 31 % phosphorus (sheet, 4).
    expect(phosphorus.added.sureMg[1]).toBeLessThanOrEqual(56 * 0.005 * 310 + 1);
    // The panel prints 410 mg potassium, 405 up to 415.
    expect(potassium.sureMg[0]).toBeGreaterThanOrEqual(404);
    expect(potassium.sureMg[1]).toBeLessThanOrEqual(416);
    expect(body.sentences.join(' ')).toContain('Sodium phosphates can add at most');
    expect(body.question).toContain('sodium phosphates');
    expect((await call('GET', '/foods/nobody/minerals')).body.code).toBe('food-not-found');
  });
  test('[SRV-8] the line moves with the companion', async () => {
    expect((await call('POST', '/survey', survey)).body.rule).toEqual({ slope: 1, offset: 140, slack: 10 });
    expect((await call('POST', '/survey', { ...survey, plate: 'on-its-own' })).body.rule).toEqual({ slope: 1, offset: 0, slack: 10 });
    expect((await call('POST', '/survey', { ...survey, yardstick: 'no-phosphate-additives' })).body.rule).toBeNull();
  });
  test('[SRV-7] what is not known is drawn nowhere and judged as can’t tell', async () => {
    const { body } = await call('POST', '/survey', survey);
    expect(body.rows.filter(({ verdict }: { verdict: string }) => verdict === "can't tell")).toMatchObject([
      { sodiumMg: null, margin: expect.stringContaining('sodium') },
    ]);
  });
  test('[SRV-7] the portion slider tips where the closed form says', async () => {
    const [beef] = (await call('GET', '/foods?search=beef%20reduced')).body;
    const { body } = await call('POST', '/food-portions', { foodId: beef.id, plate: survey.plate, yardstick: survey.yardstick });
    expect(body.tippingGrams).toBe(52);
    const small = body.steps.filter(({ grams }: { grams: number }) => grams <= 52);
    expect(small.length).toBeGreaterThan(5);
    expect(new Set(small.map(({ verdict }: { verdict: string }) => verdict))).toEqual(new Set(['fits']));
    expect(body.steps.find(({ grams }: { grams: number }) => grams === 56).verdict).toBe('nearly');
  });
});

describe('foods and labels', () => {
  const label = {
    name: 'Test ham',
    maker: 'Nobody',
    serving: { household: '2 slices', grams: 56 },
    panel: { energyKcal: 70, sodiumMg: '145 mg' },
    statement: 'HAM, WATER, SODIUM PHOSPHATES',
  };
  test('[SRV-7] a draft is read and nothing is kept', async () => {
    const before = (await call('GET', '/workspace')).body.revision;
    const { body } = await call('POST', '/labels/read', { label });
    expect(body.findings[0].code).toBe('not-a-us-print');
    expect(body.additives[0]).toMatchObject({ name: 'sodium phosphates', counts: true, start: 12 });
    expect(body.amounts.find(({ nutrient }: { nutrient: string }) => nutrient === 'phosphorusMg').text).toBe('not on the label');
    expect((await call('GET', '/workspace')).body.revision).toBe(before);
  });
  test('a food, a newer label, a correction, a withdrawal; two tabs are told of each other', async () => {
    const { body: added } = await call('POST', '/foods', { label });
    const newer = { version: added.version, label: { ...label, panel: { energyKcal: 70, sodiumMg: 300 } } };
    expect((await call('POST', `/foods/${added.id}/labels`, newer)).body.version).toBe(2);
    expect((await call('POST', `/foods/${added.id}/labels`, newer)).body.code).toBe('changed-meanwhile');
    const food = (await call('GET', `/foods/${added.id}`)).body;
    expect(food.history).toHaveLength(2);
    expect(food.history[0].changes.sentences).toContain('Sodium: 145 mg before, 300 mg now.');
    expect((await call('POST', `/foods/${added.id}/labels`, { version: 2, label, kind: 'correction' })).body.code).toBe(
      'request-not-valid',
    );
    await call('POST', `/labels/${food.history[0].id}/withdraw`, { version: 2, reason: 'another food' });
    const after = (await call('GET', `/foods/${added.id}`)).body;
    expect(after.history.map(({ stands }: { stands: boolean }) => stands)).toEqual([false, true]);
    expect(after.sodiumMg).toBe(145);
  });
  test('[SRV-5] a label without a name, and one that is none, are refused', async () => {
    expect((await call('POST', '/foods', { label: { panel: { sodiumMg: 1 } } })).body.code).toBe('label-not-readable');
    expect((await call('POST', '/foods', { label: { name: 'x', market: 'moon', panel: {} } })).body.code).toBe('label-not-readable');
  });
  test('a photo is kept as evidence and served as what it is', async () => {
    const [beef] = (await call('GET', '/foods?search=beef%20reduced')).body;
    const { history } = (await call('GET', `/foods/${beef.id}`)).body;
    const bytes = pictures.png;
    const kept = await server.app.request(`http://127.0.0.1:4173/api/labels/${history[0].id}/photos`, {
      method: 'POST',
      headers: { host: '127.0.0.1:4173', 'content-type': 'image/png' },
      body: bytes,
    });
    const { id } = (await kept.json()) as { id: string };
    const photo = await server.app.request(`http://127.0.0.1:4173/api/photos/${id}`, { headers: { host: '127.0.0.1:4173' } });
    expect([photo.headers.get('content-type'), new Uint8Array(await photo.arrayBuffer())]).toEqual(['image/png', bytes]);
    expect(['content-security-policy', 'x-content-type-options', 'content-disposition'].map(name => photo.headers.get(name))).toEqual([
      "default-src 'none'; sandbox",
      'nosniff',
      'inline; filename="photo.png"',
    ]);
  });
  test('[PHO-4] by content and not by what its sender says: a picture is taken, a drawing or a page never', async () => {
    const [beef] = (await call('GET', '/foods?search=beef%20reduced')).body;
    const { history } = (await call('GET', `/foods/${beef.id}`)).body;
    const send = async (type: string, body: string | Uint8Array<ArrayBuffer>) => {
      const answer = await server.app.request(`http://127.0.0.1:4173/api/labels/${history[0].id}/photos`, {
        method: 'POST',
        headers: { host: '127.0.0.1:4173', 'content-type': type },
        body,
      });
      return { status: answer.status, body: (await answer.json()) as { id?: string; code?: string } };
    };
    for (const type of ['image/svg+xml', 'image/png', 'text/html'])
      expect(await send(type, '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>')).toMatchObject({
        status: 422,
        body: { code: 'photo-not-shown' },
      });
    const { body } = await send('image/png', pictures.jpeg);
    const shown = await server.app.request(`http://127.0.0.1:4173/api/photos/${body.id}`, { headers: { host: '127.0.0.1:4173' } });
    expect(shown.headers.get('content-type')).toBe('image/jpeg');
  });
  test('[PHO-5] what stands in the place of a photo and is none is never served', async () => {
    const [beef] = (await call('GET', '/foods?search=beef%20reduced')).body;
    const { history } = (await call('GET', `/foods/${beef.id}`)).body;
    const page = new TextEncoder().encode('<script>alert(1)</script>');
    const { id } = await server.store.addPhoto(history[0].id, { mime: 'image/png', bytes: page });
    const answer = await call('GET', `/photos/${id}`);
    expect([answer.status, answer.body.code]).toEqual([422, 'photo-not-shown']);
    expect(answer.headers.get('content-type')).toBe('application/problem+json');
  });
});

describe('imports', () => {
  const text =
    'name,maker,Calories,Sodium (mg),note\n"Beef, reduced sodium",Osterby & Vane,80,250,x\nNew slices,Nobody,90,200,y\n,Nobody,1,2,z\n';
  test('[SRV-9] a look says what each row would do and keeps nothing', async () => {
    const { body } = await sendTable('/imports/look', { fileName: 'shelf.csv', content: text });
    expect(body.mapping).toEqual(['name', 'maker', 'energyKcal', 'sodiumMg', null]);
    expect(body.rows).toMatchObject([
      { row: 2, does: 'joins-a-food', joins: 'Beef, reduced sodium' },
      { row: 3, does: 'begins-a-food' },
    ]);
    expect(body.report.map(({ code }: { code: string }) => code)).toContain('row-without-name');
  });
  test('[SRV-9] kept, kept again, undone', async () => {
    const { body } = await sendTable('/imports', { fileName: 'shelf.csv', content: text });
    expect(body).toMatchObject({ added: 1, joined: 1, alreadyThere: 0, leftOut: 1 });
    expect((await sendTable('/imports', { fileName: 'shelf.csv', content: text })).body).toMatchObject({
      added: 0,
      joined: 0,
      alreadyThere: 2,
    });
    expect((await call('POST', `/imports/${body.importId}/undo`)).body).toEqual({ withdrawn: 2 });
    expect((await call('GET', '/foods?search=new%20slices')).body).toEqual([]);
  });
  test('[SRV-9] a table that was read before adds nothing, also where it holds an earlier label of a food', async () => {
    const other = await testServer();
    expect((await other.call('POST', '/demo')).body).toMatchObject({ foods: 72, labels: 73 });
    const earlier = 'name,maker,sodiumMg\nTwice,Nobody,300\n';
    await other.sendTable('/imports', { fileName: 'earlier.csv', content: earlier });
    await other.sendTable('/imports', { fileName: 'later.csv', content: earlier.replace('300', '200') });
    expect((await other.sendTable('/imports', { fileName: 'earlier.csv', content: earlier })).body).toMatchObject({
      added: 0,
      joined: 0,
      alreadyThere: 1,
    });
    expect((await other.call('GET', '/foods?search=twice')).body[0].sodiumMg).toBe(200);
    await other.close();
  });
  test('[SRV-9] a mapping of one’s own', async () => {
    const own = { fileName: 'own.csv', content: 'Produkt,Natrium\nSlices,200\n' };
    expect((await sendTable('/imports/look', own)).body.report).toMatchObject([{ code: 'table-without-headings' }]);
    const { body } = await sendTable('/imports/look', { ...own, mapping: ['name', 'sodiumMg'] });
    expect(body.rows).toMatchObject([{ name: 'Slices', does: 'begins-a-food' }]);
  });
  test('[SRV-9] an XLSX workbook: merged cells and formulas are told, dates and numbers are text', async () => {
    const rows = [
      ['name', 'readOn', 'energyKcal', 'sodiumMg'],
      // Day 46,309 of the system of 1900, shown by the built-in format 14 (ECMA-376 part 1, 18.17.4.1 and 18.8.30).
      ['Merged slices', '<c s="1"><v>46309</v></c>', '<c><v>80</v></c>', '<c><f>100+130</f><v>230</v></c>'],
      ['Merged slices, second', null, '<c><v>90</v></c>', '<c><v>100</v></c>'],
    ];
    const content = workbookFile({
      sheets: [
        { name: 'Shelf', xml: `${sheetData(rows)}<mergeCells><mergeCell ref="C2:C3"/></mergeCells>` },
        { name: 'Other', xml: sheetData([['x']]) },
      ],
      styles: '<cellXfs><xf/><xf numFmtId="14"/></cellXfs>',
    });
    const { body } = await sendTable('/imports/look', { fileName: 'shelf.xlsx', content });
    expect(body.sample[0].cells).toEqual(['Merged slices', '2026-10-14', '80', '230']);
    expect(body.sample[1].cells).toEqual(['Merged slices, second', '', '', '100']);
    expect(body.report.map(({ code }: { code: string }) => code)).toEqual(
      expect.arrayContaining(['more-than-one-sheet', 'cell-merged', 'cell-with-formula']),
    );
  });
  test('[SRV-60] a wrong file gets a clear word, and the next one is read', async () => {
    const bomb = workbookFile({ sheets: [{ name: 'A', xml: `<sheetData><row>${inline('x'.repeat(3_000_000))}</row></sheetData>` }] });
    for (const [content, code] of [
      ['PK\u0003\u0004nonsense', 'workbook-not-readable'],
      [new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1]), 'workbook-of-another-kind'],
      [bomb, 'table-too-large'],
    ] as const)
      expect((await sendTable('/imports', { fileName: 'wrong.xlsx', content })).body.code).toBe(code);
    expect((await sendTable('/imports/look', { fileName: 'shelf.csv', content: text })).status).toBe(200);
  });
  test('[SRV-9] an empty file, headings twice, a wrong encoding: told, nothing kept', async () => {
    expect((await sendTable('/imports/look', { fileName: 'e.csv', content: '' })).body.code).toBe('table-without-headings');
    expect((await sendTable('/imports', { fileName: 'e.csv', content: 'name,Sodium (mg),sodiumMg\nA,1,2\n' })).body.code).toBe(
      'table-heading-twice',
    );
    const latin = new Uint8Array(Buffer.from('name,sodiumMg\nCrème,1\n', 'latin1'));
    const { body } = await sendTable('/imports/look', { fileName: 'l.csv', content: latin });
    expect(body.rows[0].name).toBe('Crème');
    expect(body.report.map(({ code }: { code: string }) => code)).toContain('encoding-not-utf8');
  });
});

describe('plates, yardsticks, the whole workspace', () => {
  test('a built-in yardstick is not changed, a copy is', async () => {
    const list = (await call('GET', '/yardsticks')).body;
    const low = list.find(({ yardstick }: { yardstick: { id: string } }) => yardstick.id === 'low-in-sodium-as-eaten');
    expect(low).toMatchObject({ isBuiltIn: true });
    expect((await call('PUT', '/yardsticks/low-in-sodium-as-eaten', { yardstick: low.yardstick, version: null })).body.code).toBe(
      'yardstick-not-valid',
    );
    const own = { ...low.yardstick, title: 'stricter', tests: [{ ...low.yardstick.tests[0], slack: 0 }] };
    expect((await call('PUT', '/yardsticks/own', { yardstick: own, version: null })).body).toMatchObject({ isBuiltIn: false, version: 1 });
    expect((await call('POST', '/survey', { ...survey, yardstick: 'own' })).body.counts.nearly).toBe(0);
    expect((await call('DELETE', '/yardsticks/own?version=1')).body).toEqual({ id: 'own' });
  });
  test('a plate is put, used and removed; one that cannot be read is refused', async () => {
    const plate = { title: 'two servings', portion: { servings: 2 }, companions: [] };
    expect((await call('PUT', '/plates/double', { plate, version: null })).body.version).toBe(1);
    expect((await call('POST', '/survey', { ...survey, plate: 'double' })).body.portionText).toBe('2 servings');
    expect((await call('PUT', '/plates/bad', { plate: { portion: { servings: -1 } }, version: null })).body.code).toBe('plate-not-valid');
    expect((await call('DELETE', '/plates/double?version=1')).status).toBe(200);
  });
  test('[SRV-10] an archive, delete everything, restore, demo', async () => {
    const other = await testServer();
    const file = await other.archiveOf(false);
    expect((await other.call('DELETE', '/workspace', { confirm: 'delete everything' })).body).toMatchObject({ foods: 0, categories: [] });
    const { id } = (await other.bring(file)).body;
    expect((await other.call('POST', `/archives/${id}/restore`, { into: 'empty', withClients: false })).body.added.foods).toBe(72);
    expect((await other.call('GET', '/workspace')).body.foods).toBe(72);
    expect((await other.call('DELETE', '/demo')).body.foods).toBe(0);
    expect((await other.call('POST', '/demo')).body).toMatchObject({ foods: 72, labels: 73 });
    await other.close();
  });
});
