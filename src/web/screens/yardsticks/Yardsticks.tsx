import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type KeptYardstick } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { Removed } from '../../ui/Removed.tsx';
import text from '../../ui/text.module.css';
import { useYardstickActions } from './actions.ts';
import { YardstickForm } from './YardstickForm.tsx';

/** Named sets of tests. Each bound says where it comes from; a built-in one is copied to be changed. */
export function YardsticksScreen() {
  const [editing, setEditing] = useState<KeptYardstick>();
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const actions = useYardstickActions(setEditing);
  return (
    <Page title="Yardsticks" isReading={yardsticks.isPending} fault={yardsticks.error ?? actions.fault}>
      {actions.undo !== undefined && actions.removed !== undefined && (
        <Removed name={actions.removed.yardstick.title} undo={actions.undo} />
      )}
      {editing !== undefined && <YardstickForm key={editing.yardstick.id} start={editing} onDone={() => setEditing(undefined)} />}
      <div className={layout.cards}>
        {yardsticks.data?.map(kept => {
          const { yardstick, isBuiltIn, tests } = kept;
          return (
            <article className={layout.sheet} key={yardstick.id}>
              <h2>{yardstick.title.charAt(0).toUpperCase() + yardstick.title.slice(1)}</h2>
              <p className={`${text.small} ${text.soft}`}>{isBuiltIn ? 'built in' : 'your own'}</p>
              <p>{yardstick.purpose}</p>
              <ul>
                {tests.map(({ id, text: words }) => (
                  <li key={id}>{words}</li>
                ))}
              </ul>
              {(yardstick.cautions ?? []).map(caution => (
                <p key={caution} className={`${text.small} ${text.soft}`}>
                  {caution}
                </p>
              ))}
              <p className={layout.row}>
                <ActionButton action={actions.change(kept)} />
                {!isBuiltIn && <ActionButton action={actions.remove(kept)} />}
              </p>
            </article>
          );
        })}
      </div>
    </Page>
  );
}
