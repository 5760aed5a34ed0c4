import layout from '../../ui/layout.module.css';
import { chosenValue, type Decision, decisionFrom, fluidDecision, fluidFigure, ownDecision, type Target } from './decision.ts';

/** As proposed, another guideline's figure or an own one, with its reason. */
export function DecisionFields({
  target,
  decision,
  onChange,
}: {
  readonly target: Target;
  readonly decision: Decision;
  readonly onChange: (decision: Decision) => void;
}) {
  const { title, figure, needsChoice, alternatives, unit } = target;
  const isCount = unit === 'named on the label';
  const isFluid = target.item === 'fluid';
  const mustPick = isFluid && decision.kind === 'bounded';
  const others = alternatives.filter(({ figure: one }) => one !== undefined);
  return (
    <div className={`${layout.row} ${layout.noprint}`}>
      <label className={layout.field}>
        <span>{needsChoice ? `${title}: guidelines differ, choose` : `${title}: decision`}</span>
        <select value={chosenValue(decision)} onChange={event => onChange(decisionFrom(event.target.value, target, decision))}>
          <option value="proposal">{target.kind === 'withheld' ? 'no figure for now, as proposed' : `as proposed: ${figure}`}</option>
          {others.map(one => (
            <option key={one.says} value={one.says}>
              {one.figure}: {one.says}
            </option>
          ))}
          {!isCount && <option value="own">my own figure</option>}
          {target.kind !== 'no-limit' && <option value="own-no-limit">no limit, my own decision</option>}
          {target.kind !== 'withheld' && <option value="own-withheld">no figure, to be checked</option>}
        </select>
      </label>
      {mustPick && (
        <>
          <label className={layout.field}>
            <span>Fluid is meant as</span>
            <select value={decision.limit} onChange={event => onChange(fluidDecision(decision, event.target.value, fluidFigure(decision)))}>
              <option value="at-most">up to, a limit</option>
              <option value="at-least">at least, a need</option>
            </select>
          </label>
          <label className={layout.field}>
            <span>One figure{decision.from === 'proposal' ? ' within the proposal' : ''}, mL</span>
            <input
              type="number"
              min="1"
              max="20000"
              step="any"
              required
              value={fluidFigure(decision)}
              onChange={event => onChange(fluidDecision(decision, decision.limit, event.target.value))}
            />
          </label>
        </>
      )}
      {decision.from === 'own' && decision.kind === 'bounded' && !isCount && !isFluid && (
        <>
          <label className={layout.field}>
            <span>From, {unit}; empty for none</span>
            <input
              type="number"
              min="0"
              step="any"
              value={decision.lo}
              onChange={event => onChange(ownDecision(decision, event.target.value, decision.hi))}
            />
          </label>
          <label className={layout.field}>
            <span>To, {unit}; empty for no end</span>
            <input
              type="number"
              min="0"
              step="any"
              value={decision.hi}
              onChange={event => onChange(ownDecision(decision, decision.lo, event.target.value))}
            />
          </label>
        </>
      )}
      {decision.from !== 'proposal' && (
        <label className={layout.field}>
          <span>{title}: reason</span>
          <input
            type="text"
            required
            maxLength={1_000}
            value={decision.reason}
            onChange={event => onChange({ ...decision, reason: event.target.value })}
            autoComplete="off"
          />
        </label>
      )}
    </div>
  );
}
