import type { KeptYardstick } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Draft } from '../../ui/draft/Draft.tsx';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { useDraft } from '../../ui/draft/useDraft.ts';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import { Field } from '../../ui/form/Field.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import { Told } from '../../ui/Told.tsx';
import { useYardstickFormActions } from './actions.ts';
import { TestFields } from './TestFields.tsx';
import { Trial } from './Trial.tsx';
import { newTest, type TypedTest, typedYardstick, yardstickOf } from './typedYardstick.ts';

/** Changes a yardstick's tests, adds and removes some, and tries it against a survey meanwhile. */
export function YardstickForm({ start, onDone }: { readonly start: KeptYardstick; readonly onDone: () => void }) {
  const { yardstick, isBuiltIn, version } = start;
  const typed = useTyped(() => typedYardstick(yardstick, isBuiltIn));
  const draft = useDraft(browserDraft(`yardstick ${yardstick.id}`), typed, String(version));
  const changed = yardstickOf({ ...yardstick, id: isBuiltIn ? `own-${yardstick.id}` : yardstick.id }, typed.values);
  const { save, cancel, fault } = useYardstickFormActions(start, changed, draft.forget, onDone);
  const wordsOf = ({ id }: TypedTest): string => start.tests.find(one => one.id === id)?.text ?? 'A new test';
  return (
    <ActionForm action={save} className={`${layout.sheet} ${layout.stack}`} formRef={focusFirstField}>
      <h2>{isBuiltIn ? 'A copy to change' : 'Change this yardstick'}</h2>
      <Draft draft={draft} />
      <Field label="As it reads in a sentence" isRequired maxLength={200} {...typed.field('title')} />
      <Field label="What it is for" isRequired maxLength={500} {...typed.field('purpose')} />
      <RowsEditor
        label="Tests"
        rows={typed.rows('tests')}
        blank={newTest}
        addLabel="Add a test"
        nameOf={test => `the test: ${wordsOf(test)}`}
      >
        {test => <TestFields test={test} text={wordsOf(test.values)} />}
      </RowsEditor>
      <Trial before={yardstick} after={changed} />
      <Told error={fault} />
      <p className={layout.row}>
        <ActionButton action={save} isMain submits />
        <ActionButton action={cancel} />
      </p>
    </ActionForm>
  );
}
