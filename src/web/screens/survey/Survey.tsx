import { getRouteApi, Link } from '@tanstack/react-router';
import { useMemo, useState } from 'react';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { Reading } from '../../ui/page/Reading.tsx';
import text from '../../ui/text.module.css';
import { FoodSheet } from './FoodSheet.tsx';
import { PlaneSheet } from './PlaneSheet.tsx';
import { SavedSurveys } from './SavedSurveys.tsx';
import { Sentence } from './Sentence.tsx';
import styles from './Survey.module.css';
import type { SurveySearch } from './surveySearch.ts';
import { Tally } from './Tally.tsx';
import { TestsSheet } from './TestsSheet.tsx';
import { useSurvey } from './useSurvey.ts';

const route = getRouteApi('/');

/** Home: a category judged on a plate by a yardstick, as one sentence that can be edited, a plane and a table. */
export function SurveyScreen() {
  const search = route.useSearch();
  const navigate = route.useNavigate();
  const change = (part: Partial<SurveySearch>): void => void navigate({ search: { ...search, ...part }, replace: true });
  const { categories, plates, yardsticks, request, survey, isShelfEmpty, fault } = useSurvey(search);
  const [brushed, setBrushed] = useState<ReadonlySet<string>>();
  const rows = useMemo(
    () =>
      (survey?.rows ?? []).filter(
        ({ verdict, foodId }) => (search.show === undefined || verdict === search.show) && (brushed === undefined || brushed.has(foodId)),
      ),
    [survey?.rows, search.show, brushed],
  );
  if (isShelfEmpty) return <EmptyShelf />;
  const isReading = request === undefined || plates === undefined || yardsticks === undefined;
  return (
    <Page title="Survey" isTitleUnseen isReading={isReading} fault={fault}>
      {!isReading && (
        <Sentence
          request={request}
          portionText={survey?.portionText ?? '…'}
          categories={categories}
          plates={plates}
          yardsticks={yardsticks}
          onChange={change}
        />
      )}
      {!isReading && survey === undefined && fault === null && <Reading />}
      {survey !== undefined && request !== undefined && (
        <>
          <Tally counts={survey.counts} shown={search.show} onShow={show => change({ show: show ?? '' })} />
          <div className={request.columns.length === 0 ? styles.split : styles.below}>
            <PlaneSheet survey={survey} picked={search.food} onPick={food => change({ food: food ?? '' })} onBrush={setBrushed} />
            <FoodSheet
              survey={survey}
              rows={rows}
              request={request}
              picked={search.food}
              onPick={food => change({ food })}
              onColumns={columns => change({ columns: columns.join(',') })}
              showAll={brushed && (() => setBrushed(undefined))}
            />
          </div>
          <TestsSheet survey={survey} switchedOn={request.switchedOn ?? []} onSwitch={on => change({ on: on.join(',') })} />
          <SavedSurveys request={request} onOpen={change} />
        </>
      )}
    </Page>
  );
}

function EmptyShelf() {
  return (
    <Page
      title="Nothing on the shelf yet"
      about="A survey judges the foods of one supermarket category as they will be eaten. It begins with labels."
    >
      <p className={layout.row}>
        <Link className={button.act} to="/data">
          Add labels or load the demo
        </Link>
      </p>
      <p className={text.soft}>Labels stay on this computer. Nothing is sent anywhere.</p>
    </Page>
  );
}
