import { useQueries } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useVirtualizer } from '@tanstack/react-virtual';
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { type SurveyColumnKey, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { verdictWords } from '#core/yardstick/yardstick.ts';
import { answer, api, type SurveyFood, type SurveyRow } from '../../api.ts';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { AdditiveTags } from './AdditiveTags.tsx';
import styles from './FoodTable.module.css';
import type { SurveyRequest } from './surveyRequest.ts';

type SortKey = 'verdict' | 'name' | 'energyKcal' | 'sodiumMg' | SurveyColumnKey;
/** Reasons and ways in are asked for in blocks of rows that come into view. */
const block = 25;

/** The foods of the survey, one row each; thousands of rows scroll because only those in view exist. */
export function FoodTable({
  rows,
  request,
  picked,
  onPick,
}: {
  readonly rows: readonly SurveyRow[];
  readonly request: SurveyRequest;
  readonly picked: string | undefined;
  readonly onPick: (foodId: string) => void;
}) {
  const [sort, setSort] = useState<{ readonly key: SortKey; readonly down: boolean }>({ key: 'verdict', down: false });
  const { columns } = request;
  const sorted = useMemo(() => sortedRows(rows, sort.key, sort.down, columns), [rows, sort, columns]);
  const headings = headingsWith(columns);
  const scroller = useRef<HTMLDivElement>(null);
  // One function while the rows stay: with another one the list measures all of its rows anew.
  const keyOf = useCallback((index: number) => sorted[index]!.foodId, [sorted]);
  const list = useVirtualizer({
    count: sorted.length,
    getScrollElement: () => scroller.current,
    estimateSize: () => 92,
    overscan: 6,
    getItemKey: keyOf,
  });
  const shown = list.getVirtualItems();
  const blocks = [...new Set(shown.map(({ index }) => Math.floor(index / block)))];
  const details = useQueries({
    queries: blocks.map(at => {
      const foodIds = sorted.slice(at * block, (at + 1) * block).map(({ foodId }) => foodId);
      return {
        queryKey: ['survey', request, 'foods', foodIds],
        queryFn: () => answer(api.survey.foods.$post({ json: { ...request, foodIds } })),
        staleTime: 60_000,
        // What flies past is not asked for.
        enabled: !list.isScrolling,
      };
    }),
    combine: results => new Map(results.flatMap(({ data }) => data ?? []).map(detail => [detail.foodId, detail])),
  });

  const pickedAt = useMemo(() => (picked === undefined ? -1 : sorted.findIndex(({ foodId }) => foodId === picked)), [sorted, picked]);
  // Only when another food is picked: scrolling must not be pulled back.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the list is made anew with every row in view
  useEffect(() => {
    if (pickedAt >= 0) list.scrollToIndex(pickedAt, { align: 'center' });
  }, [picked]);

  const move = (by: number): void => {
    const next = sorted[Math.min(sorted.length - 1, Math.max(0, (pickedAt < 0 ? -1 : pickedAt) + by))];
    if (next !== undefined) onPick(next.foodId);
  };
  return (
    <div
      className={columns.length === 0 ? styles.grid : `${styles.grid} ${styles.wide}`}
      data-wide={columns.length === 0 ? undefined : true}
      role="grid"
      aria-label="Foods of the survey"
      aria-rowcount={sorted.length + 1}
      aria-colcount={headings.length}
      ref={node => void node?.style.setProperty('--columns', `repeat(${columns.length}, 7rem)`)}
    >
      <div role="rowgroup">
        <div className={styles.gridhead} role="row" aria-rowindex={1}>
          {headings.map(({ key, name, isNumber }) => (
            <span
              key={name}
              role="columnheader"
              className={isNumber ? styles.figure : undefined}
              aria-sort={key === sort.key ? (sort.down ? 'descending' : 'ascending') : 'none'}
            >
              {key === undefined ? (
                name
              ) : (
                <button type="button" onClick={() => setSort({ key, down: key === sort.key && !sort.down })}>
                  {name}
                  {key === sort.key ? (sort.down ? ' ↓' : ' ↑') : ''}
                </button>
              )}
            </span>
          ))}
        </div>
      </div>
      <div
        className={styles.gridscroll}
        ref={scroller}
        role="rowgroup"
        tabIndex={0}
        aria-label="Rows; arrow keys pick a food"
        onKeyDown={event => {
          const by = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }[event.key];
          if (by === undefined) return;
          event.preventDefault();
          move(by);
        }}
      >
        <div role="presentation" ref={node => void node?.style.setProperty('height', `${list.getTotalSize()}px`)}>
          {shown.map(({ index, start, key }) => {
            const row = sorted[index]!;
            return (
              <Row
                key={key}
                row={row}
                request={request}
                detail={details.get(row.foodId)}
                isPicked={row.foodId === picked}
                index={index}
                onPick={onPick}
                place={node => {
                  node?.style.setProperty('transform', `translateY(${start}px)`);
                  list.measureElement(node);
                }}
              />
            );
          })}
        </div>
      </div>
    </div>
  );
}

interface Heading {
  readonly key?: SortKey;
  readonly name: string;
  readonly isNumber?: boolean;
}

function headingsWith(columns: readonly SurveyColumnKey[]): readonly Heading[] {
  return [
    { key: 'name', name: 'Food' },
    { key: 'energyKcal', name: 'Energy', isNumber: true },
    { key: 'sodiumMg', name: 'Sodium', isNumber: true },
    ...columns.map((key): Heading => ({ key, name: surveyColumns[key].title, isNumber: true })),
    { name: 'Additives' },
    { key: 'verdict', name: 'Verdict and way in' },
  ];
}

function Row(given: {
  readonly row: SurveyRow;
  readonly request: SurveyRequest;
  readonly detail: SurveyFood | undefined;
  readonly isPicked: boolean;
  readonly index: number;
  readonly onPick: (foodId: string) => void;
  readonly place: (node: HTMLDivElement | null) => void;
}) {
  const { row, request, detail, isPicked, index, onPick, place } = given;
  return (
    <div
      className={styles.gridrow}
      role="row"
      aria-rowindex={index + 2}
      aria-selected={isPicked}
      data-index={index}
      ref={place}
      onClick={event => {
        // The link in it opens the food: picking as well would lead back here at once.
        if (!event.defaultPrevented) onPick(row.foodId);
      }}
    >
      <span role="gridcell">
        <Link to="/foods/$foodId" params={{ foodId: row.foodId }} search={{ plate: request.plate, yardstick: request.yardstick }}>
          {row.name}
        </Link>
        <span className={text.why}>{row.maker}</span>
        {row.findings > 0 && <span className={text.why}>Audit: {row.findings} to look at</span>}
      </span>
      <span role="gridcell" className={styles.figure}>
        {row.energyKcal === null ? 'unknown' : `${row.energyKcal} kcal`}
      </span>
      <span role="gridcell" className={styles.figure}>
        {row.sodiumMg === null ? 'unknown' : `${row.sodiumMg} mg`}
      </span>
      {request.columns.map((key, at) => (
        <span role="gridcell" className={styles.figure} key={key}>
          <span className={styles.colname}>{surveyColumns[key].title} </span>
          {row.columns[at]?.text}
        </span>
      ))}
      <span role="gridcell">
        <AdditiveTags classes={row.additives} />
      </span>
      <span role="gridcell">
        <VerdictMark word={row.verdict} /> {row.verdict === "can't tell" ? null : row.margin}{' '}
        {row.closeCall && <span className={text.close}>close call</span>} {row.estimated && <span className={text.close}>estimated</span>}
        {isPicked && detail !== undefined && <span className={text.why}>{detail.why}</span>}
        {row.verdict === "can't tell" && !isPicked && <span className={text.why}>{row.margin}</span>}
        {detail !== undefined && <WaysIn detail={detail} all={isPicked} />}
      </span>
    </div>
  );
}

function WaysIn({ detail, all }: { readonly detail: SurveyFood; readonly all: boolean }) {
  if (detail.waysIn.length === 0) return detail.noWayIn === undefined || !all ? null : <span className={text.why}>{detail.noWayIn}</span>;
  const shown = all ? detail.waysIn : detail.waysIn.slice(0, 1);
  return (
    <ul className={text.ways}>
      {shown.map(({ what }) => (
        <li key={what}>{what}</li>
      ))}
    </ul>
  );
}

/** Rows come by name and maker; sorting keeps that order among those that are alike. */
function sortedRows(rows: readonly SurveyRow[], key: SortKey, down: boolean, columns: readonly SurveyColumnKey[]): readonly SurveyRow[] {
  if (key === 'name') return down ? rows.toReversed() : rows;
  if (key === 'verdict') {
    const byWord = Map.groupBy(rows, ({ verdict }) => verdict);
    return (down ? verdictWords.toReversed() : verdictWords).flatMap(word => byWord.get(word) ?? []);
  }
  const at = columns.indexOf(key as SurveyColumnKey);
  const value = (row: SurveyRow): number | null => (key === 'energyKcal' || key === 'sodiumMg' ? row[key] : (row.columns[at]?.low ?? null));
  // What is not known stands at the end, whichever way the column is sorted.
  const [known, unknown] = [rows.filter(row => value(row) !== null), rows.filter(row => value(row) === null)];
  return [...known.sort((a, b) => (down ? -1 : 1) * (value(a)! - value(b)!)), ...unknown];
}
