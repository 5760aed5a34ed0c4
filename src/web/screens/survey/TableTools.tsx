import { useMutation } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type SurveyColumnKey, surveyColumnKeys, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { api, problemOf } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { saveFile } from '../../ui/saveFile.ts';
import { Told } from '../../ui/Told.tsx';
import { mostColumns, type SurveyRequest } from './surveyRequest.ts';
import styles from './TableTools.module.css';

/** What can be done with the table: choose its columns, save it, print it, add to the shelf. */
export function TableTools({
  request,
  onColumns,
}: {
  readonly request: SurveyRequest;
  readonly onColumns: (columns: readonly SurveyColumnKey[]) => void;
}) {
  const { columns } = request;
  const save = useMutation({
    mutationFn: async () => {
      const response = await api.survey.csv.$post({ json: request });
      if (!response.ok) throw await problemOf(response);
      return response.blob();
    },
    onSuccess: table => saveFile(table, `survey of ${request.category}.csv`),
  });
  return (
    <div className={`${layout.row} ${layout.noprint}`}>
      <details className={styles.menu}>
        <summary className={button.quiet}>Columns</summary>
        <fieldset>
          <legend>Also show, up to {mostColumns}</legend>
          {surveyColumnKeys.map(key => (
            <label className={layout.row} key={key}>
              <input
                type="checkbox"
                checked={columns.includes(key)}
                disabled={!columns.includes(key) && columns.length >= mostColumns}
                onChange={event => onColumns(event.target.checked ? [...columns, key] : columns.filter(one => one !== key))}
              />
              <span>{surveyColumns[key].title}</span>
            </label>
          ))}
        </fieldset>
      </details>
      <button type="button" className={button.quiet} disabled={save.isPending} onClick={() => save.mutate()}>
        Save as CSV
      </button>
      <button type="button" className={button.quiet} onClick={() => window.print()}>
        Print
      </button>
      <Link className={button.quiet} to="/guides" search={previous => previous}>
        Make a guide of it
      </Link>
      <Link className={button.quiet} to="/data">
        Add labels
      </Link>
      <Told error={save.error} />
    </div>
  );
}
