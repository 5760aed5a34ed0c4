import type { InferRequestType } from 'hono/client';
import type { api } from '../../api.ts';
import type { SurveySearch } from './surveySearch.ts';

/** The server's request, with every control set. */
export type SurveyRequest = InferRequestType<typeof api.survey.$post>['json'] & {
  readonly category: string;
  readonly plate: string;
  readonly yardstick: string;
};

const settings = ['ckd-not-on-dialysis', 'hemodialysis', 'peritoneal-dialysis', 'transplant'] as const;
export type Setting = (typeof settings)[number];

export const settingNames: Readonly<Record<Setting, string>> = {
  'ckd-not-on-dialysis': 'CKD not on dialysis',
  hemodialysis: 'hemodialysis',
  'peritoneal-dialysis': 'peritoneal dialysis',
  transplant: 'transplant',
};

/** The request that an address asks for; what it leaves out is the first that there is. */
export function surveyRequest(search: SurveySearch, fallback: { readonly category: string; readonly plate: string }): SurveyRequest {
  const setting = settings.find(one => one === search.setting);
  return {
    category: search.category ?? fallback.category,
    plate: search.plate ?? fallback.plate,
    yardstick: search.yardstick ?? 'low-in-sodium-as-eaten',
    switchedOn: search.on?.split(',') ?? [],
    ...(setting === undefined ? {} : { setting }),
  };
}
