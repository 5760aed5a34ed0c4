import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { dayText } from '#core/guide/day.ts';
import { answer, api, type Guide, type GuideShort } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Removed } from '../../ui/Removed.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { TopicHandouts } from '../handouts/TopicHandouts.tsx';
import { GuideSite } from './GuideSite.tsx';
import { NewGuide } from './NewGuide.tsx';

const route = getRouteApi('/guides');

/** The guides: what each tells its readers, and which of their lines have gone stale. */
export function GuidesScreen() {
  const queries = useQueryClient();
  const search = route.useSearch();
  const [isNew, setNew] = useState(search.category !== undefined);
  const [removed, setRemoved] = useState<Guide>();
  const guides = useQuery({ queryKey: ['guides'], queryFn: () => answer(api.guides.$get()) });
  const refresh = () => queries.invalidateQueries({ queryKey: ['guides'] });
  const remove = useMutation({
    mutationFn: async ({ id, version }: GuideShort) => {
      const kept = await answer(api.guides[':id'].$get({ param: { id } }));
      await answer(api.guides[':id'].$delete({ param: { id }, query: { version: String(version) } }));
      return kept;
    },
    onSuccess: kept => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ guide, published }: Guide) =>
      answer(
        api.guides[':id'].$put({
          param: { id: String(guide.id) },
          json: { guide, version: null, ...(published === undefined ? {} : { published }) },
        }),
      ),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  return (
    <>
      <div className={layout.spread}>
        <h1>Guides</h1>
        <button type="button" className={`${button.act} ${layout.noprint}`} onClick={() => setNew(true)}>
          Begin a guide
        </button>
      </div>
      <p>A guide is a survey that readers can shop from: your words, and figures that stay linked to their labels.</p>
      <Told error={guides.error ?? remove.error ?? putBack.error} />
      {removed !== undefined && <Removed name={String(removed.guide.title)} undo={{ label: 'Undo', run: () => putBack.mutate(removed) }} />}
      {isNew && <NewGuide start={search} onCancel={() => setNew(false)} />}
      {guides.data?.length === 0 && !isNew && (
        <section className={`${layout.sheet} ${layout.stack}`}>
          <h2>No guide yet</h2>
          <p>
            Begin one here, or open a <Link to="/">survey</Link> and choose “Make a guide of it”.
          </p>
        </section>
      )}
      <div className={layout.cards}>
        {guides.data?.map(one => (
          <article className={`${layout.sheet} ${layout.stack}`} key={one.id}>
            <h2>
              <Link to="/guides/$guideId" params={{ guideId: one.id }}>
                {one.title}
              </Link>
            </h2>
            <p className={`${text.soft} ${text.small}`}>
              {one.category}
              {one.isPublished ? `; published ${dayText(one.publishedOn ?? '')}` : '; not published yet'}
              {one.isDemo ? '; demo, invented' : ''}
            </p>
            <p>{countsText(one)}</p>
            {staleText(one) !== '' && <p className={text.tag}>{staleText(one)}</p>}
            <p className={`${layout.row} ${layout.noprint}`}>
              <button
                type="button"
                className={button.quiet}
                onClick={() => remove.mutate(one)}
                aria-label={`Remove the guide ${one.title}`}
              >
                Remove
              </button>
            </p>
          </article>
        ))}
      </div>
      {guides.data?.some(({ isPublished }) => isPublished) && <GuideSite />}
      <TopicHandouts />
    </>
  );
}

function countsText({ counts, toMend }: GuideShort): string {
  if (counts === undefined) return toMend === 1 ? 'One thing is still to be written.' : `${toMend} things are still to be written.`;
  const { read, fits, nearly, leftOut } = counts;
  return `${read} foods judged: ${fits} fit, ${nearly} nearly, ${leftOut} left out.`;
}

function staleText({ counts, takenOff }: GuideShort): string {
  const marked = counts?.marked ?? 0;
  return [
    ...(marked === 0 ? [] : [`${marked} to check against the package`]),
    ...(takenOff === 0 ? [] : [`${takenOff} taken off since it was published`]),
  ].join('; ');
}
