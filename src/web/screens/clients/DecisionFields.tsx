import type { Limit } from '#core/client/prescription/target.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import type { Choices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { Bound } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import {
  canStay,
  chosenValue,
  type Decision,
  decisionFrom,
  fluidDecision,
  fluidFigure,
  fluidSense,
  ownDecision,
  type SignedTarget,
  type Target,
} from './typedDecision.ts';

const fluidLimits: Choices<Limit> = [
  ['at-most', 'up to, a limit'],
  ['at-least', 'at least, a need'],
];

/** As proposed, another guideline's figure or an own one, with its reason. */
export function DecisionFields(given: {
  readonly target: Target;
  readonly signed: SignedTarget | undefined;
  readonly decision: Bound<Decision>;
}) {
  const { target, signed } = given;
  const { value, onChange } = given.decision;
  const { title, needsChoice, unit } = target;
  const isCount = unit === 'named on the label';
  const isFluid = target.item === 'fluid';
  const mustPick = isFluid && value.kind === 'bounded' && !value.isAsSigned;
  return (
    <div className={`${layout.row} ${layout.noprint}`}>
      <Choice
        label={needsChoice ? `${title}: guidelines differ, choose` : `${title}: decision`}
        choices={decisionChoices(target, signed, isCount)}
        value={chosenValue(value)}
        onChange={next => onChange(decisionFrom(next, target, value, signed))}
      />
      {mustPick && (
        <>
          <Choice
            label="Fluid is meant as"
            choices={fluidLimits}
            value={value.limit}
            onChange={next => onChange(fluidSense(value, next, target))}
          />
          <Field
            label={`One figure${value.from === 'proposal' ? ' within the proposal' : ''}, mL`}
            type="number"
            min="1"
            max="20000"
            isRequired
            value={fluidFigure(value)}
            onChange={next => onChange(fluidDecision(value, value.limit, next))}
          />
        </>
      )}
      {value.from === 'own' && value.kind === 'bounded' && !isCount && !isFluid && !value.isAsSigned && (
        <>
          <Field
            label={`From, ${unit}; empty for none`}
            type="number"
            min="0"
            value={value.lo}
            onChange={next => onChange(ownDecision(value, next, value.hi))}
          />
          <Field
            label={`To, ${unit}; empty for no end`}
            type="number"
            min="0"
            value={value.hi}
            onChange={next => onChange(ownDecision(value, value.lo, next))}
          />
        </>
      )}
      {value.from !== 'proposal' && (
        <Field
          label={`${title}: reason`}
          hint={value.isAsSigned ? 'Why it stays as it was signed' : 'Why it is not as proposed'}
          isRequired
          maxLength={1_000}
          value={value.reason}
          onChange={reason => onChange({ ...value, reason })}
        />
      )}
    </div>
  );
}

function decisionChoices({ kind, figure, alternatives }: Target, signed: SignedTarget | undefined, isCount: boolean): Choices<string> {
  return [
    ...(signed !== undefined && canStay(signed) ? [['as-signed', `as signed: ${signed.inShort}`] as const] : []),
    ['proposal', kind === 'withheld' ? 'no figure for now, as proposed' : `as proposed: ${figure}`],
    ...alternatives.flatMap(({ figure: other, says }) => (other === undefined ? [] : [[says, `${other}: ${says}`] as const])),
    ...(isCount ? [] : [['own', 'my own figure'] as const]),
    ...(kind === 'no-limit' ? [] : [['own-no-limit', 'no limit, my own decision'] as const]),
    ...(kind === 'withheld' ? [] : [['own-withheld', 'no figure, to be checked'] as const]),
  ];
}
