import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type KeptPlate } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { Removed } from '../../ui/Removed.tsx';
import text from '../../ui/text.module.css';
import { usePlateActions } from './actions.ts';
import { PlateForm } from './PlateForm.tsx';

/** How foods are eaten: the portion that is surveyed, and what it is eaten with. */
export function PlatesScreen() {
  const [editing, setEditing] = useState<KeptPlate | 'new'>();
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const actions = usePlateActions(setEditing);
  useOffered([actions.add]);
  return (
    <Page
      title="Plates"
      actions={<ActionButton action={actions.add} isMain />}
      isReading={plates.isPending}
      fault={plates.error ?? actions.fault}
    >
      {actions.undo !== undefined && actions.removed !== undefined && <Removed name={actions.removed.plate.title} undo={actions.undo} />}
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
                <p className={layout.row}>
                  <ActionButton action={actions.change(kept)} />
                  <ActionButton action={actions.remove(kept)} />
                </p>
              )}
            </article>
          );
        })}
      </div>
    </Page>
  );
}
