import type { InferResponseType } from 'hono/client';
import type { api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import type { Action } from '../../ui/action/action.ts';
import { Table } from '../../ui/table/Table.tsx';
import text from '../../ui/text.module.css';

type Imports = InferResponseType<typeof api.imports.$get, 200>;

/** The tables that were imported before, each with the way to take it back. */
export function EarlierImports({ imports, undo }: { readonly imports: Imports; readonly undo: (id: string, fileName: string) => Action }) {
  return (
    <details>
      <summary>Earlier imports</summary>
      <Table
        label="Earlier imports"
        rows={imports}
        keyOf={({ id }) => id}
        columns={[
          { key: 'day', name: 'Day', width: '7rem', cell: ({ at }) => at.slice(0, 10), sortBy: ({ at }) => at },
          { key: 'file', name: 'File', cell: ({ fileName }) => fileName, sortBy: ({ fileName }) => fileName },
          { key: 'added', name: 'New foods', width: '6rem', isNumber: true, cell: ({ added }) => added, sortBy: ({ added }) => added },
          {
            key: 'joined',
            name: 'Newer labels',
            width: '7rem',
            isNumber: true,
            cell: ({ joined }) => joined,
            sortBy: ({ joined }) => joined,
          },
          {
            key: 'undo',
            name: 'Undo',
            isNameUnseen: true,
            width: 'minmax(5rem, auto)',
            cell: ({ id, fileName, undoneAt }) =>
              undoneAt === undefined ? <ActionButton action={undo(id, fileName)} /> : <span className={text.tag}>undone</span>,
          },
        ]}
      />
    </details>
  );
}
