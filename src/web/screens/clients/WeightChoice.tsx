import type { WeightBasisId } from '#core/client/states/weightBasis.ts';
import type { Client } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import type { Choices } from '../../ui/form/choices.ts';

export type PickWeight = (basis: WeightBasisId) => void;

/** The weight that figures per kg are set on, and which others there are. */
export function WeightChoice({ weight, onPick }: { readonly weight: Client['weight']; readonly onPick: PickWeight }) {
  if (weight === undefined) return null;
  const { chosen, others, bmi } = weight;
  const choices: Choices<WeightBasisId> = [
    [chosen, chosen.replaceAll('-', ' ')],
    ...others.filter(({ id }) => id !== chosen).map(({ id, text: words }) => [id, words] as const),
  ];
  return (
    <>
      <p>
        Weight basis: <b>{weight.text}</b>
        {bmi === undefined ? '' : `, BMI ${bmi}`}
      </p>
      {others.length > 0 && <Choice label="Another weight basis" choices={choices} value={chosen} onChange={onPick} />}
    </>
  );
}
