import text from '../text.module.css';
import type { Column, Sort } from './column.ts';
import styles from './Table.module.css';

/** The headings of a table; one that sorts is a button, and says which way. */
export function Headings<Row>({
  columns,
  sort,
  onSort,
  isPrinting,
}: {
  readonly columns: readonly Column<Row>[];
  readonly sort: Sort | undefined;
  readonly onSort: (sort: Sort) => void;
  readonly isPrinting: boolean;
}) {
  return (
    <thead role="rowgroup" className={styles.head}>
      <tr role="row" aria-rowindex={1} className={styles.row}>
        {columns.map(({ key, name, nameOnPaper = name, isNumber, isNameUnseen, sortBy }) => {
          const isSorted = key === sort?.key;
          return (
            <th
              key={key}
              role="columnheader"
              scope="col"
              className={isNumber ? styles.figure : styles.cell}
              aria-sort={sortBy === undefined ? undefined : isSorted ? (sort.isDown ? 'descending' : 'ascending') : 'none'}
            >
              {sortBy === undefined || isPrinting ? (
                <span className={isNameUnseen ? text.unseen : undefined}>{isPrinting ? nameOnPaper : name}</span>
              ) : (
                <button type="button" onClick={() => onSort({ key, isDown: isSorted && !sort.isDown })}>
                  {name}
                  {isSorted ? (sort.isDown ? ' ↓' : ' ↑') : ''}
                </button>
              )}
            </th>
          );
        })}
      </tr>
    </thead>
  );
}
