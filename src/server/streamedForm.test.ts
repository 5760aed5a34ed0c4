import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { testServer } from './testWorld.fixture.ts';

let server: Awaited<ReturnType<typeof testServer>>;
beforeEach(async () => {
  server = await testServer();
});
afterEach(() => server.close());

const table = 'name,sodiumMg\nBroth,200\n';

async function look(form: FormData | string, type?: string) {
  const address = 'http://127.0.0.1:4173/api/imports/look';
  const headers = { host: '127.0.0.1:4173', ...(type === undefined ? {} : { 'content-type': type }) };
  const answer = await server.app.request(address, { method: 'POST', body: form, headers });
  const body: unknown = await answer.json();
  return { status: answer.status, body };
}
function formOf(name: string, ...mapping: readonly string[]): FormData {
  const form = new FormData();
  form.set('file', new File([table], name));
  for (const key of mapping) form.append('mapping', key);
  return form;
}
const written = (lines: readonly string[]): string => lines.join('\r\n');
const part = ['--b', 'content-disposition: form-data; name="file"; filename="a.csv"', '', table];

// RFC 7578, "Returning Values from Forms: multipart/form-data".
describe('a form that is taken apart as it comes in', () => {
  test.each(['a.csv', 'Größe 1.csv', 'she said "no".csv', 'a;b=c.csv', '湯.csv'])('[SRV-51] a file keeps its name: %s', async name => {
    expect((await look(formOf(name))).body).toMatchObject({ fileName: name, headings: ['name', 'sodiumMg'] });
  });

  test('[SRV-51] a field may stand many times, empty among them', async () => {
    expect((await look(formOf('a.csv', 'name', ''))).body).toMatchObject({ mapping: ['name', null] });
    const columns = Array.from({ length: 1_000 }, () => '');
    expect((await look(formOf('a.csv', ...columns))).status).toBe(200);
  });

  test.each([
    ['that ends in its middle', written(part), 'multipart/form-data; boundary=b'],
    ['without its boundary', written([...part, '--b--', '']), 'multipart/form-data'],
    ['of another boundary', written([...part, '--b--', '']), 'multipart/form-data; boundary=c'],
    [
      'with more behind its end',
      written(['--b', 'content-dis%position: f', '--b--', 'data; name="file"; filename="a.csv"', '', table, ...part, '--b--', '']),
      'multipart/form-data; boundary=b',
    ],
    ['that is empty', '', 'multipart/form-data; boundary=b'],
    [
      'of ten thousand fields',
      written([...Array.from({ length: 10_000 }, () => ['--b', 'content-disposition: form-data; name="x"', '', '1']).flat(), '--b--', '']),
      'multipart/form-data; boundary=b',
    ],
    [
      'with a field of 2 MB',
      written(['--b', 'content-disposition: form-data; name="mapping"', '', 'x'.repeat(2e6), ...part, '--b--', '']),
      'multipart/form-data; boundary=b',
    ],
    [
      'whose file is a field',
      written(['--b', 'content-disposition: form-data; name="file"', '', table, '--b--', '']),
      'multipart/form-data; boundary=b',
    ],
  ])('[SRV-51] a form %s is refused, and the program goes on', async (_, body, type) => {
    expect(await look(body, type)).toMatchObject({ status: 422, body: { code: 'request-not-valid' } });
    expect((await look(formOf('a.csv'))).status).toBe(200);
  });
});
