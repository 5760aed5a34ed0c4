import { keepPreviousData, useQuery } from '@tanstack/react-query';
import { getRouteApi, Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import { answer, api, type Survey } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { FoodTable } from './FoodTable.tsx';
import { Plane } from './Plane.tsx';
import { PrintedTable } from './PrintedTable.tsx';
import { SavedSurveys } from './SavedSurveys.tsx';
import { Sentence } from './Sentence.tsx';
import styles from './Survey.module.css';
import { surveyRequest } from './surveyRequest.ts';
import type { SurveySearch } from './surveySearch.ts';
import { TableTools } from './TableTools.tsx';
import { Tally } from './Tally.tsx';

const route = getRouteApi('/');

/** Home: a category judged on a plate by a yardstick, as one sentence that can be edited, a plane and a table. */
export function SurveyScreen() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const change = (change: Partial<SurveySearch>): void => void navigate({ search: { ...search, ...change }, replace: true });
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer(api.plates.$get()) });
  const yardsticks = useQuery({ queryKey: ['yardsticks'], queryFn: () => answer(api.yardsticks.$get()) });
  const categories = workspace.data?.categories ?? [];
  const category = categories[0]?.name;
  // Kept as one object while nothing in it changes: the table sorts anew when it does.
  const request = useMemo(
    () => (category === undefined ? undefined : surveyRequest(search, { category, plates: plates.data })),
    [search, category, plates.data],
  );
  const survey = useQuery({
    queryKey: ['survey', request],
    queryFn: () => answer(api.survey.$post({ json: request! })),
    enabled: request !== undefined && plates.data !== undefined,
    placeholderData: keepPreviousData,
    // Minerals are estimated in the background: look again until all are there.
    refetchInterval: ({ state: { data } }) => (data?.estimating != null && data.estimating.done < data.estimating.of ? 1_000 : false),
  });
  const [brushed, setBrushed] = useState<ReadonlySet<string>>();
  const rows = useMemo(
    () =>
      (survey.data?.rows ?? []).filter(
        ({ verdict, foodId }) => (search.show === undefined || verdict === search.show) && (brushed === undefined || brushed.has(foodId)),
      ),
    [survey.data, search.show, brushed],
  );

  if (workspace.data !== undefined && workspace.data.foods === 0) return <EmptyWorkspace />;
  return (
    <>
      <h1 className={text.unseen}>Survey</h1>
      <Told error={workspace.error ?? plates.error ?? yardsticks.error ?? survey.error} />
      {request !== undefined && plates.data !== undefined && yardsticks.data !== undefined && (
        <Sentence
          request={request}
          portionText={survey.data?.portionText ?? '…'}
          categories={categories.map(({ name }) => name)}
          plates={plates.data}
          yardsticks={yardsticks.data}
          onChange={change}
        />
      )}
      {survey.data !== undefined && request !== undefined && (
        <>
          <Tally counts={survey.data.counts} shown={search.show} onShow={show => change(show === undefined ? { show: '' } : { show })} />
          <div className={styles.split}>
            <section className={layout.sheet} aria-labelledby="plane-title">
              <div className={layout.spread}>
                <h2 id="plane-title">Sodium against energy</h2>
                <span className={`${text.small} ${text.soft}`}>per portion, without what it is eaten with</span>
              </div>
              <Plane
                rows={survey.data.rows}
                rule={survey.data.rule}
                picked={search.food}
                onPick={food => change({ food: food ?? '' })}
                onBrush={setBrushed}
              />
              <p className={`${text.small} ${text.soft}`}>
                {survey.data.companionsText} {survey.data.rule !== null && ruleText(survey.data.rule)}
              </p>
              <NotDrawn rows={survey.data.rows} />
            </section>
            <section className={layout.sheet} aria-labelledby="table-title">
              <div className={layout.spread}>
                <h2 id="table-title">
                  {rows.length === survey.data.rows.length ? `${rows.length} foods` : `${rows.length} of ${survey.data.rows.length} foods`}
                </h2>
                <span className={`${layout.row} ${layout.noprint}`}>
                  {brushed !== undefined && (
                    <button type="button" className={button.quiet} onClick={() => setBrushed(undefined)}>
                      Show all again
                    </button>
                  )}
                  <TableTools request={request} onColumns={columns => change({ columns: columns.join(',') })} />
                </span>
              </div>
              {survey.data.estimating !== null && survey.data.estimating.done < survey.data.estimating.of && (
                <p role="status" className={`${text.small} ${text.soft}`}>
                  Estimating minerals: {survey.data.estimating.done} of {survey.data.estimating.of} labels.
                </p>
              )}
              <PrintedTable rows={rows} request={request} />
              <FoodTable rows={rows} request={request} picked={search.food} onPick={food => change({ food })} />
            </section>
          </div>
          <section className={`${layout.sheet} ${text.small}`} aria-label="What the yardstick tests">
            {survey.data.tests.map(({ id, text, isOn }) => (
              <TestOn
                key={id}
                text={text}
                isOn={isOn}
                canSwitch={!isOn || (request.switchedOn?.includes(id) ?? false)}
                onSwitch={on => change({ on: toggled(request.switchedOn ?? [], id, on).join(',') })}
              />
            ))}
            {survey.data.cautions.map(caution => (
              <p key={caution} className={text.soft}>
                {caution}
              </p>
            ))}
            <p className={text.soft}>
              Targets and advice are for licensed dietitians working with the client’s kidney team; local protocols come first.
            </p>
          </section>
          <SavedSurveys request={request} onOpen={change} />
        </>
      )}
    </>
  );
}

/** A test in words; one that is judged only when switched on has the switch. */
function TestOn(given: {
  readonly text: string;
  readonly isOn: boolean;
  readonly canSwitch: boolean;
  readonly onSwitch: (on: boolean) => void;
}) {
  const { text, isOn, canSwitch, onSwitch } = given;
  if (!canSwitch) return <p>{text}</p>;
  return (
    <p>
      <label className={layout.row}>
        <input type="checkbox" checked={isOn} onChange={event => onSwitch(event.target.checked)} />
        <span>{text}</span>
      </label>
    </p>
  );
}

/** Foods without a place on the plane are named, never drawn at zero. */
function NotDrawn({ rows }: { readonly rows: Survey['rows'] }) {
  const missing = rows.filter(({ energyKcal, sodiumMg }) => energyKcal === null || sodiumMg === null);
  if (missing.length === 0) return null;
  const names = missing.length <= 4 ? missing.map(({ name }) => name).join(', ') : `${missing.length} foods`;
  return <p className={`${text.small} ${text.soft}`}>Not drawn, because energy or sodium is unknown: {names}.</p>;
}

function toggled(on: readonly string[], id: string, isOn: boolean): readonly string[] {
  return isOn ? [...on, id] : on.filter(one => one !== id);
}

function ruleText({ slope, offset, slack }: NonNullable<Survey['rule']>): string {
  const own = slope === 0 ? '' : slope === 1 ? 'its own kcal ' : `${slope} × its own kcal `;
  const rest = slope === 0 ? `${offset}` : offset < 0 ? `− ${-offset}` : `+ ${offset}`;
  return `So a portion may hold ${own}${rest} mg sodium; over by no more than ${slack} mg is nearly.`;
}

function EmptyWorkspace() {
  return (
    <section className={`${layout.sheet} ${layout.stack}`}>
      <h1>Nothing on the shelf yet</h1>
      <p>A survey judges the foods of one supermarket category as they will be eaten. It begins with labels.</p>
      <p className={layout.row}>
        <Link className={button.act} to="/data">
          Add labels or load the demo
        </Link>
      </p>
      <p className={text.soft}>Labels stay on this computer. Nothing is sent anywhere.</p>
    </section>
  );
}
