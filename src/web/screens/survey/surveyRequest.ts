import type { InferRequestType } from 'hono/client';
import { type SurveyColumnKey, surveyColumnKeys } from '#core/yardstick/surveyColumns.ts';
import type { api, KeptPlate } from '../../api.ts';
import type { SurveySearch } from './surveySearch.ts';

/** The server's request, with every control set. */
export type SurveyRequest = Omit<InferRequestType<typeof api.survey.$post>['json'], 'columns'> & {
  readonly category: string;
  readonly plate: string;
  readonly yardstick: string;
  readonly columns: SurveyColumnKey[];
};

const settings = ['ckd-not-on-dialysis', 'hemodialysis', 'peritoneal-dialysis', 'transplant'] as const;
export type Setting = (typeof settings)[number];

export const settingNames: Readonly<Record<Setting, string>> = {
  'ckd-not-on-dialysis': 'CKD not on dialysis',
  hemodialysis: 'hemodialysis',
  'peritoneal-dialysis': 'peritoneal dialysis',
  transplant: 'transplant',
};

/** More would leave the names of foods no room. */
export const mostColumns = 4;

function isColumn(key: string): key is SurveyColumnKey {
  return surveyColumnKeys.some(one => one === key);
}

/** The plate to begin with: the first that is for the category, else the first for anything. */
export function plateFor(category: string | undefined, plates: readonly KeptPlate[] | undefined): string {
  const forIt = plates?.find(({ plate }) => category !== undefined && plate.categories?.includes(category));
  return (forIt ?? plates?.find(({ plate }) => plate.categories === undefined))?.plate.id ?? 'on-its-own';
}

/** The request that an address asks for; what it leaves out is the first that there is. */
export function surveyRequest(
  search: SurveySearch,
  fallback: { readonly category: string; readonly plates: readonly KeptPlate[] | undefined },
): SurveyRequest {
  const category = search.category || fallback.category;
  const setting = settings.find(one => one === search.setting);
  const servings = Number(search.servings);
  const columns = (search.columns?.split(',') ?? []).filter(isColumn).slice(0, mostColumns);
  return {
    category,
    plate: search.plate || plateFor(category, fallback.plates),
    yardstick: search.yardstick || 'low-in-sodium-as-eaten',
    switchedOn: search.on?.split(',').filter(Boolean) ?? [],
    columns,
    ...(servings > 0 && Number.isFinite(servings) ? { portion: { servings } } : {}),
    ...(setting === undefined ? {} : { setting }),
  };
}
