import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { DropPlace } from '../../ui/DropPlace.tsx';
import { FileChoice } from '../../ui/FileChoice.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { Report } from './Report.tsx';
import { useReferenceActions } from './referenceActions.ts';

/** Composition tables beside our own: what is there, and the files of another. */
export function ReferenceTables({ onDone }: { readonly onDone: () => Promise<void> }) {
  const { bringing, remove, fault } = useReferenceActions(onDone);
  const tables = useQuery({ queryKey: ['references'], queryFn: () => answer(api.references.$get()) });
  const brought = bringing.result;
  return (
    <DropPlace className={`${layout.sheet} ${layout.stack}`} labelledBy="reference-title" onFiles={bringing.begin}>
      <h2 id="reference-title">Composition tables</h2>
      <p className={text.soft}>
        Estimates of phosphorus and potassium know some 800 ingredients. A published table is asked for the names that are not among them:
        USDA SR (FOOD_DES.txt, NUT_DATA.txt, WEIGHT.txt), FoodData Central foundation or SR Legacy (all CSV files), or a reference file.
      </p>
      {tables.data?.map(({ dataset, source, edition, foods, importedAt }) => (
        <div className={layout.row} key={dataset}>
          <span>
            {source}, {edition}: <b>{foods.toLocaleString('en')} foods</b>, imported {importedAt.slice(0, 10)}
          </span>
          <ActionButton action={remove(dataset, source)} />
        </div>
      ))}
      <Told error={fault} />
      {bringing.isRunning ? (
        <Progress workId={bringing.workId} begins="Reading the files" onCancel={bringing.cancel} />
      ) : (
        <p className={layout.row}>
          <FileChoice
            isMain
            multiple
            label="Choose the files of a table"
            accept=".txt,.csv,.json"
            onChoose={(_, files) => bringing.begin(files)}
          />
          <span className={text.soft}>or drop them here</span>
        </p>
      )}
      {brought !== undefined && (
        <div className={layout.notice} role="status">
          <p>
            Kept: {brought.kept.map(({ foods, source }) => `${foods.toLocaleString('en')} foods of ${source}`).join('; ')}. Estimates are
            made anew as foods are looked at.
          </p>
        </div>
      )}
      {brought !== undefined && brought.report.length > 0 && <Report report={brought.report} />}
    </DropPlace>
  );
}
