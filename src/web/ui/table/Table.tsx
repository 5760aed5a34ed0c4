import { type KeyboardEvent, type ReactNode, useMemo, useRef, useState } from 'react';
import { Field } from '../form/Field.tsx';
import layout from '../layout.module.css';
import { useIsPrinting } from '../page/useIsPrinting.ts';
import { type Column, rowsWith, type Sort, sortedRows } from './column.ts';
import { Headings } from './Headings.tsx';
import styles from './Table.module.css';
import { useIsNarrow } from './useIsNarrow.ts';
import { useRowsInView } from './useRowsInView.ts';

/** From so many rows on, only those in view exist. */
const virtualFrom = 120;
const rowsOfAPage = 8;
/** Below so many pixels a row does not stand in one line; each column after the fifth needs more. */
const narrow = { pixels: 640, columns: 5, pixelsOfAColumn: 110 } as const;

export interface TableRows<Row> {
  /** The same list while the rows are the same: they are sorted anew with another one. */
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
    /** Told which rows are in view, as soon as they stand still: in blocks that stay the same while the order does. */
    readonly onView?: (blocks: readonly (readonly Row[])[]) => void;
    /** Few rows, too, scroll in a place of their own, so that what stands beside the table stays in sight. */
    readonly scrollsAlone?: boolean;
    readonly empty?: ReactNode;
  },
) {
  const { label, rows, keyOf, columns, startSort, picked, onPick, groupOf, wordsOf, onView, scrollsAlone = false, empty } = given;
  const [sort, setSort] = useState(startSort);
  const [wanted, setWanted] = useState('');
  const isPrinting = useIsPrinting();
  const sortBy = columns.find(({ key }) => key === sort?.key)?.sortBy;
  // biome-ignore lint/correctness/useExhaustiveDependencies: of the columns only what is sorted by moves rows
  const sorted = useMemo(() => {
    const found = wordsOf === undefined ? rows : rowsWith(rows, wordsOf, wanted);
    const inOrder = sortedRows(found, columns, sort);
    return groupOf === undefined ? inOrder : [...Map.groupBy(inOrder, groupOf).values()].flat();
  }, [rows, sortBy, sort, groupOf, wordsOf, wanted]);
  const pickedAt = useMemo(() => (picked === undefined ? -1 : sorted.findIndex(row => keyOf(row) === picked)), [sorted, picked, keyOf]);
  const shownColumns = isPrinting ? columns.filter(({ isOnPaper }) => isOnPaper !== false) : columns;
  // Headings of groups take room among the rows: where there are groups all rows stand.
  const isVirtual = !isPrinting && groupOf === undefined && (scrollsAlone || sorted.length >= virtualFrom);
  const place = useRef<HTMLDivElement>(null);
  const scroller = useRef<HTMLDivElement>(null);
  const { first, shown, above, below, measure } = useRowsInView({ rows: sorted, keyOf, isVirtual, scroller, pickedAt, onView });
  const isNarrow = useIsNarrow(place, narrow.pixels + narrow.pixelsOfAColumn * Math.max(0, columns.length - narrow.columns));

  if (rows.length === 0 && empty !== undefined) return <div ref={place}>{empty}</div>;
  const pickByKey = (event: KeyboardEvent): void => {
    const by = { ArrowDown: 1, ArrowUp: -1, PageDown: rowsOfAPage, PageUp: -rowsOfAPage }[event.key];
    // In a field of the row they are the field's.
    const isTyping = event.target instanceof Element && event.target.matches('input, select, textarea');
    if (by === undefined || onPick === undefined || isTyping) return;
    event.preventDefault();
    const next = sorted[Math.min(sorted.length - 1, Math.max(0, pickedAt + by))];
    if (next !== undefined) onPick(keyOf(next));
  };
  return (
    <div className={isNarrow ? styles.narrow : styles.place} ref={place}>
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
          // Said where rows are missing: whoever has all of them counts by himself, headings of groups among them.
          aria-rowcount={isVirtual ? sorted.length + 1 : undefined}
          ref={node => void node?.style.setProperty('--table-columns', shownColumns.map(({ width = 'minmax(0, 1fr)' }) => width).join(' '))}
        >
          <Headings columns={shownColumns} sort={sort} onSort={setSort} isPrinting={isPrinting} />
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
                  aria-rowindex={isVirtual ? index + 2 : undefined}
                  aria-selected={onPick === undefined ? undefined : key === picked}
                  className={onPick === undefined ? styles.row : `${styles.row} ${styles.canPick}`}
                  data-index={index}
                  ref={measure}
                  // A link in the row has been followed: to pick as well would lead back here at once.
                  onClick={onPick === undefined ? undefined : event => event.defaultPrevented || onPick(key)}
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
