import { useMutation } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { type SurveyColumnKey, surveyColumnKeys, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { api, problemOf } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Menu } from '../../ui/Menu.tsx';
import { saveFile } from '../../ui/saveFile.ts';
import { Told } from '../../ui/Told.tsx';
import { mostColumns, type SurveyRequest } from './surveyRequest.ts';

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
      <Menu
        label="Columns"
        legend={`Also show, up to ${mostColumns}`}
        ticks={surveyColumnKeys.map(key => ({
          key,
          words: surveyColumns[key].title,
          isTicked: columns.includes(key),
          isDisabled: !columns.includes(key) && columns.length >= mostColumns,
          onTick: isTicked => onColumns(isTicked ? [...columns, key] : columns.filter(one => one !== key)),
        }))}
      />
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
