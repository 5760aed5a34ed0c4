import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useSavedSurveyActions } from './actions.ts';
import type { SurveyRequest } from './surveyRequest.ts';
import type { SurveySearch } from './surveySearch.ts';

/** Surveys kept by name: the controls of the sentence, not their outcome, which is judged anew each time. */
export function SavedSurveys({ request, onOpen }: { readonly request: SurveyRequest; readonly onOpen: (search: SurveySearch) => void }) {
  const typed = useTyped({ title: '' });
  const saved = useQuery({ queryKey: ['surveys'], queryFn: () => answer(api.surveys.$get()) });
  const actions = useSavedSurveyActions(request, typed.values.title, { open: onOpen, onSaved: () => typed.set({ title: '' }) });
  return (
    <section className={`${layout.sheet} ${layout.noprint}`} aria-labelledby="saved-title">
      <h2 id="saved-title">Saved surveys</h2>
      <Told error={saved.error ?? actions.fault} />
      <ul>
        {saved.data?.map(kept => (
          <li key={kept.survey.id}>
            <span className={layout.row}>
              <ActionButton action={actions.open(kept)} />
              <ActionButton action={actions.remove(kept)} />
            </span>
          </li>
        ))}
      </ul>
      <ActionForm action={actions.save} className={layout.row}>
        <Field label="Name of this survey" isRequired maxLength={300} {...typed.field('title')} />
        <ActionButton action={actions.save} submits />
      </ActionForm>
    </section>
  );
}
