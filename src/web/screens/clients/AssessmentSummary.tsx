import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import type { Client } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import type { Choices } from '../../ui/form/choices.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { Trends } from './Trends.tsx';

/** What the newest assessment comes to, and what is due next. */
export function AssessmentSummary({ client, onPick }: { readonly client: Client; readonly onPick: (id: WeightBasisId) => void }) {
  const { weight } = client;
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="assessment-title">
      <h2 id="assessment-title">Assessment of {client.assessedOn}</h2>
      {weight !== undefined && <WeightBasis weight={weight} onPick={onPick} />}
      {client.weightMissing !== undefined && <p className={layout.notice}>{client.weightMissing}</p>}
      {(client.wasting?.length ?? 0) > 0 && (
        <div className={layout.notice}>
          {client.wasting?.map(one => (
            <p key={one}>{one}</p>
          ))}
        </div>
      )}
      {(client.notUsed?.length ?? 0) > 0 && (
        <div>
          <h3>On record, not used</h3>
          <ul className={text.small}>
            {client.notUsed?.map(one => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </div>
      )}
      <div>
        <h3>Labs</h3>
        {client.labs?.length === 0 ? <p>No result on record.</p> : null}
        <ul>
          {client.labs?.map(one => (
            <li key={one}>{one}</li>
          ))}
        </ul>
      </div>
      {client.trends !== undefined && <Trends trends={client.trends} />}
      {(client.changes?.length ?? 0) > 0 && (
        <div>
          <h3>Since the assessment before</h3>
          <ul>
            {client.changes?.map(one => (
              <li key={one}>{one}</li>
            ))}
          </ul>
        </div>
      )}
      <NextChecks checks={client.nextChecks} />
    </section>
  );
}

function WeightBasis({ weight, onPick }: { readonly weight: NonNullable<Client['weight']>; readonly onPick: (id: WeightBasisId) => void }) {
  const { chosen, others, bmi, why } = weight;
  const choices: Choices<WeightBasisId> = [
    [chosen, chosen.replaceAll('-', ' ')],
    ...others.filter(({ id }) => id !== chosen).map(({ id, text: words }) => [id, words] as const),
  ];
  return (
    <div>
      <p>
        Weight basis: <b>{weight.text}</b>
        {bmi === undefined ? '' : `, BMI ${bmi}`}
      </p>
      <p className={`${text.small} ${text.soft}`}>{why}</p>
      {others.length > 0 && (
        <div className={layout.noprint}>
          <Choice label="Another weight basis" choices={choices} value={chosen} onChange={onPick} />
        </div>
      )}
    </div>
  );
}

function NextChecks({ checks }: { readonly checks: Client['nextChecks'] }) {
  return (
    <div>
      <h3>Next checks</h3>
      <ul>
        {checks?.map(({ item, every, lastOn, dueBy, state, source }) => (
          <li key={item} className={state === 'later' ? text.soft : undefined}>
            {item}: {state === 'overdue' ? <b>overdue since {dueBy}</b> : state === 'due' ? <b>due, by {dueBy}</b> : `due by ${dueBy}`}
            <span className={text.why}>
              {every}; {lastOn === undefined ? 'no earlier one on record' : `last ${lastOn}`} ({source})
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
