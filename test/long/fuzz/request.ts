/** One request: a route, its address, headers and body, mostly as described and then spoiled. */
import { join } from 'node:path';
import { pictures } from '#app/pictures.fixture.ts';
import type { Chance } from './chance.ts';
import { madeOf, type Schema, type Schemas } from './fromSchema.ts';
import type { Known } from './known.ts';
import { mutateBytes, mutateText, oddTexts } from './mutate.ts';
import { mutateJson, oddValue, writeJson } from './mutateJson.ts';
import { changedWorkbook } from './textReaders.ts';

export interface Route {
  readonly method: string;
  readonly path: string;
  readonly queries: readonly string[];
  readonly content: Readonly<Record<string, { readonly schema: Schema }>>;
}
export interface Description {
  readonly routes: readonly Route[];
  readonly schemas: Schemas;
}
export interface Asked {
  readonly route: Route;
  readonly address: string;
  readonly init: RequestInit;
  readonly what: string;
}
interface Things {
  readonly archive: Uint8Array;
  /** Where the server keeps its files: copies go nowhere else. */
  readonly folder: string;
}

interface Operation {
  readonly parameters?: readonly { readonly name: string; readonly in: string }[];
  readonly requestBody?: { readonly content: Route['content'] };
}

/** What prints with a browser is left out. */
const isLeftOut = (path: string): boolean => /paper/.test(path);
const outside: readonly Route[] = [
  '/',
  '/foods/x',
  '/assets/%00.js',
  '/api/photos/{id}',
  '/api/archives/{id}/file',
  '/api/guide-previews/{id}',
  '/api/client-previews/{id}',
  '/api/client-events',
  '/api/openapi.json',
].map(path => ({ method: 'GET', path, queries: [], content: {} }));

export function routesOf(paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>): readonly Route[] {
  const described = Object.entries(paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, { parameters = [], requestBody }]) => ({
      method: method.toUpperCase(),
      path,
      queries: parameters.filter(one => one.in === 'query').map(({ name }) => name),
      content: requestBody?.content ?? {},
    })),
  );
  return [...described.filter(({ path }) => !isLeftOut(path)), ...outside];
}

/** Undefined where the address or a header cannot even be written down. */
export function requestFor(chance: Chance, { routes, schemas }: Description, known: Known, things: Things): Asked | undefined {
  const route = chance.of(routes);
  const kind = route.path.split('/')[2] ?? '';
  const [id, version] = known.one(chance, kind) ?? ['00000000-0000-4000-8000-000000000000', 1];
  const address = `http://127.0.0.1:4173${addressOf(chance, route, id, version)}`;
  const method = chance.oneIn(60) ? chance.of(['GET', 'POST', 'PUT', 'PATCH', 'DELETE', 'HEAD', 'OPTIONS']) : route.method;
  const { type, body } = bodyOf(chance, route, schemas, known, version, things);
  try {
    const headers = new Headers({ host: '127.0.0.1:4173' });
    if (type !== undefined) headers.set('content-type', chance.oneIn(15) ? oddType(chance) : type);
    if (body instanceof Uint8Array)
      headers.set('content-length', chance.oneIn(20) ? chance.of(oddTexts).slice(0, 50) : String(body.length));
    if (chance.oneIn(12)) headers.set(...oddHeader(chance));
    const hasBody = method !== 'GET' && method !== 'HEAD' && body !== undefined;
    const init: RequestInit = { method, headers, ...(hasBody ? { body } : {}) };
    new Request(address, init);
    const shown =
      typeof body === 'string' ? body : body instanceof Uint8Array ? `${body.length} bytes` : body instanceof FormData ? 'a form' : '';
    const told = [...headers].filter(([name]) => name !== 'host').map(([name, value]) => `${name}: ${value.slice(0, 60)}`);
    return { route, address, init, what: `${method} ${address.slice(21, 221)} ${told.join(', ')} ${shown.slice(0, 1_500)}` };
  } catch {
    return undefined;
  }
}

function addressOf(chance: Chance, { path, queries }: Route, id: string, version: unknown): string {
  const filled = path.replaceAll(/\{(\w+)\}/g, (_, name) => {
    if (chance.oneIn(5)) return chance.oneIn(3) ? chance.of(oddTexts).slice(0, 300) : encoded(chance.of(oddTexts));
    if (name === 'end') return chance.of(['html', 'json', 'txt', 'csv', 'svg', 'html', 'docx', 'x']);
    if (name === 'day') return '2026-06-15';
    if (name === 'dataset') return chance.of(['usda-sr', 'fdc-foundation', 'x']);
    if (name === 'name') return chance.of(['body-mass-index', 'egfr', 'anion-gap', 'corrected-calcium', 'weights', 'x']);
    return encoded(id);
  });
  const given = queries.flatMap(name => {
    if (chance.oneIn(4)) return [];
    const value = name === 'version' && !chance.oneIn(3) ? String(version) : chance.of(['sandwich slices', 'dry', '1', ...oddTexts]);
    return [`${name}=${encoded(value)}`];
  });
  if (chance.oneIn(20)) given.push(`${encoded(chance.of(oddTexts))}=${encoded(chance.of(oddTexts))}`);
  const odd = chance.oneIn(60) ? mutateText(chance, filled) : filled;
  return `${odd.startsWith('/') ? odd : `/${odd}`}${given.length === 0 ? '' : `?${given.join('&')}`}`;
}

function encoded(text: string): string {
  return encodeURIComponent(text.toWellFormed());
}

function oddType(chance: Chance): string {
  return chance.of([
    'text/plain',
    'application/json; charset=utf-16',
    'multipart/form-data',
    'multipart/form-data; boundary=',
    'application/x-www-form-urlencoded',
    'image/svg+xml',
    '',
    'a',
    'application/problem+json',
    'APPLICATION/JSON',
  ]);
}

function oddHeader(chance: Chance): [string, string] {
  const name = chance.of([
    'cookie',
    'accept',
    'range',
    'if-none-match',
    'origin',
    'sec-fetch-site',
    'host',
    'accept-language',
    'content-encoding',
    'transfer-encoding',
    'x-forwarded-for',
    'expect',
    'authorization',
  ]);
  if (name === 'cookie') return [name, mutateText(chance, 'platewright-4173=abc; a=b').slice(0, 4_000)];
  return [
    name,
    chance
      .of(['gzip', 'bytes=0-', 'http://evil.example', 'localhost:4173', '127.0.0.1', '[::1]:4173', '*', 'cross-site', ...oddTexts])
      .slice(0, 8_000),
  ];
}

type Body = string | Uint8Array<ArrayBuffer> | FormData | undefined;

function bodyOf(
  chance: Chance,
  route: Route,
  schemas: Schemas,
  known: Known,
  version: unknown,
  things: Things,
): { type?: string; body?: Body } {
  const [type] = Object.keys(route.content);
  if (type === undefined) return chance.oneIn(10) ? { type: 'application/json', body: writeJson(chance, oddValue(chance)) } : {};
  if (route.path === '/api/copies/folder') return { type, body: JSON.stringify({ folder: folderOf(chance, things.folder) }) };
  if (chance.oneIn(40)) return { type, body: chance.oneIn(2) ? '' : mutateBytes(chance, things.archive.subarray(0, 500)) };
  if (type === 'image/*') return { type: 'image/png', body: picture(chance) };
  if (type === 'application/octet-stream')
    return { type, body: chance.oneIn(4) ? new Uint8Array(things.archive) : mutateBytes(chance, things.archive) };
  if (type === 'multipart/form-data') return formOf(chance);
  const made = madeOf(chance, route.content[type]!.schema, schemas);
  const whole = typeof made === 'object' && made !== null && 'version' in made ? { ...made, version } : made;
  const foods = known.one(chance, 'foods');
  if (typeof whole === 'object' && whole !== null && 'foodId' in whole && foods !== undefined) Object.assign(whole, { foodId: foods[0] });
  const sent = chance.oneIn(3) ? whole : mutateJson(chance, whole);
  // A site with paper is printed with a browser.
  if (route.path === '/api/guide-site' && typeof sent === 'object' && sent !== null) Object.assign(sent, { pdf: false });
  return { type, body: chance.oneIn(3) ? JSON.stringify(sent) : writeJson(chance, sent) };
}

function folderOf(chance: Chance, own: string): unknown {
  if (chance.oneIn(3)) return join(own, `copies-${chance.below(5)}`);
  if (chance.oneIn(4)) return `${own}/a\0b`;
  const odd = oddValue(chance);
  return typeof odd === 'string' ? odd.replaceAll('/', '-') : odd;
}

function picture(chance: Chance): Uint8Array<ArrayBuffer> {
  const whole = chance.of(Object.values(pictures));
  return chance.oneIn(2) ? new Uint8Array(whole) : mutateBytes(chance, whole);
}

function formOf(chance: Chance): { type?: string; body: Body } {
  const csv =
    'name,maker,category,sodiumMg,statement\nSlices,Maker,sandwich slices,200,"Turkey, sodium phosphate"\nSoup,,soups and broths,700,Water\n';
  if (chance.oneIn(4)) {
    const raw = `--b\r\ncontent-disposition: form-data; name="file"; filename="a.csv"\r\n\r\n${csv}\r\n--b\r\ncontent-disposition: form-data; name="mapping"\r\n\r\nname\r\n--b--\r\n`;
    return { type: 'multipart/form-data; boundary=b', body: mutateText(chance, raw) };
  }
  const form = new FormData();
  const content = chance.oneIn(3) ? changedWorkbook(chance) : chance.oneIn(2) ? csv : mutateText(chance, csv);
  const name = chance.oneIn(4) ? chance.of(oddTexts) : chance.of(['a.csv', 'a.xlsx', 'FOOD_DES.txt', 'food.csv', 'x.json']);
  for (const key of chance.oneIn(10) ? ['file', 'file', 'files'] : [chance.of(['file', 'file', 'files'])])
    form.append(key, new File([content], name));
  if (chance.oneIn(3))
    for (const key of ['name', 'maker', '', 'category', chance.of(oddTexts)]) form.append('mapping', chance.of(['name', 'sodiumMg', key]));
  if (chance.oneIn(6)) form.append('workId', chance.of(oddTexts));
  return { body: form };
}
