import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { answer, api, type KeptHandout } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { DocumentTold, SavedOrNot } from '../../ui/draft/DocumentState.tsx';
import { Choice } from '../../ui/form/Choice.tsx';
import type { Choices } from '../../ui/form/choices.ts';
import { typedOf } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Empty } from '../../ui/page/Empty.tsx';
import { Page } from '../../ui/page/Page.tsx';
import { neededAt } from '../../ui/preview/neededAt.ts';
import { PagePreview } from '../../ui/preview/PagePreview.tsx';
import type { Print } from '../../ui/preview/PaperPages.tsx';
import { useLast } from '../../ui/useLast.ts';
import { useSettled } from '../../ui/useSettled.ts';
import { settingNames } from '../survey/surveyRequest.ts';
import { useSaveTopicHandout } from './actions.ts';
import { HandoutFiles } from './HandoutFiles.tsx';
import { HandoutForm } from './HandoutForm.tsx';
import { HandoutGrade } from './HandoutGrade.tsx';
import { handoutOf, titleOf } from './typedHandout.ts';
import { useTopicHandout } from './useTopicHandout.ts';

const route = getRouteApi('/handouts/$handoutId');

/** A handout on a topic: for readers of one setting, judged by a yardstick, without anybody's numbers. */
export function TopicHandoutScreen() {
  const { handoutId } = route.useParams();
  const all = useQuery({ queryKey: ['handouts'], queryFn: () => answer(api.handouts.$get()) });
  const kept = all.data?.find(({ handout }) => handout.id === handoutId);
  if (kept !== undefined) return <Editor key={handoutId} id={handoutId} start={kept} />;
  return (
    <Page title="Handout" above={above} isReading={all.isPending} fault={all.error}>
      {all.isSuccess && <Empty>This handout is not there any more.</Empty>}
    </Page>
  );
}

const above = (
  <Link to="/guides" className={layout.noprint}>
    All guides and handouts
  </Link>
);

const settings: Choices<string> = Object.entries(settingNames);

function Editor({ id, start }: { readonly id: string; readonly start: KeptHandout }) {
  const inHand = useTopicHandout(id, start);
  const { values, change } = inHand;
  const save = useSaveTopicHandout(inHand);
  useOffered([save]);
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const handout = useSettled({ ...handoutOf(values), id }, 400);
  const preview = useQuery({
    queryKey: ['handout preview', handout],
    queryFn: () => answer(api['handout-previews'].$post({ json: { handout } })),
    placeholderData: keepPreviousData,
    gcTime: 0,
  });
  const issues = preview.data?.issues ?? [];
  // While something is to be mended the foods are not judged; those that were stay in sight.
  const judged = useLast(preview.data?.previewId === undefined ? undefined : preview.data.foods);
  const src = preview.data?.previewId === undefined ? undefined : `/api/guide-previews/${preview.data.previewId}`;
  const print: Print = dress => api['handout-previews'].paper.$post({ json: { handout, dress } });
  const typed = typedOf(values, change, neededAt(issues));
  return (
    <Page
      title={titleOf(values)}
      above={above}
      actions={
        <>
          <SavedOrNot {...inHand} />
          <ActionButton action={save} isMain />
        </>
      }
      isReading={plates.isPending || yardsticks.isPending}
      fault={workspace.error ?? plates.error ?? yardsticks.error ?? preview.error}
    >
      <DocumentTold {...inHand} />
      <p className={layout.onlyprint}>To print the handout itself, save it as PDF or print its page.</p>
      <div className={`${layout.halves} ${layout.noprint}`}>
        <section className={`${layout.sheet} ${layout.stack}`} aria-label="What you write">
          <div className={layout.formgrid}>
            <Choice label="For readers on" choices={settings} {...typed.field('setting')} />
            <Choice
              label="Judged by"
              choices={yardsticks.data?.map(({ yardstick: { id, title } }) => [String(id), String(title)] as const) ?? []}
              gone="a yardstick that is gone"
              value={values.topic.yardstickId}
              onChange={yardstickId => typed.set({ topic: { yardstickId, switchedOn: [] } })}
            />
          </div>
          <HandoutForm
            typed={typed}
            meals={[]}
            known={workspace.data?.categories.map(({ name }) => name) ?? []}
            plates={plates.data ?? []}
            foods={judged ?? []}
          />
        </section>
        <div className={`${layout.stack} ${layout.beside}`}>
          <PagePreview
            src={preview.error === null ? src : undefined}
            isBuilding={preview.isPending}
            issues={issues}
            content={handout}
            print={print}
          />
          <HandoutGrade grade={preview.data?.grade} language={values.language} />
          <HandoutFiles src={src} print={print} name={id} />
        </div>
      </div>
    </Page>
  );
}
