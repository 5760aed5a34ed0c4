import { useEffect, useState } from 'react';
import { flushSync } from 'react-dom';
import { surveyColumns } from '#core/yardstick/surveyColumns.ts';
import type { SurveyRow } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { VerdictMark } from '../../ui/VerdictMark.tsx';
import { additiveWords } from './AdditiveTags.tsx';
import styles from './PrintedTable.module.css';
import type { SurveyRequest } from './surveyRequest.ts';

/** On paper every food of the survey stands in the table; on screen only those in view do, so it is made when printing begins. */
export function PrintedTable({ rows, request }: { readonly rows: readonly SurveyRow[]; readonly request: SurveyRequest }) {
  const isPrinting = useIsPrinting();
  if (!isPrinting) return null;
  return (
    <>
      <p className={`${layout.onlyprint} ${text.small}`}>
        Printed on {new Date().toISOString().slice(0, 10)} from labels as they were read. Labels change: check the package.
      </p>
      <table className={layout.onlyprint}>
        <thead>
          <tr>
            <th>Food</th>
            <th className={text.num}>Energy</th>
            <th className={text.num}>Sodium</th>
            {request.columns.map(key => (
              <th className={text.num} key={key}>
                {surveyColumns[key].title}
              </th>
            ))}
            <th className={styles.additives}>Additives named</th>
            <th>Verdict</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(row => (
            <tr key={row.foodId}>
              <td>
                {row.name}
                {row.maker === undefined ? '' : `, ${row.maker}`}
              </td>
              <td className={text.num}>{row.energyKcal === null ? 'unknown' : `${row.energyKcal} kcal`}</td>
              <td className={text.num}>{row.sodiumMg === null ? 'unknown' : `${row.sodiumMg} mg`}</td>
              {request.columns.map((key, at) => (
                <td className={text.num} key={key}>
                  {row.columns[at]?.text}
                </td>
              ))}
              <td>{row.additives.map(additiveWords).join('; ')}</td>
              <td>
                <VerdictMark word={row.verdict} /> {row.margin}
                {row.closeCall ? ' (close call)' : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function useIsPrinting(): boolean {
  const [isPrinting, setIsPrinting] = useState(() => matchMedia('print').matches);
  useEffect(() => {
    const query = matchMedia('print');
    // The browser takes its picture right after this event: the rows must stand by then.
    const begin = (): void => flushSync(() => setIsPrinting(true));
    const end = (): void => setIsPrinting(false);
    const change = (): void => (query.matches ? begin() : end());
    window.addEventListener('beforeprint', begin);
    window.addEventListener('afterprint', end);
    query.addEventListener('change', change);
    return () => {
      window.removeEventListener('beforeprint', begin);
      window.removeEventListener('afterprint', end);
      query.removeEventListener('change', change);
    };
  }, []);
  return isPrinting;
}
