import { useState } from 'react';
import type { Label } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { type TypedDay, useRecheckActions } from './labelActions.ts';

/** The day by which a package is read again. When another window set one meanwhile, that is told and the day that was typed stays. */
export function RecheckDay({ label, onChanged }: { readonly label: Label; readonly onChanged: () => void }) {
  const standing = label.recheckOn ?? '';
  const [typed, setTyped] = useState<TypedDay>();
  const open = typed?.day === standing ? undefined : typed;
  const { set, fault } = useRecheckActions(label, open, { onSet: () => setTyped(undefined), onChanged });
  return (
    <ActionForm action={set} className={layout.row} isOffered={false}>
      <Field
        label="Recheck by"
        type="date"
        value={typed?.day ?? standing}
        onChange={day => setTyped({ day, seen: typed?.seen ?? standing })}
      />
      {open !== undefined && <ActionButton action={set} submits />}
      {fault !== null && open !== undefined && (
        <span className={text.small}>{standing === '' ? 'No day is set now.' : `Set now: ${standing}.`}</span>
      )}
      <Told error={fault} />
    </ActionForm>
  );
}
