import { Link } from '@tanstack/react-router';
import { countedClasses } from '#core/additive/countedClasses.ts';
import type { FoodShort } from '../../api.ts';
import type { Column } from '../../ui/table/column.ts';
import text from '../../ui/text.module.css';
import { AdditiveTags } from '../survey/AdditiveTags.tsx';

/** A food of the shelf with its standing label in short. */
export const foodColumns: readonly Column<FoodShort>[] = [
  {
    key: 'name',
    name: 'Food',
    width: 'minmax(0, 3fr)',
    sortBy: ({ name }) => name,
    cell: ({ id, name, maker, findings }) => (
      <>
        <Link to="/foods/$foodId" params={{ foodId: id }} search={{}}>
          {name}
        </Link>
        <span className={text.why}>
          {maker}
          {findings > 0 ? ` · audit: ${findings} to look at` : ''}
        </span>
      </>
    ),
  },
  { key: 'serving', name: 'Serving', width: 'minmax(0, 1.4fr)', cell: ({ servingText }) => servingText ?? 'not printed' },
  {
    key: 'energyKcal',
    name: 'Energy',
    isNumber: true,
    width: '5rem',
    sortBy: ({ energyKcal }) => energyKcal,
    cell: ({ energyKcal }) => (energyKcal === null ? 'unknown' : `${energyKcal} kcal`),
  },
  {
    key: 'sodiumMg',
    name: 'Sodium',
    isNumber: true,
    width: '5rem',
    sortBy: ({ sodiumMg }) => sodiumMg,
    cell: ({ sodiumMg }) => (sodiumMg === null ? 'unknown' : `${sodiumMg} mg`),
  },
  {
    key: 'additives',
    name: 'Additives',
    width: 'minmax(0, 1.6fr)',
    cell: ({ statementRead, additives }) => (statementRead ? <AdditiveTags classes={countedClasses(additives)} /> : 'no statement read'),
  },
  {
    key: 'readOn',
    name: 'Read',
    width: 'minmax(0, 1.2fr)',
    sortBy: ({ readOn }) => readOn ?? null,
    cell: ({ readOn, readAt }) => (
      <>
        {readOn ?? 'day not noted'}
        <span className={text.why}>{readAt}</span>
      </>
    ),
  },
];
