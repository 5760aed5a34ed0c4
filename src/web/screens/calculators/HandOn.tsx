import { useQuery } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api, type Formula, type FormulaWorked, Problem } from '../../api.ts';
import { ClientDoor } from '../../lock/ClientDoor.tsx';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { carry } from './carried.ts';

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

interface Fitting {
  readonly field: Formula['fills'][number]['field'];
  readonly label: string;
  readonly value: number;
  readonly text: string;
}

function ChooseClient({ title, fitting }: { readonly title: string; readonly fitting: readonly Fitting[] }) {
  const navigate = useNavigate();
  const [field, setField] = useState(fitting[0]!.field);
  const [clientId, setClientId] = useState('');
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
  const chosen = fitting.find(one => one.field === field) ?? fitting[0]!;
  return (
    <form
      className={layout.stack}
      onSubmit={event => {
        event.preventDefault();
        if (clientId === '') return;
        carry({ clientId, field: chosen.field, value: chosen.value, words: `${chosen.label} ${chosen.text}`, from: title });
        void navigate({ to: '/clients/$clientId', params: { clientId } });
      }}
    >
      {fitting.length > 1 && (
        <label className={layout.field}>
          <span>As</span>
          <select value={chosen.field} onChange={event => setField(fitting.find(one => one.field === event.target.value)?.field ?? field)}>
            {fitting.map(one => (
              <option key={one.field} value={one.field}>
                {one.label}
              </option>
            ))}
          </select>
        </label>
      )}
      <label className={layout.field}>
        <span>Client</span>
        <select required value={clientId} onChange={event => setClientId(event.target.value)}>
          <option value="">choose</option>
          {clients.data.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <p className={layout.row}>
        <button type="submit" className={button.act}>
          Open the assessment with it
        </button>
        <span className={`${text.small} ${text.soft}`}>Filled in, not kept: you look at it first.</span>
      </p>
    </form>
  );
}
