import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api, type Formula, type FormulaWorked, Problem } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone } from '../../ui/form/choices.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { type Fitting, useHandOnAction } from './actions.ts';

type Results = NonNullable<FormulaWorked['results']>;

/** Sends a result into a client's assessment, where it is the value of a field there. Clients are read only once this is opened. */
export function HandOn({ formula, results }: { readonly formula: Formula; readonly results: Results }) {
  const [isOpen, setOpen] = useState(false);
  // A gain is no loss: what is under 0 is not the value of any of these fields.
  const fitting = formula.fills.flatMap(fill => {
    const result = results.find(({ name }) => name === fill.result);
    return result?.kind === 'figure' && result.rounded >= 0 ? [{ ...fill, value: result.rounded, text: result.text }] : [];
  });
  if (fitting.length === 0) return null;
  return (
    <details className={`${layout.sheet} ${layout.noprint}`} onToggle={event => setOpen(event.currentTarget.open)}>
      <summary>Use in an assessment of …</summary>
      {isOpen && (
        <ClientDoor>
          <ChooseClient title={formula.title} fitting={fitting} />
        </ClientDoor>
      )}
    </details>
  );
}

function ChooseClient({ title, fitting }: { readonly title: string; readonly fitting: readonly Fitting[] }) {
  const [field, setField] = useState<string>(fitting[0]!.field);
  const [clientId, setClientId] = useState('');
  const chosen = fitting.find(one => one.field === field) ?? fitting[0]!;
  const open = useHandOnAction(title, chosen, clientId);
  const clients = useQuery({ queryKey: ['clients'], queryFn: () => answer(api.clients.$get()), gcTime: 0 });
  if (clients.error instanceof Problem && clients.error.code === 'clients-locked') {
    return (
      <p>
        Client data is locked. Open it under <Link to="/clients">Clients</Link>, then come back; what is typed here goes when you leave.
      </p>
    );
  }
  if (clients.data === undefined) return <Told error={clients.error} />;
  if (clients.data.length === 0) {
    return (
      <p>
        There is no client yet: add one under <Link to="/clients">Clients</Link>.
      </p>
    );
  }
  return (
    <ActionForm action={open} className={layout.stack} isOffered={false}>
      {fitting.length > 1 && (
        <Choice label="As" choices={fitting.map(one => [one.field, one.label])} value={chosen.field} onChange={setField} />
      )}
      <Choice
        label="Client"
        isRequired
        choices={orNone(
          'choose',
          clients.data.map(({ id, name }) => [id, name]),
        )}
        value={clientId}
        onChange={setClientId}
      />
      <p className={layout.row}>
        <ActionButton action={open} isMain submits />
        <span className={`${text.small} ${text.soft}`}>Filled in, not kept: you look at it first.</span>
      </p>
    </ActionForm>
  );
}
