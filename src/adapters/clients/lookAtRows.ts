import type { ClientJson, DamageKind } from '#app/clientVault.ts';
import { clientOfDrafts } from '#core/client/record/clientDrafts.ts';
import type { DataKey } from './dataKey.ts';
import type { Row } from './vaultFile.ts';
import { entryOf, type IndexRead, readIndex } from './vaultIndex.ts';

export interface FaultyRow {
  readonly row: Buffer;
  /** Undefined when nothing stands where the index names a record. */
  readonly body: Buffer | undefined;
  readonly kind: DamageKind;
}

/** A row that is to be set aside: not whole, or what is half typed about a client who is not. */
export type AsideRow = Omit<FaultyRow, 'kind'> & { readonly kind: DamageKind | 'whole' };

interface WholeRow extends Row {
  readonly record: ClientJson;
}

/** What stands in a vault: records that are whole, drafts that are, and what is not. */
export interface Looked {
  readonly index: IndexRead;
  readonly whole: readonly WholeRow[];
  readonly drafts: readonly WholeRow[];
  readonly faulty: readonly FaultyRow[];
}

/** Looks at every row. Without its index a record speaks for itself: an older version of it cannot be told from the newest. */
export function lookAtRows(key: DataKey, sealedIndex: Buffer | undefined, rows: readonly Row[]): Looked {
  const index = readIndex(key, sealedIndex);
  const looked = rows.map(one => ({ ...one, ...lookAtRow(key, index, one) }));
  const there = new Set(rows.map(({ row }) => row.toString('hex')));
  const named = index.state === 'whole' ? Object.keys(index.index.rows) : [];
  const missing = named
    .filter(name => !there.has(name))
    .map(name => ({ row: Buffer.from(name, 'hex'), body: undefined, kind: 'missing' as const }));
  const whole = looked.flatMap(({ row, body, record }) => (record === undefined ? [] : [{ row, body, record }]));
  const isDrafts = ({ record }: WholeRow): boolean => clientOfDrafts(record.id) !== undefined;
  return {
    index,
    whole: whole.filter(one => !isDrafts(one)),
    drafts: whole.filter(isDrafts),
    faulty: [...looked.flatMap(({ row, body, kind }) => (kind === undefined ? [] : [{ row, body, kind }])), ...missing],
  };
}

/** One row against the index: the record, or in which way it is not whole. */
export function lookAtRow(
  key: DataKey,
  index: IndexRead,
  { row, body }: Row,
): { readonly record?: ClientJson; readonly kind?: DamageKind } {
  const record = key.fromBody(row, body);
  if (index.state === 'whole') {
    const named = index.index.rows[row.toString('hex')];
    if (named === undefined) return { kind: 'added' };
    const [digest, length] = entryOf(body);
    if (named[0] !== digest) {
      if (body.length === 0) return { kind: 'emptied' };
      // It opens, but is not what was written last; or it is the body of another row.
      const isOfAnother = Object.values(index.index.rows).some(([other]) => other === digest);
      if (record !== undefined || isOfAnother) return { kind: 'exchanged' };
      return { kind: length < named[1] ? 'truncated' : 'altered' };
    }
  }
  if (record !== undefined) return { record };
  return { kind: body.length === 0 ? 'emptied' : 'altered' };
}
