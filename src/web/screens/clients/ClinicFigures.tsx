import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { type CareFigureId, careFigureIds } from '#core/client/rules/careFigures.ts';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import styles from '../../ui/foods.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';

/** Ages and contact values as this clinic sets them, each with its usual figure, who set it and when. */
export function ClinicFigures() {
  const queries = useQueryClient();
  const [id, setId] = useState<CareFigureId>();
  const [value, setValue] = useState('');
  const [by, setBy] = useState('');
  const figures = useQuery({
    queryKey: ['clients', 'care-figures'],
    queryFn: () => answer(api['care-figures'].$get()),
    gcTime: 0,
  });
  const keep = useMutation({
    mutationFn: (json: Parameters<(typeof api)['care-figures']['$put']>[0]['json']) => answer(api['care-figures'].$put({ json })),
    onSuccess: async () => {
      setId(undefined);
      setValue('');
      await queries.invalidateQueries({ queryKey: ['clients'] });
    },
  });
  if (figures.data === undefined) return <Told error={figures.error} />;
  const { version, figures: all } = figures.data;
  const chosen = all.find(one => one.id === id);
  return (
    <details className={`${layout.sheet} ${layout.noprint}`}>
      <summary>This clinic’s figures</summary>
      <form
        className={layout.stack}
        onSubmit={event => {
          event.preventDefault();
          if (id !== undefined) keep.mutate({ version, id, value: Number(value), by });
        }}
      >
        <div className={layout.formgrid}>
          <label className={layout.field}>
            <span>Figure to set</span>
            <select required value={id ?? ''} onChange={event => setId(careFigureIds.find(one => one === event.target.value))}>
              <option value="">choose</option>
              {all.map(one => (
                <option key={one.id} value={one.id}>
                  {one.title}
                </option>
              ))}
            </select>
          </label>
          <label className={layout.field}>
            <span>{chosen === undefined ? 'Value' : `Value, ${chosen.unit} (${chosen.lo} to ${chosen.hi})`}</span>
            <input
              type="number"
              step="any"
              required
              min={chosen?.lo}
              max={chosen?.hi}
              value={value}
              onChange={event => setValue(event.target.value)}
            />
          </label>
          <label className={layout.field}>
            <span>Set by</span>
            <input type="text" required maxLength={200} value={by} onChange={event => setBy(event.target.value)} autoComplete="off" />
          </label>
        </div>
        <Told error={keep.error} />
        <p>
          <button type="submit" className={button.act} disabled={keep.isPending}>
            Set the figure
          </button>
        </p>
      </form>
      <p className={`${text.small} ${text.soft}`}>
        First for how many days a result or another fact may be used for a target, then how long a value is told as of now, then from which
        value somebody is told. The usual figures are Platewright’s own or published; local policy comes first.
      </p>
      <section className={layout.scroll} aria-label="Figures">
        <table className={styles.foods}>
          <thead>
            <tr>
              <th scope="col">Figure</th>
              <th scope="col">Usual</th>
              <th scope="col">This clinic</th>
            </tr>
          </thead>
          <tbody>
            {all.map(({ id: key, title, unit, usual, set }) => (
              <tr key={key}>
                <th scope="row">{title}</th>
                <td>
                  {usual} {unit}
                </td>
                <td>
                  {set === undefined ? 'as usual' : `${set.value} ${unit}`}
                  {set !== undefined && (
                    <span className={styles.why}>
                      {set.by}, {set.on}
                    </span>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </details>
  );
}
