/** Archives that are whole, with rows and pictures that are not what they should be. */
import { pictures } from '#app/pictures.fixture.ts';
import { archive, deep, food, type HostileArchive, label, photo, printed, type Row, type Rows, shelf } from './archiveOf.fixture.ts';
import { deflated, stored } from './zipBytes.fixture.ts';

const badPicture = (name: string, content: string | Uint8Array, more: Row = {}): HostileArchive => ({
  name: `a picture that is ${name}`,
  make: () => {
    const packed = stored(content);
    return archive({ rows: shelf({ photos: [photo('p1', packed, '1.png', more)] }), photos: { '1.png': packed } });
  },
  gives: 'restored',
});

const withRows = (name: string, rows: () => Rows, gives: string): HostileArchive => ({
  name,
  make: () => archive({ rows: rows() }),
  gives,
});
const ids = ['../../x', 'a/b?c#d', '"\'`', "x'; drop table foods; --", '__proto__', 'a\0b', '\ud800', '', ' ', '%00', 'x'.repeat(10_000)];

export const rows: readonly HostileArchive[] = [
  withRows(
    'a row of a million columns',
    () => ({ foods: [{ ...food('f1'), ...Object.fromEntries(Array.from({ length: 1_000_000 }, (_, at) => [`c${at}`, 1])) }] }),
    'archive-not-valid',
  ),
  withRows('a label 100,000 levels deep', () => shelf({ labels: [label('l1', 1, { printed: deep })] }), 'restored'),
  withRows('a row 100,000 levels deep', () => shelf({ plates: deflated(`{"id":${deep}}\n`) }), 'archive-not-valid'),
  withRows(
    'labels that correct each other in a circle',
    () =>
      shelf({
        labels: [1, 2, 3].map(at =>
          label(`l${at}`, at, { kind: 'correction', corrects_label_id: `l${(at % 3) + 1}`, reading_sequence: 1 }),
        ),
      }),
    'restored',
  ),
  withRows(
    'a label that corrects itself',
    () => shelf({ labels: [label('l1', 1, { kind: 'correction', corrects_label_id: 'l1' })] }),
    'restored',
  ),
  withRows('a label of a food that is not there', () => shelf({ labels: [label('l1', 1, { food_id: 'nobody' })] }), 'archive-not-valid'),
  withRows('places that are negative', () => shelf({ labels: [label('l1', -1), label('l2', -(2 ** 52))] }), 'archive-not-valid'),
  withRows('places at the end of numbers', () => shelf({ labels: [label('l1', Number.MAX_SAFE_INTEGER)] }), 'archive-not-valid'),
  withRows('places that are beyond numbers', () => shelf({ labels: [label('l1', 1e300)] }), 'archive-not-valid'),
  withRows('places that are taken', () => shelf({ labels: [label('l1', 1), label('l2', 1)] }), 'archive-not-valid'),
  withRows(
    'versions at the end of numbers',
    () => shelf({ foods: [food('f1', { version: Number.MAX_SAFE_INTEGER })] }),
    'archive-not-valid',
  ),
  withRows(
    'days that are none',
    () =>
      shelf({
        labels: ['+275760-09-14T00:00:00Z', '-000001-01-01', '2026-02-30', 'yesterday', '', '9'.repeat(400)].map((day, at) =>
          label(`l${at + 1}`, at + 1, { added_at: day, printed: JSON.stringify(printed({ readOn: day })) }),
        ),
        label_rechecks: [{ label_id: 'l1', due_on: 'never' }],
        label_withdrawals: [{ label_id: 'l2', reason: '', withdrawn_at: '\0' }],
        imports: [{ id: 'i', file_name: '../../x', imported_at: 'x', added: 1, joined: 0, undone_at: 'x' }],
      }),
    'restored',
  ),
  withRows(
    'identities of slashes, quotes, SQL and nothing',
    () => ({
      foods: ids.map(id => food(id, { name: id, category: id })),
      labels: ids.map((id, at) => label(id, at + 1, { food_id: id })),
      plates: ids.map(id => ({ id, plate: JSON.stringify({ id, title: id }), version: 1, is_demo: 0 })),
      guides: ids.map(id => ({ id, guide: JSON.stringify({ id, title: id }), published: null, version: 1, is_demo: 0 })),
    }),
    'restored',
  ),
  withRows(
    'documents that are something else',
    () =>
      shelf({
        plates: [{ id: 'a', plate: '{"id":"b"}', version: 1, is_demo: 0 }],
        yardsticks: [{ id: 'a', yardstick: '{"id":"a","title":[],"tests":{"__proto__":1}}', version: 1 }],
        saved_surveys: [{ id: 'a', survey: 'null', version: 1 }],
        guides: [{ id: 'a', guide: '{"id":"a","survey":7}', published: '{"guide":{"id":"a"},"labels":[]}', version: 1, is_demo: 0 }],
        handouts: [{ id: 'a', handout: '{"id":"a","topic":{"x":[[[]]]}}', version: 1, is_demo: 0 }],
      }),
    'restored',
  ),
  withRows(
    'fifty thousand categories',
    () => ({ foods: Array.from({ length: 50_000 }, (_, at) => food(`f${at}`, { category: `c${at}` })) }),
    'restored',
  ),
  withRows(
    'a name of 5 MB',
    () => shelf({ foods: [food('f1', { name: 'x'.repeat(5_000_000), category: 'y'.repeat(5_000_000) })] }),
    'restored',
  ),
  withRows('a table that nobody knows', () => shelf({ accounts: [{ id: 1 }] }), 'archive-newer'),
  withRows(
    'a statement of 9 MB of brackets',
    () => shelf({ labels: [label('l1', 1, { printed: JSON.stringify(printed({ statement: 'a ('.repeat(3_000_000) })) })] }),
    'restored',
  ),
];

export const photos: readonly HostileArchive[] = [
  badPicture('a page', '<!doctype html><script>alert(1)</script>', { mime: 'text/html' }),
  badPicture('SVG with a script', '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>', { mime: 'image/svg+xml' }),
  badPicture('a script that says it is PNG', 'alert(1)'),
  badPicture('the head of a PNG and then a page', Buffer.concat([pictures.png.subarray(0, 40), Buffer.from('<script>alert(1)</script>')])),
  badPicture('of no bytes', ''),
  badPicture('under another digest', 'x', { sha256: 'a'.repeat(64) }),
  {
    name: 'a picture that is the list of contents',
    make: () => archive({ rows: shelf({ photos: [photo('p1', stored(''), '../manifest.json')] }) }),
    gives: 'archive-not-valid',
  },
];
