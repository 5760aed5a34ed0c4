import type { ArchiveShort, Restored } from '../../api.ts';

/** What a person calls the rows of a table; those that only join others are not told. */
const tableNames: Readonly<Record<string, readonly [one: string, many: string]>> = {
  foods: ['food', 'foods'],
  labels: ['label', 'labels'],
  photos: ['photo', 'photos'],
  plates: ['plate', 'plates'],
  yardsticks: ['yardstick', 'yardsticks'],
  saved_surveys: ['saved survey', 'saved surveys'],
  guides: ['guide', 'guides'],
  handouts: ['handout on a topic', 'handouts on a topic'],
  label_withdrawals: ['withdrawal of a label', 'withdrawals of labels'],
  label_rechecks: ['recheck day', 'recheck days'],
  imports: ['import', 'imports'],
  reference_tables: ['composition table', 'composition tables'],
};

const reasons: Readonly<Record<keyof Restored['leftOut'], string>> = {
  differs: 'stands here already and is different; what is here was left as it is',
  'bar-code-taken': 'another food here has its bar code',
  'name-taken': 'another food here has its maker and name',
  'older-reading': 'a newer label of its food stands here',
  'part-left-out': 'belongs to something that was left out',
  demo: 'belongs to the demo of the archive',
};

/** "128 labels", "1 photo" */
function counted(table: string, count: number): string {
  const [one, many] = tableNames[table] ?? [table.replaceAll('_', ' '), table.replaceAll('_', ' ')];
  return `${count.toLocaleString('en')} ${count === 1 ? one : many}`;
}

/** "70 foods, 75 labels, 4 plates"; undefined when there is nothing. */
export function rowsInWords(rows: Readonly<Record<string, number>>): string | undefined {
  const said = Object.entries(rows).flatMap(([table, count]) => (count > 0 && table in tableNames ? [counted(table, count)] : []));
  return said.length === 0 ? undefined : said.join(', ');
}

/** What an archive holds of clients, and who can open it. */
export function clientsInWords({ clients }: Pick<ArchiveShort, 'clients'>): string {
  if (clients === undefined) return 'no client records';
  const records = `${clients.records.toLocaleString('en')} client ${clients.records === 1 ? 'record' : 'records'}`;
  return clients.opensWith === 'passphrase' ? `${records}, sealed under a passphrase` : `${records}, with the key that opens them`;
}

/** One line a reason: "3 labels: a newer label of its food stands here" */
export function leftOutInWords({ leftOut }: Pick<Restored, 'leftOut'>): readonly string[] {
  return reasonKeys.flatMap(reason => {
    const count = leftOut[reason] ?? 0;
    return count === 0 ? [] : [`${count.toLocaleString('en')} ${count === 1 ? 'entry' : 'entries'}: ${reasons[reason]}.`];
  });
}
const reasonKeys = ['differs', 'bar-code-taken', 'name-taken', 'older-reading', 'part-left-out', 'demo'] as const;

/** What has a name that a person knows; rows that only join others have none. */
export function isNamed({ table, name }: Restored['examples'][number]): boolean {
  return table in tableNames && name !== undefined;
}

export function exampleInWords({ table, name, id, reason }: Restored['examples'][number]): string {
  const [one = table] = tableNames[table] ?? [];
  return `${one.charAt(0).toUpperCase()}${one.slice(1)} ${name ?? id}: ${reasons[reason]}.`;
}

/** "12.3 MB" */
export function sizeInWords(bytes: number): string {
  const mb = bytes / 1e6;
  return mb >= 1_000 ? `${(mb / 1_000).toFixed(1)} GB` : mb >= 0.1 ? `${mb.toFixed(1)} MB` : `${Math.max(1, Math.round(bytes / 1e3))} kB`;
}

/** "November 30, 2026, 2:05 PM" on the clock of this computer. */
export function momentInWords(at: string): string {
  return new Date(at).toLocaleString('en-US', { dateStyle: 'long', timeStyle: 'short' });
}
