import { useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, type ReactNode, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { Field } from '../form/Field.tsx';
import layout from '../layout.module.css';
import { useIsPrinting } from '../page/useIsPrinting.ts';
import { type Column, rowsWith, type Sort, sortedRows } from './column.ts';
import { Headings } from './Headings.tsx';
import styles from './Table.module.css';

/** From so many rows on, only those in view exist. */
const virtualFrom = 120;
const rowsOfAPage = 8;

export interface TableRows<Row> {
  readonly rows: readonly Row[];
  readonly keyOf: (row: Row) => string;
  readonly columns: readonly Column<Row>[];
}

/**
 * Rows under headings. A heading sorts; arrow keys pick a row where rows can be picked; thousands of rows scroll, since only those in view
 * exist; on paper all of them stand. In a narrow place the first column and the figures make one line, the others stand below it.
 */
export function Table<Row>(
  given: TableRows<Row> & {
    /** What the table holds, for who does not see it. */
    readonly label: string;
    readonly startSort?: Sort;
    readonly picked?: string | undefined;
    readonly onPick?: (key: string) => void;
    /** Rows of one group stand together under its name, groups in the order of their first row. */
    readonly groupOf?: (row: Row) => string;
    /** The words by which a row is found; with them a field above the table narrows it. */
    readonly wordsOf?: (row: Row) => string;
    /** Told which rows are in view, as soon as they stand still. */
    readonly onView?: (rows: readonly Row[]) => void;
    readonly empty?: ReactNode;
  },
) {
  const { label, rows, keyOf, columns, startSort, picked, onPick, groupOf, wordsOf, onView, empty } = given;
  const [sort, setSort] = useState(startSort);
  const [wanted, setWanted] = useState('');
  const isPrinting = useIsPrinting();
  const sorted = useMemo(() => {
    const found = wordsOf === undefined ? rows : rowsWith(rows, wordsOf, wanted);
    const inOrder = sortedRows(found, columns, sort);
    return groupOf === undefined ? inOrder : [...Map.groupBy(inOrder, groupOf).values()].flat();
  }, [rows, columns, sort, groupOf, wordsOf, wanted]);
  const shownColumns = isPrinting ? columns.filter(({ isOnPaper }) => isOnPaper !== false) : columns;
  const isVirtual = !isPrinting && sorted.length >= virtualFrom;
  const scroller = useRef<HTMLDivElement>(null);
  // One function while the rows stay: with another one the list measures all of its rows anew.
  const keyAt = useCallback((index: number) => keyOf(sorted[index]!), [sorted, keyOf]);
  const list = useVirtualizer({
    count: sorted.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => 64,
    overscan: 8,
    getItemKey: keyAt,
    enabled: isVirtual,
  });
  const items = list.getVirtualItems();
  const first = items[0]?.index ?? 0;
  const last = items.at(-1)?.index ?? -1;
  const shown = isVirtual ? sorted.slice(first, last + 1) : sorted;
  const isStill = !list.isScrolling;
  // biome-ignore lint/correctness/useExhaustiveDependencies: told anew when other rows are in view
  useEffect(() => {
    if (isStill) onView?.(shown);
  }, [isStill, first, last, sorted]);

  const pickedAt = useMemo(() => (picked === undefined ? -1 : sorted.findIndex(row => keyOf(row) === picked)), [sorted, picked, keyOf]);
  // Only when another row is picked: scrolling must not be pulled back.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is made anew with every row in view
  useEffect(() => {
    if (pickedAt >= 0 && isVirtual) list.scrollToIndex(pickedAt, { align: 'center' });
  }, [picked]);

  if (rows.length === 0 && empty !== undefined) return <div>{empty}</div>;
  const pickByKey = (event: KeyboardEvent): void => {
    const by = { ArrowDown: 1, ArrowUp: -1, PageDown: rowsOfAPage, PageUp: -rowsOfAPage }[event.key];
    if (by === undefined || onPick === undefined) return;
    event.preventDefault();
    const next = sorted[Math.min(sorted.length - 1, Math.max(0, (pickedAt < 0 ? -1 : pickedAt) + by))];
    if (next !== undefined) onPick(keyOf(next));
  };
  const above = isVirtual ? (items[0]?.start ?? 0) : 0;
  const below = isVirtual ? list.getTotalSize() - (items.at(-1)?.end ?? 0) : 0;
  return (
    <div className={styles.place}>
      {wordsOf !== undefined && (
        <div className={`${layout.row} ${layout.noprint}`}>
          <Field label="Find in this table" type="search" value={wanted} onChange={setWanted} />
          <span role="status">{sorted.length === rows.length ? '' : `${sorted.length} of ${rows.length}`}</span>
        </div>
      )}
      <div
        className={isVirtual ? styles.scroller : styles.whole}
        ref={scroller}
        tabIndex={0}
        role="region"
        aria-label={onPick === undefined ? label : `${label}; arrow keys pick a row`}
        onKeyDown={pickByKey}
      >
        <table
          className={styles.table}
          role="table"
          aria-label={label}
          aria-rowcount={sorted.length + 1}
          ref={node => void node?.style.setProperty('--table-columns', shownColumns.map(({ width = 'minmax(0, 1fr)' }) => width).join(' '))}
        >
          <Headings columns={shownColumns} sort={sort} onSort={setSort} />
          <tbody role="rowgroup">
            {above > 0 && <Room height={above} />}
            {shown.map((row, at) => {
              const index = first + at;
              const key = keyOf(row);
              const group = groupOf?.(row);
              const isNewGroup = group !== undefined && (index === 0 || groupOf?.(sorted[index - 1]!) !== group);
              return [
                isNewGroup && (
                  <tr role="row" key={`group ${group}`} className={styles.group}>
                    <th role="rowheader" colSpan={shownColumns.length}>
                      {group}
                    </th>
                  </tr>
                ),
                <tr
                  role="row"
                  key={key}
                  aria-rowindex={index + 2}
                  aria-selected={onPick === undefined ? undefined : key === picked}
                  className={onPick === undefined ? styles.row : `${styles.row} ${styles.canPick}`}
                  data-index={index}
                  ref={isVirtual ? list.measureElement : undefined}
                  onClick={onPick === undefined ? undefined : () => onPick(key)}
                >
                  {shownColumns.map(({ key: column, name, cell, onPaper, isNumber, isNameUnseen }) => (
                    <td role="cell" key={column} className={isNumber ? styles.figure : styles.cell}>
                      {isNumber && !isNameUnseen && <span className={styles.narrowName}>{name} </span>}
                      {isPrinting && onPaper !== undefined ? onPaper(row) : cell(row)}
                    </td>
                  ))}
                </tr>,
              ];
            })}
            {below > 0 && <Room height={below} />}
          </tbody>
        </table>
      </div>
    </div>
  );
}

/** The room that rows out of view would take. */
function Room({ height }: { readonly height: number }) {
  return <tr role="presentation" ref={node => void node?.style.setProperty('height', `${height}px`)} />;
}
