import { useMutation, useQuery } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { answer, api, Problem } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { FileChoice } from '../../ui/FileChoice.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { Report } from './Report.tsx';

/** The files of a dataset's folder that are read; the others stay where they are. */
const read =
  /^(?:food_des|nut_data|weight)\.txt$|^(?:food|nutrient|food_nutrient|food_portion|measure_unit|food_category|sr_legacy_food|foundation_food)\.csv$/i;
const mostBytes = 70 * 2 ** 20;

/** Composition tables beside our own: what is there, and the files of another. */
export function ReferenceTables({ onDone }: { readonly onDone: () => Promise<void> }) {
  const [workId] = useState(() => crypto.randomUUID());
  const stop = useRef<AbortController>(undefined);
  const tables = useQuery({ queryKey: ['references'], queryFn: () => answer(api.references.$get()) });
  const bring = useMutation({
    mutationFn: (given: readonly File[]) => {
      const known = given.filter(({ name }) => read.test(name));
      const files = known.length === 0 ? [...given] : known;
      if (files.reduce((sum, { size }) => sum + size, 0) > mostBytes) throw tooLarge;
      stop.current = new AbortController();
      return answer(api.references.$post({ form: { files, workId } }, { init: { signal: stop.current.signal } }));
    },
    onSuccess: onDone,
  });
  const remove = useMutation({
    mutationFn: (dataset: string) => answer(api.references[':dataset'].$delete({ param: { dataset } })),
    onSuccess: async () => {
      bring.reset();
      await onDone();
    },
  });
  return (
    <section
      className={`${layout.sheet} ${layout.stack}`}
      aria-labelledby="reference-title"
      onDragOver={event => event.preventDefault()}
      onDrop={event => {
        event.preventDefault();
        const files = [...event.dataTransfer.files];
        if (files.length > 0) bring.mutate(files);
      }}
    >
      <h2 id="reference-title">Composition tables</h2>
      <p className={text.soft}>
        Estimates of phosphorus and potassium know some 800 ingredients. A published table is asked for the names that are not among them:
        USDA SR (FOOD_DES.txt, NUT_DATA.txt, WEIGHT.txt), FoodData Central foundation or SR Legacy (all CSV files), or a reference file.
      </p>
      {tables.data?.map(table => (
        <div className={layout.row} key={table.dataset}>
          <span>
            {table.source}, {table.edition}: <b>{table.foods.toLocaleString('en')} foods</b>, imported {table.importedAt.slice(0, 10)}
          </span>
          <button
            type="button"
            className={button.quiet}
            aria-label={`Remove ${table.source}`}
            disabled={remove.isPending}
            onClick={() => remove.mutate(table.dataset)}
          >
            Remove
          </button>
        </div>
      ))}
      <Told error={bring.error ?? remove.error} />
      {bring.isPending ? (
        <Progress workId={workId} begins="Reading the files" onCancel={() => stop.current?.abort()} />
      ) : (
        <p className={layout.row}>
          <FileChoice
            isMain
            multiple
            label="Choose the files of a table"
            accept=".txt,.csv,.json"
            onChoose={(_, files) => bring.mutate([...files])}
          />
          <span className={text.soft}>or drop them here</span>
        </p>
      )}
      {bring.data !== undefined && (
        <div className={layout.notice} role="status">
          <p>
            Kept: {bring.data.kept.map(({ foods, source }) => `${foods.toLocaleString('en')} foods of ${source}`).join('; ')}. Estimates are
            made anew as foods are looked at.
          </p>
        </div>
      )}
      {bring.data !== undefined && bring.data.report.length > 0 && <Report report={bring.data.report} />}
    </section>
  );
}

const tooLarge = new Problem(
  'Too much at once',
  'The files are larger than 70 MB together.',
  'Run `platewright reference import FOLDER --out FILE` and choose the file that it writes; or choose the files of one dataset only.',
  'request-too-large',
);
