import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type KeptYardstick } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Removed } from '../../ui/Removed.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { YardstickForm } from './YardstickForm.tsx';

/** Named sets of tests. Each bound says where it comes from; a built-in one is copied to be changed. */
export function YardsticksScreen() {
  const queries = useQueryClient();
  const [editing, setEditing] = useState<KeptYardstick>();
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const [removed, setRemoved] = useState<KeptYardstick>();
  const refresh = () => queries.invalidateQueries({ queryKey: ['yardsticks'] });
  const remove = useMutation({
    mutationFn: ({ yardstick, version }: KeptYardstick) =>
      answer(api.yardsticks[':id'].$delete({ param: { id: yardstick.id }, query: { version: String(version) } })),
    onSuccess: (_, kept) => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ yardstick }: KeptYardstick) =>
      answer(api.yardsticks[':id'].$put({ param: { id: yardstick.id }, json: { yardstick, version: null } })),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  return (
    <>
      <h1>Yardsticks</h1>
      <Told error={yardsticks.error ?? remove.error ?? putBack.error} />
      {removed !== undefined && <Removed name={removed.yardstick.title} undo={{ label: 'Undo', run: () => putBack.mutate(removed) }} />}
      {editing !== undefined && <YardstickForm key={editing.yardstick.id} start={editing} onDone={() => setEditing(undefined)} />}
      <div className={layout.cards}>
        {yardsticks.data?.map(kept => {
          const title = kept.yardstick.title;
          return (
            <article className={layout.sheet} key={kept.yardstick.id}>
              <h2>{title.charAt(0).toUpperCase() + title.slice(1)}</h2>
              <p className={`${text.small} ${text.soft}`}>{kept.isBuiltIn ? 'built in' : 'your own'}</p>
              <p>{kept.yardstick.purpose}</p>
              <ul>
                {kept.tests.map(({ id, text }) => (
                  <li key={id}>{text}</li>
                ))}
              </ul>
              {(kept.yardstick.cautions ?? []).map(caution => (
                <p key={caution} className={`${text.small} ${text.soft}`}>
                  {caution}
                </p>
              ))}
              <p className={layout.row}>
                <button
                  type="button"
                  className={button.quiet}
                  onClick={() => setEditing(kept)}
                  aria-label={`${kept.isBuiltIn ? 'Copy and change' : 'Change'} ${title}`}
                >
                  {kept.isBuiltIn ? 'Copy and change' : 'Change'}
                </button>
                {!kept.isBuiltIn && (
                  <button type="button" className={button.quiet} onClick={() => remove.mutate(kept)} aria-label={`Remove ${title}`}>
                    Remove
                  </button>
                )}
              </p>
            </article>
          );
        })}
      </div>
    </>
  );
}
