import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { answer, api, type Guide, Problem } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { PagePreview } from '../../ui/preview/PagePreview.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useSettled } from '../../ui/useSettled.ts';
import { GuideDisclosures } from './GuideDisclosures.tsx';
import { GuideFoods } from './GuideFoods.tsx';
import { GuideSurvey } from './GuideSurvey.tsx';
import { GuideWords } from './GuideWords.tsx';
import { Outputs } from './Outputs.tsx';
import { guideOf } from './typedGuide.ts';
import { useGuide } from './useGuide.ts';

const route = getRouteApi('/guides/$guideId');

/** One guide: what its author writes, and beside it the page as readers will have it. */
export function GuideScreen() {
  const { guideId } = route.useParams();
  const guide = useQuery({
    queryKey: ['guide', guideId],
    queryFn: () => answer(api.guides[':id'].$get({ param: { id: guideId } })),
    // The form holds what was typed: it is read once, each time the screen opens.
    staleTime: Number.POSITIVE_INFINITY,
    gcTime: 0,
  });
  return (
    <>
      <p className={layout.noprint}>
        <Link to="/guides">All guides</Link>
      </p>
      <Told error={guide.error} />
      {guide.data !== undefined && <Editor key={guideId} id={guideId} start={guide.data} />}
    </>
  );
}

function Editor({ id, start }: { readonly id: string; readonly start: Guide }) {
  const inHand = useGuide(id, start);
  const { typed, change, state, error, isPublished } = inHand;
  const json = useSettled(guideOf(typed), 400);
  const preview = useQuery({
    queryKey: ['guide preview', id, json],
    queryFn: () => answer(api['guide-previews'].$post({ json: { guide: json, guideId: id } })),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const issues = preview.data?.issues ?? [];
  const wrong = (heading: string): string | undefined => {
    const issue = issues.find(({ place }) => place.heading === heading);
    return issue === undefined ? undefined : `Needed: ${issue.expected}.`;
  };
  const shared = { typed, change, wrong };
  return (
    <>
      <div className={layout.spread}>
        <h1>{typed.title.trim() === '' ? 'A guide without a title' : typed.title}</h1>
        <span className={`${text.soft} ${layout.noprint}`} role="status">
          {state === 'saved' ? 'Saved' : state === 'saving' ? 'Saving …' : 'Not saved yet'}
        </span>
      </div>
      <Told error={error ?? preview.error} />
      {error instanceof Problem && error.code === 'changed-meanwhile' && (
        <p className={layout.row}>
          <button type="button" className={button.quiet} onClick={() => void inHand.settle('keep mine')}>
            Keep what is typed here
          </button>
          <button type="button" className={button.quiet} onClick={() => void inHand.settle('take theirs')}>
            Take the other state, give up what is typed here
          </button>
        </p>
      )}
      <p className={layout.onlyprint}>To print the guide itself, save it as PDF or print its page.</p>
      <div className={`${layout.halves} ${layout.noprint}`}>
        <div className={layout.stack}>
          <GuideWords {...shared} />
          <GuideSurvey {...shared} tests={preview.data?.tests ?? []} />
          <GuideFoods {...shared} foods={preview.data?.foods ?? []} />
          <GuideDisclosures {...shared} foods={preview.data?.foods ?? []} />
        </div>
        <div className={`${layout.stack} ${layout.beside}`}>
          <PagePreview
            src={preview.data?.previewId === undefined ? undefined : `/api/guide-previews/${preview.data.previewId}`}
            isBuilding={preview.isPending}
            issues={issues}
            content={[id, json]}
            print={dress => api['guide-previews'].paper.$post({ json: { guide: json, guideId: id, dress } })}
          />
          <Outputs id={id} inHand={inHand} isPublished={isPublished} preview={preview.data} />
        </div>
      </div>
    </>
  );
}
