import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import type { HandoutTyped } from '#core/handout/handoutFromJson.ts';
import { answer, api, type KeptHandout } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Removed } from '../../ui/Removed.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';

/** Handouts on a topic, below the guides: what anybody may take home. Those of one client are made on the client's screen. */
export function TopicHandouts() {
  const queries = useQueryClient();
  const navigate = useNavigate();
  const [removed, setRemoved] = useState<KeptHandout>();
  const handouts = useQuery({ queryKey: ['handouts'], queryFn: () => answer(api.handouts.$get()) });
  const refresh = () => queries.invalidateQueries({ queryKey: ['handouts'] });
  const put = (id: string, handout: HandoutTyped) => answer(api.handouts[':id'].$put({ param: { id }, json: { handout, version: null } }));
  const begin = useMutation({
    mutationFn: async () => {
      const id = `handout-${crypto.randomUUID().slice(0, 8)}`;
      const handout = {
        setting: 'ckd-not-on-dialysis',
        writtenOn: new Date().toLocaleDateString('sv'),
        author: { name: '' },
        topic: { yardstickId: 'low-in-sodium-as-eaten' },
      };
      await put(id, handout);
      await refresh();
      return id;
    },
    onSuccess: handoutId => navigate({ to: '/handouts/$handoutId', params: { handoutId } }),
  });
  const remove = useMutation({
    mutationFn: ({ handout, version }: KeptHandout) =>
      answer(api.handouts[':id'].$delete({ param: { id: String(handout.id) }, query: { version: String(version) } })),
    onSuccess: (_, kept) => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ handout }: KeptHandout) => put(String(handout.id), handout),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  return (
    <section className={layout.stack} aria-labelledby="handouts-title">
      <div className={layout.spread}>
        <h2 id="handouts-title">Handouts on a topic</h2>
        <button type="button" className={`${button.quiet} ${layout.noprint}`} disabled={begin.isPending} onClick={() => begin.mutate()}>
          Begin a handout
        </button>
      </div>
      <p>What anybody may take home, without anybody’s numbers. The handout of one client is made on the client’s screen.</p>
      <Told error={handouts.error ?? begin.error ?? remove.error ?? putBack.error} />
      {removed !== undefined && <Removed name={titleOf(removed)} undo={{ label: 'Undo', run: () => putBack.mutate(removed) }} />}
      <div className={layout.cards}>
        {handouts.data?.map(kept => (
          <article className={`${layout.sheet} ${layout.stack}`} key={String(kept.handout.id)}>
            <h3>
              <Link to="/handouts/$handoutId" params={{ handoutId: String(kept.handout.id) }}>
                {titleOf(kept)}
              </Link>
            </h3>
            <p className={`${text.soft} ${text.small}`}>
              {kept.handout.language === 'es' ? 'in Spanish' : 'in English'}
              {kept.isDemo ? '; demo, invented' : ''}
            </p>
            <p className={`${layout.row} ${layout.noprint}`}>
              <button
                type="button"
                className={button.quiet}
                onClick={() => remove.mutate(kept)}
                aria-label={`Remove the handout ${titleOf(kept)}`}
              >
                Remove
              </button>
            </p>
          </article>
        ))}
      </div>
    </section>
  );
}

function titleOf({ handout }: KeptHandout): string {
  return typeof handout.title === 'string' && handout.title.trim() !== '' ? handout.title : 'A handout without a title';
}
