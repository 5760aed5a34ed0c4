import type { SurveyColumnKey } from '#core/yardstick/surveyColumns.ts';
import type { Survey, SurveyRow } from '../../api.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { FoodTable } from './FoodTable.tsx';
import type { SurveyRequest } from './surveyRequest.ts';
import { TableTools } from './TableTools.tsx';

/** The foods of the survey as a table, with what can be done with it. */
export function FoodSheet(given: {
  readonly survey: Survey;
  /** Those that are shown now. */
  readonly rows: readonly SurveyRow[];
  readonly request: SurveyRequest;
  readonly picked: string | undefined;
  readonly onPick: (foodId: string) => void;
  readonly onColumns: (columns: readonly SurveyColumnKey[]) => void;
  readonly showAll: (() => void) | undefined;
}) {
  const {
    survey: { rows: all, estimating },
    rows,
    request,
    picked,
    onPick,
    onColumns,
    showAll,
  } = given;
  return (
    <section className={layout.sheet} aria-labelledby="table-title">
      <div className={layout.spread}>
        <h2 id="table-title">{rows.length === all.length ? `${rows.length} foods` : `${rows.length} of ${all.length} foods`}</h2>
        <TableTools request={request} onColumns={onColumns} showAll={showAll} />
      </div>
      {estimating !== null && estimating.done < estimating.of && (
        <p role="status" className={`${text.small} ${text.soft}`}>
          Estimating minerals: {estimating.done} of {estimating.of} labels.
        </p>
      )}
      <p className={`${layout.onlyprint} ${text.small}`}>
        Printed on {new Date().toISOString().slice(0, 10)} from labels as they were read. Labels change: check the package.
      </p>
      <FoodTable rows={rows} request={request} picked={picked} onPick={onPick} />
    </section>
  );
}
