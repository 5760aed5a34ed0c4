/** What the survey's address holds: every control of the sentence, so that a survey can be kept as a bookmark. */
export interface SurveySearch {
  readonly category?: string;
  readonly plate?: string;
  readonly yardstick?: string;
  readonly setting?: string;
  readonly on?: string;
  /** Servings, in the place of the plate's own portion. */
  readonly servings?: string;
  /** Keys of further nutrients, split by commas. */
  readonly columns?: string;
  readonly show?: string;
  readonly food?: string;
}

const keys = ['category', 'plate', 'yardstick', 'setting', 'on', 'servings', 'columns', 'show', 'food'] as const;

/** Reads an address; what is no text is left out. */
export function surveySearch(search: Readonly<Record<string, unknown>>): SurveySearch {
  return Object.fromEntries(
    keys.flatMap(key => {
      // The router reads "2" in an address as a number.
      const value = typeof search[key] === 'number' ? String(search[key]) : search[key];
      return typeof value === 'string' && value !== '' ? [[key, value]] : [];
    }),
  );
}
