import type { Client } from '../../api.ts';
import type { Bound } from '../../ui/form/typed.ts';
import text from '../../ui/text.module.css';
import styles from './Client.module.css';
import { DecisionFields } from './DecisionFields.tsx';
import { beforeText, type Decision, type SignedTarget, type Target } from './typedDecision.ts';
import { type PickWeight, WeightChoice } from './WeightChoice.tsx';

/** What counts for one target, what other guidelines say, and what the dietitian sets. */
export function TargetOpened(given: {
  readonly client: Client;
  readonly target: Target;
  readonly signed: SignedTarget | undefined;
  readonly decision: Bound<Decision>;
  readonly onPick: PickWeight;
}) {
  const { client, target, signed, decision, onPick } = given;
  const { figure, perKg, weightBasis, says, reasons, toCheck, sources, needsChoice, alternatives } = target;
  return (
    <div className={styles.opened}>
      <div>
        <h3>What counts</h3>
        <p>
          Proposed today: <b>{figure}</b>. {says}
          {perKg === undefined ? '' : `: ${perKg}`}
          {weightBasis === undefined ? '' : `, on the ${weightBasis} weight`}.
        </p>
        <List of={reasons} />
        <p className={text.soft}>{sources.join('; ')}</p>
        {signed !== undefined && <p>Signed: {beforeText(signed)}.</p>}
      </div>
      {toCheck.length + alternatives.length > 0 && (
        <div>
          {toCheck.length > 0 && (
            <>
              <h3>Look at first</h3>
              <List of={toCheck} />
            </>
          )}
          {alternatives.length > 0 && (
            <>
              <h3>{needsChoice ? 'Guidelines differ' : 'Elsewhere'}</h3>
              <ul>
                {alternatives.map(({ figure: other, says: words, sources: from }) => (
                  <li key={words}>
                    {other === undefined ? '' : `${other}. `}
                    {words} <span className={text.soft}>({from.join('; ')})</span>
                  </li>
                ))}
              </ul>
            </>
          )}
        </div>
      )}
      <div>
        <h3>What you set</h3>
        {weightBasis !== undefined && <WeightChoice weight={client.weight} onPick={onPick} />}
        <DecisionFields target={target} signed={signed} decision={decision} />
      </div>
    </div>
  );
}

function List({ of }: { readonly of: readonly string[] }) {
  return (
    <ul>
      {of.map(one => (
        <li key={one}>{one}</li>
      ))}
    </ul>
  );
}
