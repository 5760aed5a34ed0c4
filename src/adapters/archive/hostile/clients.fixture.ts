/** Archives whose client records are made to do harm. */
import { DataKey } from '#adapters/clients/dataKey.ts';
import { seal } from '#adapters/clients/seal.ts';
import { archive, deep, type HostileArchive, type Row } from './archiveOf.fixture.ts';

const wrap = (more: Row = {}): Row => ({
  id: '1',
  kind: 'passphrase',
  form: 2,
  n: 2 ** 17,
  r: 8,
  p: 1,
  salt: 'AAAA',
  sealedSecret: 'AAAA',
  ...more,
});
const withClients = (name: string, copy: () => Row, clients: string, opensWith = 'passphrase'): HostileArchive => ({
  name: `client records ${name}`,
  make: () => archive({ clients: copy(), manifest: honest => JSON.stringify({ ...honest, clients: { records: 1, opensWith } }) }),
  gives: 'restored',
  clients,
});
/** Sealed under a key that lies beside it, as whoever makes an archive can: what is sealed is any bytes. */
function keyed(more: (key: DataKey) => Row): Row {
  const key = new DataKey(Buffer.alloc(64, 7));
  return { format: 2, wraps: [], key: key.bytes().toString('base64'), rows: [], ...more(key) };
}
const base64 = (bytes: Uint8Array): string => Buffer.from(bytes).toString('base64');

export const clients: readonly HostileArchive[] = [
  withClients('at a cost of 128 GB', () => ({ format: 2, wraps: [wrap({ n: 2 ** 30, r: 1 })], rows: [] }), 'client-copy-not-valid'),
  withClients('at a cost of 2 GB', () => ({ format: 2, wraps: [wrap({ n: 2 ** 21 })], rows: [] }), 'client-copy-not-valid'),
  withClients('at a cost of sixteen times the work', () => ({ format: 2, wraps: [wrap({ p: 16 })], rows: [] }), 'client-copy-not-valid'),
  withClients('at a cost of nothing', () => ({ format: 2, wraps: [wrap({ n: 0, r: 0, p: 0 })], rows: [] }), 'client-copy-not-valid'),
  withClients(
    'under ten thousand passphrases',
    () => ({ format: 2, wraps: Array.from({ length: 10_000 }, (_, at) => wrap({ id: String(at) })), rows: [] }),
    'client-copy-not-valid',
  ),
  withClients('under one identity twice', () => ({ format: 2, wraps: [wrap(), wrap()], rows: [] }), 'client-copy-not-valid'),
  withClients(
    'of rows of any length',
    () => keyed(() => ({ rows: ['', 'AA==', 'A'.repeat(4_000)].map(row => ({ row, body: 'AA==' })) })),
    'restored',
    'key',
  ),
  withClients(
    'with an index that is no JSON',
    () => keyed(key => ({ index: base64(key.sealIndex(Buffer.from('no JSON {'))) })),
    'restored',
    'key',
  ),
  withClients('100,000 levels deep', () => keyed(key => deepRecord(key)), 'restored', 'key'),
  withClients(
    'that are other JSON',
    () => keyed(key => sealedRecord(key, '{"id":"x","version":1,"name":{"__proto__":1}}')),
    'restored',
    'key',
  ),
  withClients('that are none', () => ({ rows: deep.slice(0, 10) }), 'client-copy-not-valid'),
];

function deepRecord(key: DataKey): Row {
  return sealedRecord(key, `{"id":"x","version":1,"name":${deep}}`);
}

/** Any text in the place of a record. */
function sealedRecord(key: DataKey, json: string): Row {
  const row = key.rowOf('x');
  const bound = Buffer.concat([Buffer.from('platewright client 2 '), row]);
  return { rows: [{ row: base64(row), body: base64(seal(key.bytes().subarray(0, 32), bound, Buffer.from(json))) }] };
}
