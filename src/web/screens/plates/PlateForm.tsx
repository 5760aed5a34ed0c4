import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type KeptPlate } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone, plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Ticks } from '../../ui/form/Ticks.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useCompanionActions, usePlateFormActions } from './actions.ts';
import { PortionFields } from './PortionFields.tsx';
import { type CompanionEntry, typedPlate } from './typedPlate.ts';

/** Makes a plate or changes one. The companions' labels travel with the plate. */
export function PlateForm({ start, onDone }: { readonly start: KeptPlate | undefined; readonly onDone: () => void }) {
  const typed = useTyped(() => typedPlate(start?.plate));
  const draft = useDraft(browserDraft(`plate ${start?.plate.id ?? 'new'}`), typed, String(start?.version ?? ''));
  const { save, cancel, fault } = usePlateFormActions(start, typed, draft.forget, onDone);
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const known = new Set([...(workspace.data?.categories.map(({ name }) => name) ?? []), ...typed.values.categories]);
  const companions = typed.rows('companions');
  return (
    <ActionForm action={save} className={`${layout.sheet} ${layout.stack}`} formRef={focusFirstField}>
      <h2>{start === undefined ? 'A new plate' : 'Change this plate'}</h2>
      <Draft draft={draft} />
      <Field label="As it reads in a sentence (two slices of rye bread)" isRequired maxLength={200} {...typed.field('title')} />
      <div className={layout.formgrid}>
        <PortionFields name="Portion of the food" portion={typed.part('portion')} />
      </div>
      <RowsEditor
        label="Eaten with"
        rows={companions}
        nameOf={({ food }) => food.name}
        below={<AddCompanion onAdd={entry => companions.add(entry)} />}
      >
        {entry => (
          <>
            <b>{entry.values.food.name}</b>
            <PortionFields name="How much of it" portion={entry.part('portion')} />
          </>
        )}
      </RowsEditor>
      {known.size > 0 && (
        <Ticks label="What is eaten this way (none ticked: anything)" choices={plainChoices([...known])} {...typed.field('categories')} />
      )}
      <Told error={fault} />
      <p className={layout.row}>
        <ActionButton action={save} isMain submits />
        <ActionButton action={cancel} />
      </p>
    </ActionForm>
  );
}

/** Finds a food of the shelf and puts it on the plate. */
function AddCompanion({ onAdd }: { readonly onAdd: (entry: CompanionEntry) => void }) {
  const [search, setSearch] = useState('');
  const [chosen, setChosen] = useState('');
  const foods = useQuery({ queryKey: ['foods', search, ''], queryFn: () => answer(api.foods.$get({ query: { search } })) });
  const { add, fault } = useCompanionActions(chosen, entry => {
    onAdd(entry);
    setChosen('');
  });
  const choices = (foods.data ?? [])
    .slice(0, 100)
    .map(({ id, name, maker }) => [id, maker === undefined ? name : `${name} · ${maker}`] as const);
  return (
    <div className={layout.row}>
      <Field label="Search the shelf" type="search" value={search} onChange={setSearch} />
      <Choice label="Food" choices={orNone('choose one', choices)} value={chosen} onChange={setChosen} />
      <ActionButton action={add} />
      {foods.data?.length === 0 && <p className={text.soft}>No food of this name is on the shelf. Add its label under Data first.</p>}
      <Told error={foods.error ?? fault} />
    </div>
  );
}
