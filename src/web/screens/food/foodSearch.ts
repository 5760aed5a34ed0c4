/** The plate and the yardstick that "how much of it fits" begins with: those of the survey one came from. */
export interface FoodSearch {
  readonly plate?: string;
  readonly yardstick?: string;
}

export function foodSearch(search: Readonly<Record<string, unknown>>): FoodSearch {
  return Object.fromEntries(
    (['plate', 'yardstick'] as const).flatMap(key => (typeof search[key] === 'string' ? [[key, search[key]]] : [])),
  );
}
