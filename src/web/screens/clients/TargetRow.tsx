import type { Bound } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import { DecisionFields } from './DecisionFields.tsx';
import styles from './TargetRow.module.css';
import { beforeText, chosenFigure, type Decision, differsFrom, ownText, type SignedTarget, type Target } from './typedDecision.ts';

/** One target: range, why, source, what was signed before, other guidelines' figures, and the decision on it. */
export function TargetRow({
  target,
  before,
  decision: bound,
}: {
  readonly target: Target;
  readonly before: SignedTarget | undefined;
  readonly decision: Bound<Decision>;
}) {
  const decision = bound.value;
  const { title, figure, perKg, weightBasis, says, reasons, sources, needsChoice, alternatives, unit } = target;
  const mustPick = target.item === 'fluid' && decision.kind === 'bounded';
  const others = alternatives.filter(({ figure: one }) => one !== undefined);
  return (
    <article className={styles.target} aria-label={title}>
      <div className={layout.spread}>
        <h3>{title}</h3>
        <b>
          {decision.from === 'own' || mustPick
            ? ownText(decision, unit, figure)
            : decision.from === 'proposal'
              ? figure
              : chosenFigure(others, decision)}
        </b>
      </div>
      <p className={text.small}>
        {decision.from === 'proposal' ? says : `Proposed: ${says}`}
        {perKg === undefined ? '' : `: ${perKg}`}
        {weightBasis === undefined ? '' : `, on the ${weightBasis} weight`}.
      </p>
      {before !== undefined && differsFrom(before, target) && <p className={text.small}>Signed before: {beforeText(before)}.</p>}
      <Reasons reasons={reasons} />
      <p className={`${text.small} ${text.soft}`}>{sources.join('; ')}</p>
      {alternatives.length > 0 && (
        <div className={text.small}>
          <b>{needsChoice ? 'Guidelines differ:' : 'Elsewhere:'}</b>
          <ul>
            {alternatives.map(({ figure: other, says: words, sources: from }) => (
              <li key={words}>
                {other === undefined ? '' : `${other}. `}
                {words} <span className={text.soft}>({from.join('; ')})</span>
              </li>
            ))}
          </ul>
        </div>
      )}
      <DecisionFields target={target} decision={bound} />
    </article>
  );
}

/** Many things to check are folded away, so that the next target stays in sight. */
function Reasons({ reasons }: { readonly reasons: readonly string[] }) {
  const list = (
    <ul className={text.small}>
      {reasons.map(reason => (
        <li key={reason}>{reason}</li>
      ))}
    </ul>
  );
  if (reasons.length <= 5) return list;
  return (
    <details>
      <summary className={text.small}>{reasons.length} things to check first</summary>
      {list}
    </details>
  );
}
