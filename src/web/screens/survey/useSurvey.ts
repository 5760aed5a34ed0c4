import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import { answer, api } from '../../api.ts';
import { surveyRequest } from './surveyRequest.ts';
import type { SurveySearch } from './surveySearch.ts';

/** What an address asks for, and the survey of it, looked at again until all minerals are estimated. */
export function useSurvey(search: SurveySearch) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const categories = workspace.data?.categories.map(({ name }) => name) ?? [];
  const category = categories[0];
  // Kept as one object while nothing in it changes: what is asked for of each food goes by it.
  const request = useMemo(
    () => (category === undefined ? undefined : surveyRequest(search, { category, plates: plates.data })),
    [search, category, plates.data],
  );
  const survey = useQuery({
    queryKey: ['survey', request],
    queryFn: () => answer(api.survey.$post({ json: request! })),
    enabled: request !== undefined && plates.data !== undefined,
    placeholderData: keepPreviousData,
    refetchInterval: ({ state: { data } }) => (data?.estimating != null && data.estimating.done < data.estimating.of ? 1_000 : false),
  });
  return {
    categories,
    plates: plates.data,
    yardsticks: yardsticks.data,
    request,
    survey: survey.data,
    isShelfEmpty: workspace.data?.foods === 0,
    fault: workspace.error ?? plates.error ?? yardsticks.error ?? survey.error,
  };
}
