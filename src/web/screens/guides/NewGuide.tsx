import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { Sentence } from '../survey/Sentence.tsx';
import { surveyRequest } from '../survey/surveyRequest.ts';
import type { SurveySearch } from '../survey/surveySearch.ts';
import { useNewGuideActions } from './actions.ts';
import { newGuideOf, typedNewGuide } from './typedNewGuide.ts';

/** Begins a guide: which survey it is made from, its title, and who writes it. Everything else is written in its screen. */
export function NewGuide({ start, onDone }: { readonly start: SurveySearch; readonly onDone: () => void }) {
  const typed = useTyped(() => typedNewGuide(start));
  // A guide of another survey is another guide.
  const draft = useDraft(browserDraft(`guide new ${Object.values(typedNewGuide(start).search).join(' ').trim()}`), typed);
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const categories = workspace.data?.categories.map(({ name }) => name) ?? [];
  const search = typed.part('search');
  const request = surveyRequest(search.values, { category: categories[0] ?? '', plates: plates.data });
  const yardstickTitle = yardsticks.data?.find(one => one.yardstick.id === request.yardstick)?.yardstick.title ?? request.yardstick;
  const isComplete = typed.values.title.trim() !== '' && categories.length > 0;
  const { begin, cancel, fault } = useNewGuideActions(
    isComplete ? newGuideOf(typed.values, request, String(yardstickTitle), new Date().toLocaleDateString('sv')) : undefined,
    draft.forget,
    onDone,
  );
  return (
    <ActionForm action={begin} className={`${layout.sheet} ${layout.stack} ${layout.noprint}`} formRef={focusFirstField}>
      <h2>A new guide</h2>
      <Draft draft={draft} />
      <Sentence
        request={request}
        portionText="the plate’s portion"
        categories={categories}
        plates={plates.data ?? []}
        yardsticks={yardsticks.data ?? []}
        onChange={search.set}
      />
      <Field label="Title, as readers will see it" {...typed.field('title')} />
      <div className={layout.formgrid}>
        <Field label="Author" {...typed.field('author')} />
        <Field label="Credentials (MS, RDN)" {...typed.field('credentials')} />
      </div>
      <Told error={workspace.error ?? plates.error ?? yardsticks.error ?? fault} />
      {categories.length === 0 && workspace.isSuccess && <p>No label with a category is on the shelf yet. Add labels under Data first.</p>}
      <p className={layout.row}>
        <ActionButton action={begin} isMain submits />
        <ActionButton action={cancel} />
      </p>
    </ActionForm>
  );
}
