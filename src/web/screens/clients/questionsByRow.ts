import type { Proposal } from '../../api.ts';
import { isTyped } from './typedResults.ts';

type Issue = Pick<Proposal['issues'][number], 'told' | 'answeredBy'>;

/** What is asked of each row, by its place in the form: an answer counts the rows that have a value. `before` rows stand on record already. */
export function questionsByRow(
  rows: readonly { readonly value: string }[],
  list: 'labs' | 'weighings',
  issues: readonly Issue[],
  before = 0,
): ReadonlyMap<number, string> {
  const places = rows.flatMap((row, at) => (isTyped(row) ? [at] : []));
  return new Map(
    issues.flatMap(({ told, answeredBy }) => {
      const place = answeredBy?.list === list ? places[answeredBy.at - before] : undefined;
      return place === undefined ? [] : [[place, told] as const];
    }),
  );
}

/** What no row of these answers: about something else, or about what is on record already. */
export function askedElsewhere<One extends Issue>(
  issues: readonly One[],
  before: Readonly<Record<'labs' | 'weighings', number>>,
): readonly One[] {
  return issues.filter(({ answeredBy }) => answeredBy === undefined || answeredBy.at < before[answeredBy.list]);
}
