import type { Restored } from '#app/archive/restoreArchive.ts';
import type { ArchiveLook } from '#app/archives.ts';

/** What is in an archive, line by line. */
export function archiveLines({ kind, madeAt, version, bytes, rows, damaged, clients }: ArchiveLook): readonly string[] {
  return [
    kind === 'archive'
      ? `An archive of ${onThisClock(madeAt)} by Platewright ${version}, ${bytes.toLocaleString('en-US')} bytes`
      : `A workspace file of an earlier Platewright, ${bytes.toLocaleString('en-US')} bytes`,
    ...countLines(rows),
    clients === undefined
      ? '  no client records'
      : `  ${counted(clients.records, 'client records')}, ${clients.opensWith === 'passphrase' ? 'sealed under a passphrase' : 'with the key that opens them'}`,
    ...(damaged === 0 ? [] : [`  ${counted(damaged, 'values')} that cannot be read, kept as they are`]),
  ];
}

/** What became of an archive's rows, line by line. */
export function restoredLines({ rows, clients }: Restored): readonly string[] {
  return [
    'Restored. Added:',
    ...countLines(rows.added),
    ...(rows.same === 0 ? [] : [`  ${rows.same} stood here already`]),
    ...Object.entries(rows.leftOut).map(([reason, count]) => `  ${count} left out: ${reason.replaceAll('-', ' ')}`),
    ...(clients === undefined
      ? []
      : [
          `  client records: ${clients.added} added, ${clients.same} the same, ${clients.conflicts} different and left out, ${clients.damaged} damaged`,
          ...(clients.draftsLeftOut === undefined
            ? []
            : [`  left out: what is half typed in the archive about ${counted(clients.draftsLeftOut, 'clients')} who stand here`]),
        ]),
  ];
}

function countLines(rows: Readonly<Record<string, number>>): readonly string[] {
  return Object.entries(rows).flatMap(([table, count]) => (count === 0 ? [] : [`  ${counted(count, table.replaceAll('_', ' '))}`]));
}

/** "1 label", "1,200 labels" */
function counted(count: number, many: string): string {
  return `${count.toLocaleString('en-US')} ${count === 1 ? many.replace(/s$/, '') : many}`;
}

function onThisClock(at: string): string {
  return new Date(at).toLocaleString('en-US', { dateStyle: 'long', timeStyle: 'short' });
}
