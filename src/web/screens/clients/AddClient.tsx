import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useAddClient } from './actions.ts';

/** Enters a client, by initials or a code. */
export function AddClient() {
  const typed = useTyped({ name: '' });
  const { add, fault } = useAddClient(typed.values);
  return (
    <ActionForm action={add} className={`${layout.sheet} ${layout.row} ${layout.noprint}`}>
      <Field label="A new client: initials or a code" isRequired maxLength={200} {...typed.field('name')} />
      <ActionButton action={add} isMain submits />
      <Told error={fault} />
    </ActionForm>
  );
}
