import type { ReactNode } from 'react';
import styles from './OpenTable.module.css';

export interface OpenTableRow {
  readonly key: string;
  /** What the row is about; it opens the row. */
  readonly name: string;
  /** One for each heading after the first. */
  readonly cells: readonly ReactNode[];
  /** A line of its own below the cells, and what can be done about it. */
  readonly below?: { readonly says: ReactNode; readonly act: ReactNode };
  /** What opens below. */
  readonly opened: () => ReactNode;
}

/** A table of one line each, every line opening what stands behind it in its place. On a narrow page the cells of a row stand below its name. */
export function OpenTable(given: {
  readonly label: string;
  readonly headings: readonly string[];
  readonly rows: readonly OpenTableRow[];
  readonly open: readonly string[];
  readonly onOpen: (key: string, isOpen: boolean) => void;
}) {
  const { label, headings, rows, open, onOpen } = given;
  return (
    <table className={styles.table} aria-label={label}>
      <thead>
        <tr>
          {headings.map(heading => (
            <th key={heading} scope="col">
              {heading}
            </th>
          ))}
        </tr>
      </thead>
      {rows.map(row => {
        const isOpen = open.includes(row.key);
        return (
          <tbody key={row.key} className={isOpen ? styles.isOpen : undefined}>
            <tr className={row.below === undefined ? undefined : styles.hasBelow}>
              <th scope="row">
                <button type="button" aria-expanded={isOpen} onClick={() => onOpen(row.key, !isOpen)}>
                  {row.name}
                </button>
              </th>
              {row.cells.map((cell, at) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: a cell is its heading's
                <td key={at}>{cell}</td>
              ))}
            </tr>
            {row.below !== undefined && (
              <tr className={styles.below}>
                <td />
                <td colSpan={headings.length - 2}>{row.below.says}</td>
                <td>{row.below.act}</td>
              </tr>
            )}
            {isOpen && (
              <tr className={styles.opened}>
                <td colSpan={headings.length}>{row.opened()}</td>
              </tr>
            )}
          </tbody>
        );
      })}
    </table>
  );
}
