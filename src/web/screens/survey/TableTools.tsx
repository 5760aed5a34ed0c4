import { Link } from '@tanstack/react-router';
import { type SurveyColumnKey, surveyColumnKeys, surveyColumns } from '#core/yardstick/surveyColumns.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Menu } from '../../ui/Menu.tsx';
import { Told } from '../../ui/Told.tsx';
import { useTableActions } from './actions.ts';
import { mostColumns, type SurveyRequest } from './surveyRequest.ts';

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
  const { columns } = request;
  const { save, print, showAllAgain, fault } = useTableActions(request, showAll);
  useOffered([save, print, ...(showAllAgain === undefined ? [] : [showAllAgain])]);
  return (
    <div className={`${layout.row} ${layout.noprint}`}>
      {showAllAgain !== undefined && <ActionButton action={showAllAgain} />}
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
