import { Link } from '@tanstack/react-router';
import type { InferResponseType } from 'hono/client';
import type { api } from '../../api.ts';
import type { Column } from '../../ui/table/column.ts';
import { Table } from '../../ui/table/Table.tsx';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import type { FoodSearch } from '../food/foodSearch.ts';
import { avoidedWords } from './avoidedWords.ts';

type Fits = InferResponseType<(typeof api.clients)[':id']['fits']['$post'], 200>;
type FittingFood = Fits['rows'][number];

/** Foods judged for a client, each the way to its own screen; what fits first, by the client's own reasons. */
export function FittingFoods({
  foods,
  search,
  amount,
}: {
  readonly foods: readonly FittingFood[];
  readonly search: Omit<FoodSearch, 'plate'>;
  /** Which of the amounts is shown, and what it is called. */
  readonly amount: { readonly at: number; readonly title: string };
}) {
  const food: Column<FittingFood> = {
    key: 'food',
    name: 'Food',
    width: 'minmax(0, 3fr)',
    sortBy: ({ name }) => name,
    cell: ({ foodId, name, maker, category, plate, offer, why, settles, marks, fluid }) => (
      <>
        <Link to="/foods/$foodId" params={{ foodId }} search={{ ...search, plate }}>
          {name}
        </Link>
        <span className={text.why}>{[maker, category].filter(one => one !== undefined).join(', ')}</span>
        {withoutAmount[offer] === undefined ? <span className={text.why}>{why}</span> : <b>{why}</b>}
        <span className={text.why}>
          {[...marks, ...(settles === undefined ? [] : [settles]), ...(fluid === undefined ? [] : [`Fluid: ${fluid}.`])].join(' ')}
        </span>
      </>
    ),
  };
  const told: Column<FittingFood> = {
    key: `amount ${amount.at}`,
    name: amount.title,
    isNumber: true,
    sortBy: row => row.amounts[amount.at]?.sortBy ?? null,
    cell: row => row.amounts[amount.at]?.text,
  };
  return (
    <Table
      label="Foods judged for this client"
      rows={foods}
      keyOf={({ foodId, plate }) => `${foodId} ${plate}`}
      columns={[verdict, food, told, ...amounts]}
      startSort={{ key: 'verdict', isDown: false }}
      wordsOf={({ name, maker = '', category = '' }) => `${name} ${maker} ${category}`}
    />
  );
}

/** The room under the nearest bound as a part of it, never more than there is. */
function roomText(margin: number): string {
  return margin < 0 ? `${Math.ceil(-margin * 100)}% over` : `${Math.floor(margin * 100 + 1e-9)}%`;
}

/** In the place of an amount, where none is told: the verdict says why. */
const withoutAmount: { readonly [offer in FittingFood['offer']]?: string } = { never: 'none', ask: 'ask first' };

const verdict: Column<FittingFood> = {
  key: 'verdict',
  name: 'Verdict',
  width: '7.5rem',
  sortBy: ({ place }) => place,
  cell: row => (
    <>
      {row.avoided === undefined ? <VerdictMark word={row.verdict} /> : <span className={text.tag}>{avoidedWords[row.avoided]}</span>}{' '}
      {row.closeCall && <span className={text.close}>close call</span>} {row.estimated && <span className={text.close}>estimated</span>}
    </>
  ),
};

const amounts: readonly Column<FittingFood>[] = [
  {
    key: 'margin',
    name: 'Room left',
    isNumber: true,
    sortBy: ({ margin }) => margin,
    cell: ({ margin }) => (margin === null ? 'not known' : roomText(margin)),
  },
  { key: 'meal', name: 'Fits in this meal', isNumber: true, cell: ({ offer, inMeal }) => withoutAmount[offer] ?? inMeal },
  { key: 'day', name: 'Fits in a day', isNumber: true, cell: ({ offer, inDay }) => withoutAmount[offer] ?? inDay },
];
