import { Link } from '@tanstack/react-router';
import type { InferResponseType } from 'hono/client';
import type { api } from '../../api.ts';
import type { Column } from '../../ui/table/column.ts';
import { Table } from '../../ui/table/Table.tsx';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import type { FoodSearch } from '../food/foodSearch.ts';

type FittingFood = InferResponseType<(typeof api.clients)[':id']['fits']['$post'], 200>['rows'][number];

/** Foods judged for a client, each the way to its own screen. */
export function FittingFoods({ foods, search }: { readonly foods: readonly FittingFood[]; readonly search: FoodSearch }) {
  const food: Column<FittingFood> = {
    key: 'food',
    name: 'Food',
    width: 'minmax(0, 2fr)',
    sortBy: ({ name }) => name,
    cell: ({ foodId, name, maker, marks }) => (
      <>
        <Link to="/foods/$foodId" params={{ foodId }} search={search}>
          {name}
        </Link>
        <span className={text.why}>{maker}</span>
        {marks.map(mark => (
          <span className={text.why} key={mark}>
            {mark}
          </span>
        ))}
      </>
    ),
  };
  return <Table label="Foods judged for this client" rows={foods} keyOf={({ foodId }) => foodId} columns={[food, ...columns]} />;
}

/** In the place of an amount, where none is told: the verdict says why. */
const withoutAmount: { readonly [offer in FittingFood['offer']]?: string } = { never: 'none', ask: 'ask first' };

const columns: readonly Column<FittingFood>[] = [
  {
    key: 'verdict',
    name: 'Verdict',
    width: 'minmax(0, 3fr)',
    cell: row => (
      <>
        <VerdictMark word={row.verdict} /> {row.closeCall && <span className={text.close}>close call</span>}{' '}
        {row.estimated && <span className={text.close}>estimated</span>}
        {withoutAmount[row.offer] === undefined ? (
          <span className={text.why}>{row.why}</span>
        ) : (
          <>
            <br />
            <b>{row.why}</b>
          </>
        )}
      </>
    ),
  },
  { key: 'meal', name: 'Fits in this meal', isNumber: true, cell: ({ offer, inMeal }) => withoutAmount[offer] ?? inMeal },
  { key: 'day', name: 'Fits in a day', isNumber: true, cell: ({ offer, inDay }) => withoutAmount[offer] ?? inDay },
];
