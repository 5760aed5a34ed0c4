import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type Client } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';

/** Which part of the day's targets each meal may take. */
export function MealPattern({
  client,
  pattern,
  onChanged,
}: {
  readonly client: Client;
  readonly pattern: readonly { readonly name: string; readonly percent: number }[];
  readonly onChanged: () => Promise<void>;
}) {
  const [shares, setShares] = useState(pattern);
  const total = shares.reduce((sum, { percent }) => sum + percent, 0);
  const save = useMutation({
    mutationFn: () =>
      answer(api.clients[':id'].meals.$put({ param: { id: client.id }, json: { version: client.version, pattern: [...shares] } })),
    onSuccess: onChanged,
  });
  return (
    <details className={layout.noprint}>
      <summary>Meal pattern: {pattern.map(({ name, percent }) => `${name} ${percent}%`).join(', ')}</summary>
      <div className={layout.formgrid}>
        {shares.map(({ name, percent }, at) => (
          <label className={layout.field} key={name}>
            <span>{name}, % of the day</span>
            <input
              type="number"
              min="1"
              max="100"
              value={percent}
              onChange={event =>
                setShares(shares.map((one, index) => (index === at ? { ...one, percent: Number(event.target.value) } : one)))
              }
            />
          </label>
        ))}
      </div>
      <p className={layout.row}>
        <button type="button" className={button.quiet} disabled={total !== 100 || save.isPending} onClick={() => save.mutate()}>
          Keep this pattern
        </button>
        {total !== 100 && <span>The parts make {total}%; they have to make 100%.</span>}
      </p>
      <Told error={save.error} />
    </details>
  );
}
