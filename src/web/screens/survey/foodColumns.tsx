import { Link } from '@tanstack/react-router';
import { type SurveyColumnKey, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { verdictWords } from '#core/yardstick/yardstick.ts';
import type { SurveyFood, SurveyRow } from '../../api.ts';
import type { Column } from '../../ui/table/column.ts';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { AdditiveTags, additiveWords } from './AdditiveTags.tsx';
import { mostColumns, type SurveyRequest } from './surveyRequest.ts';

type FoodColumn = Column<SurveyRow>;

/** The columns of a survey: those that always stand, and those that are chosen. `details` has what is known of the rows in view. */
export function foodColumns(
  request: SurveyRequest,
  details: ReadonlyMap<string, SurveyFood>,
  picked: string | undefined,
): readonly FoodColumn[] {
  const { plate, yardstick, columns } = request;
  const food: FoodColumn = {
    key: 'name',
    name: 'Food',
    width: 'minmax(0, 2.4fr)',
    sortBy: byName,
    cell: ({ foodId, name, maker, findings }) => (
      <>
        <Link to="/foods/$foodId" params={{ foodId }} search={{ plate, yardstick }}>
          {name}
        </Link>
        <span className={text.why}>{maker}</span>
        {findings > 0 && <span className={text.why}>Audit: {findings} to look at</span>}
      </>
    ),
    onPaper: ({ name, maker }) => (maker === undefined ? name : `${name}, ${maker}`),
  };
  const verdict: FoodColumn = {
    key: 'verdict',
    name: 'Verdict and way in',
    nameOnPaper: 'Verdict',
    width: 'minmax(0, 3fr)',
    sortBy: byVerdict,
    cell: row => <VerdictCell row={row} detail={details.get(row.foodId)} isPicked={row.foodId === picked} />,
    onPaper: row => (
      <>
        <VerdictMark word={row.verdict} /> {row.margin}
        {row.closeCall ? ' (close call)' : ''}
      </>
    ),
  };
  return [food, energy, sodium, ...columns.map(chosenColumn), additives, verdict];
}

// What rows are sorted by stays one function: with another one they would be sorted anew.
const byName = ({ name }: SurveyRow): string => name;
const byVerdict = ({ verdict }: SurveyRow): number => verdictWords.indexOf(verdict);

const energy: FoodColumn = {
  key: 'energyKcal',
  name: 'Energy',
  isNumber: true,
  width: '4.8rem',
  sortBy: ({ energyKcal }) => energyKcal,
  cell: ({ energyKcal }) => (energyKcal === null ? 'unknown' : `${energyKcal} kcal`),
};

const sodium: FoodColumn = {
  key: 'sodiumMg',
  name: 'Sodium',
  isNumber: true,
  width: '4.8rem',
  sortBy: ({ sodiumMg }) => sodiumMg,
  cell: ({ sodiumMg }) => (sodiumMg === null ? 'unknown' : `${sodiumMg} mg`),
};

const additives: FoodColumn = {
  key: 'additives',
  name: 'Additives',
  nameOnPaper: 'Additives named',
  width: '7.4rem',
  cell: row => <AdditiveTags classes={row.additives} />,
  onPaper: row => row.additives.map(additiveWords).join('; '),
};

/** The figure of the first chosen column, of the second, … */
const figureAt = Array.from({ length: mostColumns }, (_, at) => (row: SurveyRow) => row.columns[at]?.low ?? null);

function chosenColumn(key: SurveyColumnKey, at: number): FoodColumn {
  return {
    key,
    name: surveyColumns[key].title,
    isNumber: true,
    width: '7rem',
    sortBy: figureAt[at]!,
    cell: row => row.columns[at]?.text,
  };
}

function VerdictCell(given: { readonly row: SurveyRow; readonly detail: SurveyFood | undefined; readonly isPicked: boolean }) {
  const {
    row: { verdict, margin, closeCall, estimated },
    detail,
    isPicked,
  } = given;
  const isTold = verdict !== "can't tell";
  return (
    <>
      <VerdictMark word={verdict} /> {isTold && margin} {closeCall && <span className={text.close}>close call</span>}{' '}
      {estimated && <span className={text.close}>estimated</span>}
      {isPicked && detail !== undefined && <span className={text.why}>{detail.why}</span>}
      {!isTold && !isPicked && <span className={text.why}>{margin}</span>}
      {detail !== undefined && <WaysIn detail={detail} all={isPicked} />}
    </>
  );
}

function WaysIn({ detail: { waysIn, noWayIn }, all }: { readonly detail: SurveyFood; readonly all: boolean }) {
  if (waysIn.length === 0) return noWayIn === undefined || !all ? null : <span className={text.why}>{noWayIn}</span>;
  return (
    <ul className={text.ways}>
      {(all ? waysIn : waysIn.slice(0, 1)).map(({ what }) => (
        <li key={what}>{what}</li>
      ))}
    </ul>
  );
}
