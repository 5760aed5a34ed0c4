import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api, type KeptYardstick } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { focusFirstField } from '../../ui/focusFirstField.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { type JsonTest, newTest } from './jsonTest.ts';
import { TestFields } from './TestFields.tsx';
import { Trial } from './Trial.tsx';

/** Changes a yardstick's tests, adds and removes some, and tries it against a survey meanwhile. */
export function YardstickForm({ start, onDone }: { readonly start: KeptYardstick; readonly onDone: () => void }) {
  const queries = useQueryClient();
  const [title, setTitle] = useState(start.isBuiltIn ? `${start.yardstick.title}, my own` : start.yardstick.title);
  const [purpose, setPurpose] = useState(start.yardstick.purpose ?? '');
  const [tests, setTests] = useState<readonly JsonTest[]>(start.yardstick.tests);
  const id = start.isBuiltIn ? `own-${start.yardstick.id}` : start.yardstick.id;
  const changed = { ...start.yardstick, id, title, purpose, tests };
  const save = useMutation({
    mutationFn: () =>
      answer(
        api.yardsticks[':id'].$put({
          param: { id: start.isBuiltIn ? crypto.randomUUID() : id },
          json: { yardstick: changed, version: start.isBuiltIn ? null : start.version },
        }),
      ),
    onSuccess: async () => {
      await queries.invalidateQueries();
      onDone();
    },
  });
  return (
    <form
      className={`${layout.sheet} ${layout.stack}`}
      ref={focusFirstField}
      onSubmit={event => {
        event.preventDefault();
        save.mutate();
      }}
    >
      <h2>{start.isBuiltIn ? 'A copy to change' : 'Change this yardstick'}</h2>
      <label className={layout.field}>
        <span>As it reads in a sentence</span>
        <input type="text" required maxLength={200} value={title} onChange={event => setTitle(event.target.value)} />
      </label>
      <label className={layout.field}>
        <span>What it is for</span>
        <input type="text" required maxLength={500} value={purpose} onChange={event => setPurpose(event.target.value)} />
      </label>
      {tests.map(test => (
        <TestFields
          key={test.id}
          test={test}
          text={start.tests.find(one => one.id === test.id)?.text ?? 'A new test'}
          onChange={next => setTests(tests.map(one => (one.id === test.id ? next : one)))}
          onRemove={() => setTests(tests.filter(one => one.id !== test.id))}
        />
      ))}
      <p className={layout.row}>
        <button type="button" className={button.quiet} onClick={() => setTests([...tests, newTest()])}>
          Add a test
        </button>
      </p>
      <Trial before={start.yardstick} after={changed} />
      <Told error={save.error} />
      <p className={layout.row}>
        <button type="submit" className={button.act} disabled={save.isPending}>
          Save the yardstick
        </button>
        <button type="button" className={button.quiet} onClick={onDone}>
          Cancel
        </button>
      </p>
    </form>
  );
}
