/** What the survey's address holds: every control of the sentence, so that a survey can be kept as a bookmark. */
export interface SurveySearch {
  readonly category?: string;
  readonly plate?: string;
  readonly yardstick?: string;
  readonly setting?: string;
  readonly on?: string;
  readonly show?: string;
  readonly food?: string;
}

const keys = ['category', 'plate', 'yardstick', 'setting', 'on', 'show', 'food'] as const;

/** Reads an address; what is no text is left out. */
export function surveySearch(search: Readonly<Record<string, unknown>>): SurveySearch {
  return Object.fromEntries(keys.flatMap(key => (typeof search[key] === 'string' && search[key] !== '' ? [[key, search[key]]] : [])));
}
