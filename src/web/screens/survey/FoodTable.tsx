import { useQueries } from '@tanstack/react-query';
import { useMemo, useState } from 'react';
import { answer, api, type SurveyFood, type SurveyRow } from '../../api.ts';
import { Table } from '../../ui/table/Table.tsx';
import { foodColumns } from './foodColumns.tsx';
import type { SurveyRequest } from './surveyRequest.ts';

const byVerdict = { key: 'verdict', isDown: false };
const keyOf = ({ foodId }: SurveyRow): string => foodId;

// One function for good: with another one what is known is put together anew with every drawing.
function byFood(blocks: readonly { readonly data: readonly SurveyFood[] | undefined }[]): ReadonlyMap<string, SurveyFood> {
  return new Map(blocks.flatMap(({ data }) => data ?? []).map(detail => [detail.foodId, detail]));
}

/** The foods of the survey, one row each. Reasons and ways in are asked for when rows come into view. */
export function FoodTable({
  rows,
  request,
  picked,
  onPick,
}: {
  readonly rows: readonly SurveyRow[];
  readonly request: SurveyRequest;
  readonly picked: string | undefined;
  readonly onPick: (foodId: string) => void;
}) {
  const [inView, setInView] = useState<readonly (readonly SurveyRow[])[]>([]);
  const details = useQueries({
    queries: inView.map(block => {
      const foodIds = block.map(keyOf);
      return {
        queryKey: ['survey', request, 'foods', foodIds],
        queryFn: () => answer(api.survey.foods.$post({ json: { ...request, foodIds } })),
        staleTime: 60_000,
      };
    }),
    combine: byFood,
  });
  const columns = useMemo(() => foodColumns(request, details, picked), [request, details, picked]);
  return (
    <Table
      label="Foods of the survey"
      rows={rows}
      keyOf={keyOf}
      columns={columns}
      startSort={byVerdict}
      picked={picked}
      onPick={onPick}
      onView={setInView}
      scrollsAlone
    />
  );
}
