import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { countedClasses } from '#core/additive/countedClasses.ts';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import styles from '../../ui/foods.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { AdditiveTags } from '../survey/AdditiveTags.tsx';

const route = getRouteApi('/foods');
/** A list for the eye; more than these are found by searching. */
const mostShown = 300;

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
  return (
    <>
      <div className={layout.spread}>
        <h1>Foods</h1>
        <Link className={button.act} to="/data">
          Add labels
        </Link>
      </div>
      <Told error={foods.error} />
      <search className={layout.formgrid}>
        <label className={layout.field}>
          <span>Search name, maker or bar code</span>
          <input type="search" value={search} onChange={event => change({ search: event.target.value })} />
        </label>
        <label className={layout.field}>
          <span>Category</span>
          <select value={category} onChange={event => change({ category: event.target.value })}>
            <option value="">all categories</option>
            {workspace.data?.categories.map(({ name, foods: count }) => (
              <option key={name} value={name}>
                {name} ({count})
              </option>
            ))}
          </select>
        </label>
      </search>
      <section className={`${layout.sheet} ${layout.scroll}`} aria-label="Foods found" tabIndex={0}>
        {foods.data?.length === 0 ? (
          <p>
            {search === '' && category === ''
              ? 'Nothing on the shelf yet. Add labels under Data, or load the demo there.'
              : 'No food matches. Take away a word, or choose all categories.'}
          </p>
        ) : (
          <table className={styles.foods}>
            <caption className={text.unseen}>Foods with their standing label</caption>
            <thead>
              <tr>
                <th scope="col">Food</th>
                <th scope="col">Serving</th>
                <th scope="col" className={styles.num}>
                  Energy
                </th>
                <th scope="col" className={styles.num}>
                  Sodium
                </th>
                <th scope="col">Additives</th>
                <th scope="col">Read</th>
              </tr>
            </thead>
            <tbody>
              {foods.data?.slice(0, mostShown).map(food => (
                <tr key={food.id}>
                  <td>
                    <Link to="/foods/$foodId" params={{ foodId: food.id }} search={{}}>
                      {food.name}
                    </Link>
                    <span className={styles.why}>
                      {food.maker}
                      {food.findings > 0 ? ` · audit: ${food.findings} to look at` : ''}
                    </span>
                  </td>
                  <td>{food.servingText ?? 'not printed'}</td>
                  <td className={styles.num}>{food.energyKcal === null ? 'unknown' : `${food.energyKcal} kcal`}</td>
                  <td className={styles.num}>{food.sodiumMg === null ? 'unknown' : `${food.sodiumMg} mg`}</td>
                  <td>{food.statementRead ? <AdditiveTags classes={countedClasses(food.additives)} /> : 'no statement read'}</td>
                  <td>
                    {food.readOn ?? 'day not noted'}
                    <span className={styles.why}>{food.readAt}</span>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
        {(foods.data?.length ?? 0) > mostShown && (
          <p className={text.soft}>
            {mostShown} of {foods.data?.length} foods are shown. Search to find the others.
          </p>
        )}
      </section>
    </>
  );
}
