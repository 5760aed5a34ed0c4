import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { answer, api, type Guide } from '../../api.ts';
import { DocumentTold, SavedOrNot } from '../../ui/draft/DocumentState.tsx';
import { typedOf } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { neededAt } from '../../ui/preview/neededAt.ts';
import { PagePreview } from '../../ui/preview/PagePreview.tsx';
import { useLast } from '../../ui/useLast.ts';
import { useSettled } from '../../ui/useSettled.ts';
import { GuideDisclosures } from './GuideDisclosures.tsx';
import { GuideFoods } from './GuideFoods.tsx';
import { GuideSurvey } from './GuideSurvey.tsx';
import { GuideWords } from './GuideWords.tsx';
import { Outputs } from './Outputs.tsx';
import { foodIn, guideOf, placeOfFood, withFood } from './typedGuide.ts';
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
  if (guide.data === undefined) return <Page title="Guide" above={above} isReading={guide.isPending} fault={guide.error} />;
  return <Editor key={guideId} id={guideId} start={guide.data} />;
}

const above = (
  <Link to="/guides" className={layout.noprint}>
    All guides
  </Link>
);

function Editor({ id, start }: { readonly id: string; readonly start: Guide }) {
  const inHand = useGuide(id, start);
  const { values, change } = inHand;
  const json = useSettled(guideOf(values), 400);
  const preview = useQuery({
    queryKey: ['guide preview', id, json],
    queryFn: () => answer(api['guide-previews'].$post({ json: { guide: json, guideId: id } })),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const issues = preview.data?.issues ?? [];
  const wrongAt = neededAt(issues);
  const typed = typedOf(values, change, wrongAt);
  const typedFood = (foodId: string) =>
    typedOf(
      foodIn(values.foods, foodId),
      next => change(before => ({ ...before, foods: withFood(before.foods, next(foodIn(before.foods, foodId))) })),
      place => wrongAt(placeOfFood(foodId, place)),
    );
  // The foods can only be judged while nothing is to be mended; what is being said of them stays in sight.
  const judged = useLast(preview.data?.counts === undefined ? undefined : preview.data);
  return (
    <Page
      title={values.title.trim() === '' ? 'A guide without a title' : values.title}
      above={above}
      actions={<SavedOrNot {...inHand} />}
      fault={preview.error}
    >
      <DocumentTold {...inHand} />
      <p className={layout.onlyprint}>To print the guide itself, save it as PDF or print its page.</p>
      <div className={`${layout.halves} ${layout.noprint}`}>
        <div className={layout.stack}>
          <GuideWords typed={typed} />
          <GuideSurvey typed={typed} tests={judged?.tests ?? []} />
          <GuideFoods typed={typed} typedFood={typedFood} foods={judged?.foods} />
          <GuideDisclosures typed={typed} foods={judged?.foods} />
        </div>
        <div className={`${layout.stack} ${layout.beside}`}>
          <PagePreview
            src={preview.data?.previewId === undefined ? undefined : `/api/guide-previews/${preview.data.previewId}`}
            isBuilding={preview.isPending}
            issues={issues}
            content={[id, json]}
            print={dress => api['guide-previews'].paper.$post({ json: { guide: json, guideId: id, dress } })}
          />
          <Outputs id={id} inHand={inHand} preview={preview.data} />
        </div>
      </div>
    </Page>
  );
}
