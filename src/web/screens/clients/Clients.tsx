import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type ClientShort } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { Reading } from '../../ui/page/Reading.tsx';
import { AddClient } from './AddClient.tsx';
import { useEraseClient, useEraseEveryone } from './actions.ts';
import { ClinicFigures } from './ClinicFigures.tsx';
import { Damaged } from './Damaged.tsx';
import { EraseDialog } from './EraseDialog.tsx';
import { Erased } from './Erased.tsx';
import { Everyone } from './Everyone.tsx';
import { isLocked } from './isLocked.ts';
import { Lock } from './Lock.tsx';

/** Everyone in care, who waits first. Kept apart from the shelf, and locked by a passphrase where one is set. */
export function ClientsScreen() {
  return (
    <ClientDoor>
      <Clients />
    </ClientDoor>
  );
}

function Clients() {
  const queries = useQueryClient();
  const clients = useQuery({ queryKey: ['clients'], queryFn: () => answer(api.clients.$get()), gcTime: 0 });
  return (
    <Page title="Clients" fault={isLocked(clients.error) ? undefined : clients.error}>
      <Lock onOpen={() => queries.invalidateQueries({ queryKey: ['clients'] })} />
      {clients.isPending && <Reading />}
      {clients.data !== undefined && !isLocked(clients.error) && <Open clients={clients.data} />}
    </Page>
  );
}

function Open({ clients }: { readonly clients: readonly ClientShort[] }) {
  const [erasing, setErasing] = useState<ClientShort | 'everyone'>();
  const one = useEraseClient(setErasing);
  const everyone = useEraseEveryone(() => setErasing('everyone'));
  useOffered([everyone.ask]);
  const close = (): void => setErasing(undefined);
  return (
    <>
      <Damaged />
      <Erased />
      <section className={layout.sheet} aria-label="Clients">
        <Everyone clients={clients} erase={one.ask} />
      </section>
      <AddClient />
      <ClinicFigures />
      <section className={`${layout.sheet} ${layout.row} ${layout.noprint}`} aria-label="Export and erase">
        <a className={button.quiet} href="/api/clients/export" download="clients.json">
          Export every client
        </a>
        <ActionButton action={everyone.ask} />
      </section>
      {erasing === 'everyone' && (
        <EraseDialog
          title="Erase every client?"
          word="erase every client"
          label="Erase every client"
          erase={everyone.erase}
          onClose={close}
        >
          <p>
            All {clients.length} clients go for good: assessments, results, signed prescriptions, who was told, handouts, and the
            passphrase. Export first what must be kept; nothing brings it back.
          </p>
        </EraseDialog>
      )}
      {erasing !== undefined && erasing !== 'everyone' && (
        <EraseDialog
          title={`Erase ${erasing.name}?`}
          word={erasing.name}
          label="Erase the client"
          erase={() => one.erase(erasing)}
          onClose={close}
        >
          <p>
            Everything about this client goes: assessments, results, signed prescriptions, who was told, and the handout. For ten minutes,
            or until client data is locked, it can be undone; then nothing brings it back.
          </p>
        </EraseDialog>
      )}
    </>
  );
}
