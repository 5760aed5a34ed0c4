import { Link } from '@tanstack/react-router';
import { settingWords } from '#core/client/setting.ts';
import type { ClientShort } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import type { Action } from '../../ui/action/action.ts';
import type { Column } from '../../ui/table/column.ts';
import { Table } from '../../ui/table/Table.tsx';
import text from '../../ui/text.module.css';

/** The list of clients, who waits first. */
export function Everyone({
  clients,
  erase,
}: {
  readonly clients: readonly ClientShort[];
  readonly erase: (client: ClientShort) => Action;
}) {
  const buttons: Column<ClientShort> = {
    key: 'erase',
    name: 'Erase',
    isNameUnseen: true,
    isOnPaper: false,
    width: '6rem',
    cell: client => <ActionButton action={erase(client)} />,
  };
  return (
    <Table
      label="Everyone in care"
      rows={clients}
      keyOf={({ id }) => id}
      columns={[...columns, buttons]}
      empty={<p>Nobody yet. Add a client below by initials or a code; then begin with an assessment.</p>}
    />
  );
}

const columns: readonly Column<ClientShort>[] = [
  {
    key: 'client',
    name: 'Client',
    sortBy: ({ name }) => name,
    cell: ({ id, name, isDemo }) => (
      <>
        <Link to="/clients/$clientId" params={{ clientId: id }}>
          {name}
        </Link>
        {isDemo && <span className={text.why}>demo, invented</span>}
      </>
    ),
  },
  {
    key: 'setting',
    name: 'Setting',
    sortBy: ({ setting }) => (setting === undefined ? null : settingWords[setting]),
    cell: ({ setting }) => (setting === undefined ? 'no assessment yet' : settingWords[setting]),
  },
  {
    key: 'assessed',
    name: 'Assessed',
    width: '7rem',
    isNumber: true,
    sortBy: ({ assessedOn }) => assessedOn ?? null,
    cell: ({ assessedOn }) => assessedOn,
  },
  {
    key: 'signed',
    name: 'Signed',
    width: '8rem',
    isNumber: true,
    sortBy: ({ signedAt }) => signedAt ?? null,
    cell: ({ signedAt }) => signedAt ?? 'nothing signed',
  },
  {
    key: 'waiting',
    name: 'Waiting',
    cell: ({ openContacts, overdue }) => (
      <>
        {openContacts > 0 && <b className={text.urgent}>contact today: {openContacts}</b>}
        {openContacts > 0 && overdue > 0 && '; '}
        {overdue > 0 && `${overdue} ${overdue === 1 ? 'check' : 'checks'} overdue`}
      </>
    ),
  },
];
