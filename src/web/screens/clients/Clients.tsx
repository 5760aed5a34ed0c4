import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { settingWords } from '#core/client/setting.ts';
import { answer, api, type ClientShort, Problem } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import button from '../../ui/Button.module.css';
import styles from '../../ui/foods.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { ClinicFigures } from './ClinicFigures.tsx';
import { Damaged } from './Damaged.tsx';
import { EraseDialog } from './EraseDialog.tsx';
import { Erased } from './Erased.tsx';
import { Lock } from './Lock.tsx';

/** Everyone in care, who waits first. Kept apart from the shelf, and locked by a passphrase where one is set. */
export function ClientsScreen() {
  return (
    <ClientDoor>
      <Everyone />
    </ClientDoor>
  );
}

function Everyone() {
  const queries = useQueryClient();
  const navigate = useNavigate();
  const [name, setName] = useState('');
  const [erasing, setErasing] = useState<ClientShort | 'everyone'>();
  const clients = useQuery({ queryKey: ['clients'], queryFn: () => answer(api.clients.$get()), gcTime: 0 });
  const refresh = async (): Promise<void> => void (await queries.invalidateQueries({ queryKey: ['clients'] }));
  const add = useMutation({
    mutationFn: () => answer(api.clients.$post({ json: { name } })),
    onSuccess: async ({ id }) => {
      await refresh();
      await navigate({ to: '/clients/$clientId', params: { clientId: id } });
    },
  });
  const remove = useMutation({
    mutationFn: ({ id, version, name: typed }: ClientShort) =>
      answer(api.clients[':id'].$delete({ param: { id }, json: { version, name: typed } })),
    onSuccess: refresh,
  });
  const erase = useMutation({
    mutationFn: () => answer(api.clients.$delete({ json: { confirm: 'erase every client' } })),
    onSuccess: refresh,
  });
  const isLocked = clients.error instanceof Problem && clients.error.code === 'clients-locked';
  return (
    <>
      <h1>Clients</h1>
      <Lock onOpen={refresh} />
      {!isLocked && <Told error={clients.error ?? add.error} />}
      {clients.data !== undefined && !isLocked && (
        <>
          <Damaged />
          <Erased />
          <section className={`${layout.sheet} ${layout.scroll}`} aria-label="Clients">
            {clients.data.length === 0 ? (
              <p>Nobody yet. Add a client below by initials or a code; then begin with an assessment.</p>
            ) : (
              <table className={styles.foods}>
                <thead>
                  <tr>
                    <th scope="col">Client</th>
                    <th scope="col">Setting</th>
                    <th scope="col">Assessed</th>
                    <th scope="col">Signed</th>
                    <th scope="col">Waiting</th>
                    <th scope="col">
                      <span className={text.unseen}>Erase</span>
                    </th>
                  </tr>
                </thead>
                <tbody>
                  {clients.data.map(client => (
                    <tr key={client.id}>
                      <td>
                        <Link to="/clients/$clientId" params={{ clientId: client.id }}>
                          {client.name}
                        </Link>
                        {client.isDemo && <span className={styles.why}>demo, invented</span>}
                      </td>
                      <td>{client.setting === undefined ? 'no assessment yet' : settingWords[client.setting]}</td>
                      <td>{client.assessedOn}</td>
                      <td>{client.signedAt ?? 'nothing signed'}</td>
                      <td>
                        {client.openContacts > 0 && <b className={text.urgent}>contact today: {client.openContacts}</b>}
                        {client.openContacts > 0 && client.overdue > 0 && '; '}
                        {client.overdue > 0 && `${client.overdue} ${client.overdue === 1 ? 'check' : 'checks'} overdue`}
                      </td>
                      <td>
                        <button
                          type="button"
                          className={`${button.quiet} ${layout.noprint}`}
                          aria-label={`Erase ${client.name}`}
                          onClick={() => setErasing(client)}
                        >
                          Erase
                        </button>
                      </td>
                    </tr>
                  ))}
                </tbody>
              </table>
            )}
          </section>
          <form
            className={`${layout.sheet} ${layout.row} ${layout.noprint}`}
            onSubmit={event => {
              event.preventDefault();
              add.mutate();
            }}
          >
            <label className={layout.field}>
              <span>A new client: initials or a code</span>
              <input type="text" required maxLength={200} value={name} onChange={event => setName(event.target.value)} autoComplete="off" />
            </label>
            <button type="submit" className={button.act} disabled={add.isPending}>
              Add the client
            </button>
          </form>
          <ClinicFigures />
          <section className={`${layout.sheet} ${layout.row} ${layout.noprint}`} aria-label="Export and erase">
            <a className={button.quiet} href="/api/clients/export" download="clients.json">
              Export every client
            </a>
            <button type="button" className={button.quiet} onClick={() => setErasing('everyone')}>
              Erase every client
            </button>
          </section>
          {erasing === 'everyone' && (
            <EraseDialog
              title="Erase every client?"
              word="erase every client"
              button="Erase every client"
              onErase={() => erase.mutateAsync()}
              onClose={() => setErasing(undefined)}
            >
              <p>
                All {clients.data.length} clients go for good: assessments, results, signed prescriptions, who was told, handouts, and the
                passphrase. Export first what must be kept; nothing brings it back.
              </p>
            </EraseDialog>
          )}
          {erasing !== undefined && erasing !== 'everyone' && (
            <EraseDialog
              title={`Erase ${erasing.name}?`}
              word={erasing.name}
              button="Erase the client"
              onErase={() => remove.mutateAsync(erasing)}
              onClose={() => setErasing(undefined)}
            >
              <p>
                Everything about this client goes: assessments, results, signed prescriptions, who was told, and the handout. For ten
                minutes, or until client data is locked, it can be undone; then nothing brings it back.
              </p>
            </EraseDialog>
          )}
        </>
      )}
    </>
  );
}
