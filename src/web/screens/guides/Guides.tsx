import { useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useState } from 'react';
import { dayText } from '#core/guide/day.ts';
import { answer, api, type GuideShort } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import type { Action } from '../../ui/action/action.ts';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Empty } from '../../ui/page/Empty.tsx';
import { Page } from '../../ui/page/Page.tsx';
import { Reading } from '../../ui/page/Reading.tsx';
import { Removed } from '../../ui/Removed.tsx';
import text from '../../ui/text.module.css';
import { TopicHandouts } from '../handouts/TopicHandouts.tsx';
import { useGuideListActions } from './actions.ts';
import { GuideSite } from './GuideSite.tsx';
import { NewGuide } from './NewGuide.tsx';

const route = getRouteApi('/guides');

/** The guides: what each tells its readers, and which of their lines have gone stale. */
export function GuidesScreen() {
  const search = route.useSearch();
  const [isNew, setNew] = useState(search.category !== undefined);
  const guides = useQuery({ queryKey: ['guides'], queryFn: () => answer(api.guides.$get()) });
  const { begin, remove, undo, removed, fault } = useGuideListActions(() => setNew(true));
  useOffered([begin]);
  return (
    <Page
      title="Guides"
      about="A guide is a survey that readers can shop from: your words, and figures that stay linked to their labels."
      actions={<ActionButton action={begin} isMain />}
      fault={guides.error ?? fault}
    >
      {removed !== undefined && undo !== undefined && <Removed name={String(removed.guide.title)} undo={undo} />}
      {isNew && <NewGuide start={search} onDone={() => setNew(false)} />}
      {guides.isPending && <Reading />}
      {guides.data?.length === 0 && !isNew && (
        <Empty>
          <h2>No guide yet</h2>
          <p>
            Begin one here, or open a <Link to="/">survey</Link> and choose “Make a guide of it”.
          </p>
        </Empty>
      )}
      <div className={layout.cards}>
        {guides.data?.map(one => (
          <GuideCard key={one.id} guide={one} remove={remove(one)} />
        ))}
      </div>
      {guides.data?.some(({ isPublished }) => isPublished) && <GuideSite />}
      <TopicHandouts />
    </Page>
  );
}

function GuideCard({ guide, remove }: { readonly guide: GuideShort; readonly remove: Action }) {
  const { id, title, category, isPublished, publishedOn = '', isDemo } = guide;
  return (
    <article className={`${layout.sheet} ${layout.stack}`}>
      <h2>
        <Link to="/guides/$guideId" params={{ guideId: id }}>
          {title}
        </Link>
      </h2>
      <p className={`${text.soft} ${text.small}`}>
        {category}
        {isPublished ? `; published ${dayText(publishedOn)}` : '; not published yet'}
        {isDemo ? '; demo, invented' : ''}
      </p>
      <p>{countsText(guide)}</p>
      {staleText(guide) !== '' && <p className={text.tag}>{staleText(guide)}</p>}
      <p className={layout.row}>
        <ActionButton action={remove} />
      </p>
    </article>
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
