import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Removed } from '../../ui/Removed.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useTopicHandoutActions } from './actions.ts';
import { titleOf } from './typedHandout.ts';

/** Handouts on a topic, below the guides: what anybody may take home. Those of one client are made on the client's screen. */
export function TopicHandouts() {
  const handouts = useQuery({ queryKey: ['handouts'], queryFn: () => answer(api.handouts.$get()) });
  const { begin, remove, undo, removed, fault } = useTopicHandoutActions();
  useOffered([begin]);
  return (
    <section className={layout.stack} aria-labelledby="handouts-title">
      <div className={layout.spread}>
        <h2 id="handouts-title">Handouts on a topic</h2>
        <ActionButton action={begin} />
      </div>
      <p>What anybody may take home, without anybody’s numbers. The handout of one client is made on the client’s screen.</p>
      <Told error={handouts.error ?? fault} />
      {removed !== undefined && undo !== undefined && <Removed name={titleOf(removed.handout)} undo={undo} />}
      <div className={layout.cards}>
        {handouts.data?.map(kept => (
          <article className={`${layout.sheet} ${layout.stack}`} key={String(kept.handout.id)}>
            <h3>
              <Link to="/handouts/$handoutId" params={{ handoutId: String(kept.handout.id) }}>
                {titleOf(kept.handout)}
              </Link>
            </h3>
            <p className={`${text.soft} ${text.small}`}>
              {kept.handout.language === 'es' ? 'in Spanish' : 'in English'}
              {kept.isDemo ? '; demo, invented' : ''}
            </p>
            <p className={layout.row}>
              <ActionButton action={remove(kept)} />
            </p>
          </article>
        ))}
      </div>
    </section>
  );
}
