import { useNavigate } from '@tanstack/react-router';
import type { Carried } from '#core/client/formulas/catalog/assessmentFields.ts';
import type { Formula } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import type { Typed } from '../../ui/form/typed.ts';
import { carry } from './carried.ts';
import { emptyInputs, exampleInputs, type TypedInputs } from './typedInputs.ts';

/** What can be done with the fields of a formula. `ask` shows what stands in the way of a result; `forgetAsking` is for empty fields. */
export function calculatorActions(
  formula: Formula,
  typed: Typed<TypedInputs>,
  { isBegun, ask, forgetAsking }: { readonly isBegun: boolean; readonly ask: () => void; readonly forgetAsking: () => void },
) {
  const work: Action = { label: 'Work it out', run: ask };
  const example: Action = { label: 'Use the example', run: () => typed.set(exampleInputs(formula)) };
  const clear: Action = {
    label: 'Clear',
    isPossible: isBegun,
    run: () => {
      forgetAsking();
      typed.set(emptyInputs(formula.inputs));
    },
  };
  return { work, example, clear };
}

/** A result that is the value of a field of an assessment. */
export interface Fitting {
  readonly field: Carried['field'];
  readonly label: string;
  readonly value: number;
  readonly text: string;
}

/** Sends a result into the assessment of a client. */
export function useHandOnAction(from: string, { field, label, value, text }: Fitting, clientId: string): Action {
  const navigate = useNavigate();
  return {
    label: 'Open the assessment with it',
    run: () => {
      carry({ clientId, field, value, words: `${label} ${text}`, from });
      void navigate({ to: '/clients/$clientId', params: { clientId } });
    },
  };
}
