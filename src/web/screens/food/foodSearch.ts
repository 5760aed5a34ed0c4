/** What "how much of it fits" begins with, the survey's plate and yardstick, and the client it is judged for, where one came from a client. */
export interface FoodSearch {
  readonly plate?: string;
  readonly yardstick?: string;
  /** The opaque id of a client, never a name. */
  readonly client?: string;
  readonly meal?: string;
  readonly useEstimates?: true;
}

export function foodSearch(search: Readonly<Record<string, unknown>>): FoodSearch {
  const told = (['plate', 'yardstick', 'client', 'meal'] as const).flatMap(key =>
    typeof search[key] === 'string' ? [[key, search[key]]] : [],
  );
  return { ...Object.fromEntries(told), ...(search.useEstimates === true ? { useEstimates: true as const } : {}) };
}
