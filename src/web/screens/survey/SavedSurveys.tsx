import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import type { SurveyRequest } from './surveyRequest.ts';
import type { SurveySearch } from './surveySearch.ts';

/** Surveys kept by name: the controls of the sentence, not their outcome, which is judged anew each time. */
export function SavedSurveys({ request, onOpen }: { readonly request: SurveyRequest; readonly onOpen: (search: SurveySearch) => void }) {
  const queries = useQueryClient();
  const [title, setTitle] = useState('');
  const saved = useQuery({ queryKey: ['surveys'], queryFn: () => answer(api.surveys.$get()) });
  const refresh = (): Promise<void> => queries.invalidateQueries({ queryKey: ['surveys'] });
  const save = useMutation({
    mutationFn: () => {
      const { category, plate, yardstick, setting, portion, switchedOn = [] } = request;
      const servings = portion !== undefined && 'servings' in portion ? { servings: portion.servings } : {};
      return answer(
        api.surveys[':id'].$put({
          param: { id: crypto.randomUUID() },
          json: {
            version: null,
            survey: {
              title,
              category,
              plateId: plate,
              yardstickId: yardstick,
              switchedOn,
              ...servings,
              ...(setting === undefined ? {} : { setting }),
            },
          },
        }),
      );
    },
    onSuccess: () => {
      setTitle('');
      return refresh();
    },
  });
  const remove = useMutation({
    mutationFn: ({ id, version }: { readonly id: string; readonly version: number }) =>
      answer(api.surveys[':id'].$delete({ param: { id }, query: { version: String(version) } })),
    // Also where another window changed it: what stands now is shown.
    onSettled: refresh,
  });
  return (
    <section className={`${layout.sheet} ${layout.noprint}`} aria-labelledby="saved-title">
      <h2 id="saved-title">Saved surveys</h2>
      <Told error={saved.error ?? save.error ?? remove.error} />
      <ul>
        {saved.data?.map(({ survey: one, version }) => (
          <li key={one.id}>
            <span className={layout.row}>
              <button
                type="button"
                className={button.quiet}
                onClick={() =>
                  onOpen({
                    category: one.category,
                    plate: one.plateId,
                    yardstick: one.yardstickId,
                    setting: one.setting ?? '',
                    servings: one.servings === undefined ? '' : String(one.servings),
                    on: (one.switchedOn ?? []).join(','),
                    food: '',
                    show: '',
                  })
                }
              >
                {one.title}
              </button>
              <button
                type="button"
                className={button.quiet}
                aria-label={`Remove ${one.title}`}
                onClick={() => remove.mutate({ id: one.id, version })}
              >
                Remove
              </button>
            </span>
          </li>
        ))}
      </ul>
      <form
        className={layout.row}
        onSubmit={event => {
          event.preventDefault();
          save.mutate();
        }}
      >
        <label className={layout.field}>
          <span>Name of this survey</span>
          <input type="text" required maxLength={300} value={title} onChange={event => setTitle(event.target.value)} />
        </label>
        <button type="submit" className={button.quiet}>
          Save it
        </button>
      </form>
    </section>
  );
}
