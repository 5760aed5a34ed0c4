import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import { emptyLabel, LabelForm } from './LabelForm.tsx';
import type { Label } from './typedLabel.ts';

/** One label after the other: each begins with the one before. */
export function NewLabel({ onDone }: { readonly onDone: () => Promise<void> }) {
  const [last, setLast] = useState<{ readonly id: string; readonly name: string; readonly lookAlike: Label }>();
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="one-title">
      <h2 id="one-title">Type one label</h2>
      {last !== undefined && (
        <p className={layout.notice} role="status">
          Saved:{' '}
          <Link to="/foods/$foodId" params={{ foodId: last.id }} search={{}}>
            {last.name}
          </Link>
          . The form starts from this label, for a look-alike beside it.
        </p>
      )}
      <LabelForm
        key={last?.id ?? 'first'}
        draftName="label new"
        start={last?.lookAlike ?? emptyLabel}
        onSave={label => answer(api.foods.$post({ json: { label } }))}
        onSaved={({ id }, { gtin: _gtin, ...lookAlike }) => {
          setLast({ id, name: lookAlike.name ?? '', lookAlike });
          return onDone();
        }}
      />
    </section>
  );
}
