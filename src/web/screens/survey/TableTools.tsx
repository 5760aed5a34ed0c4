import { Link } from '@tanstack/react-router';
import { type SurveyColumnKey, surveyColumnKeys, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import button from '../../ui/Button.module.css';
import { Ticks } from '../../ui/form/Ticks.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useTableActions } from './actions.ts';
import { mostColumns, type SurveyRequest } from './surveyRequest.ts';
import styles from './TableTools.module.css';

const columnChoices = surveyColumnKeys.map(key => [key, surveyColumns[key].title] as const);

/** What can be done with the table: choose its columns, save it, print it, add to the shelf. */
export function TableTools({
  request,
  onColumns,
  showAll,
}: {
  readonly request: SurveyRequest;
  readonly onColumns: (columns: readonly SurveyColumnKey[]) => void;
  readonly showAll: (() => void) | undefined;
}) {
  const { save, print, showAllAgain, fault } = useTableActions(request, showAll);
  useOffered([save, print, ...(showAllAgain === undefined ? [] : [showAllAgain])]);
  return (
    <div className={`${layout.row} ${layout.noprint}`}>
      {showAllAgain !== undefined && <ActionButton action={showAllAgain} />}
      <details className={styles.menu}>
        <summary className={button.quiet}>Columns</summary>
        <Ticks
          label={`Also show, up to ${mostColumns}`}
          choices={columnChoices}
          most={mostColumns}
          value={request.columns}
          onChange={onColumns}
        />
      </details>
      <ActionButton action={save} />
      <ActionButton action={print} />
      <Link className={button.quiet} to="/guides" search={previous => previous}>
        Make a guide of it
      </Link>
      <Link className={button.quiet} to="/data">
        Add labels
      </Link>
      <Told error={fault} />
    </div>
  );
}
