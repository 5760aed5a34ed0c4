import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import type { Column } from '../../ui/table/column.ts';
import { Table } from '../../ui/table/Table.tsx';
import text from '../../ui/text.module.css';
import { type TypedFigure, useCareFigureActions } from './actions.ts';

interface CareFigures {
  readonly version: number;
  readonly figures: readonly CareFigure[];
}

type CareFigure = Awaited<ReturnType<typeof careFigures>>['figures'][number];

const careFigures = () => answer(api['care-figures'].$get());

/** Ages and contact values as this clinic sets them, each with its usual figure, who set it and when. */
export function ClinicFigures() {
  const figures = useQuery({ queryKey: ['clients', 'care-figures'], queryFn: careFigures, gcTime: 0 });
  if (figures.data === undefined) return <Told error={figures.error} />;
  return (
    <details className={`${layout.sheet} ${layout.noprint}`}>
      <summary>This clinic’s figures</summary>
      <SetFigure key={figures.data.version} {...figures.data} />
      <p className={`${text.small} ${text.soft}`}>
        First for how many days a result or another fact may be used for a target, then how long a value is told as of now, then from which
        value somebody is told. The usual figures are Platewright’s own or published; local policy comes first.
      </p>
      <Table label="Figures" rows={figures.data.figures} keyOf={({ id }) => id} columns={columns} />
    </details>
  );
}

function SetFigure({ version, figures }: CareFigures) {
  const typed = useTyped<TypedFigure>({ id: '', value: '', by: '' });
  // About nobody: a figure of the clinic.
  const draft = useDraft(browserDraft('clinic figure'), typed);
  const { set, fault } = useCareFigureActions(version, typed.values, draft.forget);
  const chosen = figures.find(({ id }) => id === typed.values.id);
  return (
    <ActionForm action={set} className={layout.stack} isOffered={false}>
      <Draft draft={draft} />
      <div className={layout.formgrid}>
        <Choice
          label="Figure to set"
          isRequired
          choices={orNone<string>(
            'choose',
            figures.map(({ id, title }) => [id, title]),
          )}
          {...typed.field('id')}
        />
        <Field
          label={chosen === undefined ? 'Value' : `Value, ${chosen.unit} (${chosen.lo} to ${chosen.hi})`}
          type="number"
          isRequired
          {...(chosen === undefined ? {} : { min: String(chosen.lo), max: String(chosen.hi) })}
          {...typed.field('value')}
        />
        <Field label="Set by" isRequired maxLength={200} {...typed.field('by')} />
      </div>
      <Told error={fault} />
      <p>
        <ActionButton action={set} isMain submits />
      </p>
    </ActionForm>
  );
}

const columns: readonly Column<CareFigure>[] = [
  { key: 'figure', name: 'Figure', width: 'minmax(0, 3fr)', cell: ({ title }) => title },
  { key: 'usual', name: 'Usual', isNumber: true, cell: ({ usual, unit }) => `${usual} ${unit}` },
  {
    key: 'clinic',
    name: 'This clinic',
    isNumber: true,
    cell: ({ set, unit }) => (
      <>
        {set === undefined ? 'as usual' : `${set.value} ${unit}`}
        {set !== undefined && (
          <span className={text.why}>
            {set.by}, {set.on}
          </span>
        )}
      </>
    ),
  },
];
