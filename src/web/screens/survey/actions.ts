import { useMutation, useQueryClient } from '@tanstack/react-query';
import { answer, api, type KeptSurvey, problemOf } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { saveFile } from '../../ui/saveFile.ts';
import type { SurveyRequest } from './surveyRequest.ts';
import type { SurveySearch } from './surveySearch.ts';

/** What can be done with the table of a survey. `showAll` takes back that only some of its foods are shown; without it all are. */
export function useTableActions(request: SurveyRequest, showAll: (() => void) | undefined) {
  const fetchTable = useMutation({
    mutationFn: async () => {
      const response = await api.survey.csv.$post({ json: request });
      if (!response.ok) throw await problemOf(response);
      return response.blob();
    },
    onSuccess: table => saveFile(table, `survey of ${request.category}.csv`),
  });
  const save: Action = { label: 'Save as CSV', isBusy: fetchTable.isPending, run: () => fetchTable.mutate() };
  const print: Action = { label: 'Print', about: 'Print the survey', run: () => window.print() };
  const showAllAgain: Action | undefined = showAll && { label: 'Show all again', run: showAll };
  return { save, print, showAllAgain, fault: fetchTable.error };
}

/** Surveys kept by name. `open` shows one, `onSaved` is told when the one that is shown has been kept. */
export function useSavedSurveyActions(
  request: SurveyRequest,
  title: string,
  { open, onSaved }: { readonly open: (search: SurveySearch) => void; readonly onSaved: () => void },
) {
  const queries = useQueryClient();
  const refresh = (): Promise<void> => queries.invalidateQueries({ queryKey: ['surveys'] });
  const keep = useMutation({
    mutationFn: () => {
      const { category, plate: plateId, yardstick: yardstickId, setting, portion, switchedOn = [] } = request;
      const servings = portion !== undefined && 'servings' in portion ? { servings: portion.servings } : {};
      const survey = { title, category, plateId, yardstickId, switchedOn, ...servings, ...(setting === undefined ? {} : { setting }) };
      return answer(api.surveys[':id'].$put({ param: { id: crypto.randomUUID() }, json: { version: null, survey } }));
    },
    onSuccess: () => {
      onSaved();
      return refresh();
    },
  });
  const drop = useMutation({
    mutationFn: ({ survey: { id }, version }: KeptSurvey) =>
      answer(api.surveys[':id'].$delete({ param: { id }, query: { version: String(version) } })),
    // Also where another window changed it: what stands now is shown.
    onSettled: refresh,
  });
  const save: Action = { label: 'Save this survey', shortcut: 'Control+S', isBusy: keep.isPending, run: () => keep.mutate() };
  return {
    save,
    open: ({ survey }: KeptSurvey): Action => ({ label: survey.title, run: () => open(searchOf(survey)) }),
    remove: (kept: KeptSurvey): Action => ({ label: 'Remove', about: `Remove ${kept.survey.title}`, run: () => drop.mutate(kept) }),
    fault: keep.error ?? drop.error,
  };
}

/** The address of a kept survey; an empty text takes away what the present one has. */
function searchOf({ category, plateId, yardstickId, setting, servings, switchedOn = [] }: KeptSurvey['survey']): SurveySearch {
  return {
    category,
    plate: plateId,
    yardstick: yardstickId,
    setting: setting ?? '',
    servings: servings === undefined ? '' : String(servings),
    on: switchedOn.join(','),
    food: '',
    show: '',
  };
}
