import type { Client } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useMealActions } from './prescriptionActions.ts';
import { totalPercent, typedMeals } from './typedMeals.ts';
import { useVersionOf } from './useClient.ts';
import { vaultDraft } from './vaultDraft.ts';

/** Which part of the day's targets each meal may take. */
export function MealPattern({ client, pattern }: { readonly client: Client; readonly pattern: NonNullable<Client['mealPattern']> }) {
  const typed = useTyped(() => typedMeals(pattern));
  const draft = useDraft(vaultDraft(client.id, 'meals'), typed, JSON.stringify(pattern));
  const version = useVersionOf(client.version, JSON.stringify(pattern));
  const total = totalPercent(typed.values);
  const { keep, fault } = useMealActions({ ...client, version }, typed.values, total === 100, draft.forget);
  return (
    <details className={layout.noprint}>
      <summary>Meal pattern: {pattern.map(({ name, percent }) => `${name} ${percent}%`).join(', ')}</summary>
      <ActionForm action={keep} className={layout.stack} isOffered={false}>
        <Draft draft={draft} />
        <div className={layout.formgrid}>
          {typed.rows('meals').each.map(({ field, values: { name } }) => (
            <Field key={name} label={`${name}, % of the day`} type="number" isRequired min="1" max="100" {...field('percent')} />
          ))}
        </div>
        <p className={layout.row}>
          <ActionButton action={keep} submits />
          {total !== 100 && <span>The parts make {total}%; they have to make 100%.</span>}
        </p>
        <Told error={fault} />
      </ActionForm>
    </details>
  );
}
