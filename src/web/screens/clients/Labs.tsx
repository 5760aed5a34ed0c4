import { type Analyte, analyteFacts, analyteKeys } from '#core/client/labs/analytes.ts';
import type { LabClient } from '#core/client/labs/labPerson.ts';
import { unitsOf } from '#core/client/labs/labValue.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { type Choices, plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { TypedRows } from '../../ui/form/typed.ts';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { LabImport } from './LabImport.tsx';
import { LabSample } from './LabSample.tsx';
import { RowAnswer } from './RowAnswer.tsx';
import { blankLab, type TypedLab } from './typedResults.ts';

const analyteChoices: Choices<Analyte> = analyteKeys.map(key => [key, analyteFacts(key).name]);

/** Laboratory results, typed or read from a file, and what is asked about each. */
export function Labs(given: {
  readonly labs: TypedRows<TypedLab>;
  readonly today: string;
  readonly client: LabClient;
  readonly questions: ReadonlyMap<number, string>;
}) {
  const { labs, today, client, questions } = given;
  return (
    <RowsEditor
      label="Laboratory results, each with its unit and day"
      rows={labs}
      blank={() => blankLab(today)}
      addLabel="Add a result"
      addShortcut="Alt+R"
      nameOf={({ analyte, value, unit }) => `${analyteFacts(analyte).name} ${value} ${unit}`}
      below={<LabImport client={client} onLabs={read => labs.add(...read)} />}
    >
      {(row, at) => {
        const { analyte, value, unit } = row.values;
        return (
          <>
            <Choice
              label="Result"
              choices={analyteChoices}
              value={analyte}
              onChange={next => row.set({ analyte: next, unit: analyteFacts(next).unit, confirmed: false })}
            />
            <Field label="Value" type="number" value={value} onChange={next => row.set({ value: next, confirmed: false })} />
            <Choice
              label="Unit"
              choices={plainChoices(unitsOf(analyteFacts(analyte)))}
              value={unit}
              onChange={next => row.set({ unit: next, confirmed: false })}
            />
            <Field label="Taken on" type="date" {...row.field('takenOn')} />
            <Tick label="hemolyzed" {...row.field('hemolyzed')} />
            <LabSample lab={row} />
            <RowAnswer question={questions.get(at)} name={`${value} ${unit}`} {...row.field('confirmed')} />
          </>
        );
      }}
    </RowsEditor>
  );
}
