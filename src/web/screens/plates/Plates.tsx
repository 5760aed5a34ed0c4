import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type KeptPlate } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Removed } from '../../ui/Removed.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { PlateForm } from './PlateForm.tsx';

/** How foods are eaten: the portion that is surveyed, and what it is eaten with. */
export function PlatesScreen() {
  const queries = useQueryClient();
  const [editing, setEditing] = useState<KeptPlate | 'new'>();
  const [removed, setRemoved] = useState<KeptPlate>();
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const refresh = () => queries.invalidateQueries({ queryKey: ['plates'] });
  const remove = useMutation({
    mutationFn: ({ plate, version }: KeptPlate) =>
      answer(api.plates[':id'].$delete({ param: { id: plate.id }, query: { version: String(version) } })),
    onSuccess: (_, kept) => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ plate }: KeptPlate) => answer(api.plates[':id'].$put({ param: { id: plate.id }, json: { plate, version: null } })),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  return (
    <>
      <div className={layout.spread}>
        <h1>Plates</h1>
        <button type="button" className={`${button.act} ${layout.noprint}`} onClick={() => setEditing('new')}>
          Add a plate
        </button>
      </div>
      <Told error={plates.error ?? remove.error ?? putBack.error} />
      {removed !== undefined && <Removed name={removed.plate.title} onUndo={() => putBack.mutate(removed)} />}
      {editing !== undefined && (
        <PlateForm
          key={editing === 'new' ? 'new' : editing.plate.id}
          start={editing === 'new' ? undefined : editing}
          onDone={() => setEditing(undefined)}
        />
      )}
      <div className={layout.cards}>
        {plates.data?.map(kept => {
          const title = kept.plate.title;
          const categories = kept.plate.categories ?? [];
          return (
            <article className={layout.sheet} key={kept.plate.id}>
              <h2>{title.charAt(0).toUpperCase() + title.slice(1)}</h2>
              <p className={`${text.soft} ${text.small}`}>
                {kept.isBuiltIn ? 'built in' : kept.isDemo ? 'demo, invented' : 'your own'}
                {categories.length === 0 ? '' : `; for ${categories.join(', ')}`}
              </p>
              <p>Portion of the food: {kept.portionText}.</p>
              <p>{kept.companionsText}</p>
              {!kept.isBuiltIn && (
                <p className={`${layout.row} ${layout.noprint}`}>
                  <button type="button" className={button.quiet} onClick={() => setEditing(kept)} aria-label={`Change the plate ${title}`}>
                    Change
                  </button>
                  <button
                    type="button"
                    className={button.quiet}
                    onClick={() => remove.mutate(kept)}
                    aria-label={`Remove the plate ${title}`}
                  >
                    Remove
                  </button>
                </p>
              )}
            </article>
          );
        })}
      </div>
    </>
  );
}
