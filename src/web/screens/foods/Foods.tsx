import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { answer, api, type FoodShort } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { Table } from '../../ui/table/Table.tsx';
import { foodColumns } from './foodColumns.tsx';

const route = getRouteApi('/foods');
const keyOf = ({ id }: FoodShort): string => id;

/** Every food on the shelf, with its standing label in short. */
export function FoodsScreen() {
  const { search = '', category = '' } = route.useSearch();
  const navigate = route.useNavigate();
  const change = (to: { search?: string; category?: string }): void =>
    void navigate({ search: { search, category, ...to }, replace: true });
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const foods = useQuery({
    queryKey: ['foods', search, category],
    queryFn: () => answer(api.foods.$get({ query: { search, category } })),
    placeholderData: keepPreviousData,
  });
  const categories = workspace.data?.categories.map(({ name, foods: count }) => [name, `${name} (${count})`] as const) ?? [];
  return (
    <Page
      title="Foods"
      actions={
        <Link className={button.act} to="/data">
          Add labels
        </Link>
      }
      isReading={foods.isPending}
      fault={foods.error ?? workspace.error}
    >
      <search className={layout.halves}>
        <Field label="Search name, maker or bar code" type="search" value={search} onChange={words => change({ search: words })} />
        <Choice
          label="Category"
          choices={orNone('all categories', categories)}
          value={category}
          onChange={chosen => change({ category: chosen })}
        />
      </search>
      {foods.data !== undefined && (
        <section className={layout.sheet} aria-label="Foods found">
          <Table
            label="Foods with their standing label"
            rows={foods.data}
            keyOf={keyOf}
            columns={foodColumns}
            empty={
              search === '' && category === ''
                ? 'Nothing on the shelf yet. Add labels under Data, or load the demo there.'
                : 'No food matches. Take away a word, or choose all categories.'
            }
          />
        </section>
      )}
    </Page>
  );
}
