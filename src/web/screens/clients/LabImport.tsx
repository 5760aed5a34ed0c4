import type { LabClient } from '#core/client/labs/labPerson.ts';
import { type DayOrder, readWrittenDay } from '#core/quantity/writtenDay.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { FileChoice } from '../../ui/FileChoice.tsx';
import type { Choices } from '../../ui/form/choices.ts';
import { OneOf } from '../../ui/form/OneOf.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useLabFile } from './labFileActions.ts';
import type { TypedLab } from './typedResults.ts';

/** "11/03/2026 is November 3, 2026" and the other one. */
function ordersOf(example: string): Choices<DayOrder> {
  return (['month-first', 'day-first'] as const).map(order => [order, `${example} is ${longDay(readWrittenDay(example, order)?.day)}`]);
}

function longDay(day = ''): string {
  return new Intl.DateTimeFormat('en-US', { dateStyle: 'long', timeZone: 'UTC' }).format(new Date(day));
}

/** Results from a file: a table as laboratories write it, or FHIR R4 Observations. What could not be read is told; whose they are and which day is meant is asked where it is not plain. */
export function LabImport({ client, onLabs }: { readonly client: LabClient; readonly onLabs: (labs: readonly TypedLab[]) => void }) {
  const { read, told, question, fault } = useLabFile(client, onLabs);
  return (
    <div className={layout.stack}>
      <FileChoice label="Read results from a file (CSV or FHIR R4)" accept=".csv,.tsv,.txt,.json" onChoose={read} />
      {told.length > 0 && (
        <ul role="status">
          {told.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      )}
      {question !== undefined && (
        <div className={`${layout.notice} ${layout.stack}`} role="alert">
          {question.differences.length > 0 && (
            <p>
              <b>Are these results of this client?</b> The file names{' '}
              {[question.person.name, question.person.bornOn && `born ${question.person.bornOn}`].filter(Boolean).join(', ')}; this is the
              record of {[client.name, client.bornOn && `born ${client.bornOn}`].filter(Boolean).join(', ')}.
            </p>
          )}
          {question.days !== undefined && (
            <OneOf
              label="How does this file write days? It does not show it by itself."
              choices={ordersOf(question.days.example)}
              value={question.days.order}
              onChange={question.readAgain}
            />
          )}
          <p className={layout.row}>
            <ActionButton action={question.takeOver} />
            <ActionButton action={question.leave} />
          </p>
        </div>
      )}
      <Told error={fault} />
    </div>
  );
}
