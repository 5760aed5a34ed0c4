import { keepPreviousData, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useDeferredValue, useState } from 'react';
import { answer, api, type KeptPlate, type KeptYardstick, type Survey, type Workspace } from '../../api.ts';
import { Told } from '../../ui/Told.tsx';
import { verdictWords } from '../../ui/verdictLook.ts';

type Test = Readonly<Record<string, unknown>> & { readonly id: string };
const boundKeys = ['atMost', 'atLeast', 'below'] as const;
const boundNames = { atMost: 'at most', atLeast: 'at least', below: 'under' } as const;

/** Changes a yardstick's bounds, slack and switches, and tries it against a survey meanwhile. */
export function YardstickForm({ start, onDone }: { readonly start: KeptYardstick; readonly onDone: () => void }) {
  const queries = useQueryClient();
  const [title, setTitle] = useState(start.isBuiltIn ? `${String(start.yardstick.title)}, my own` : String(start.yardstick.title));
  const [tests, setTests] = useState<readonly Test[]>(start.yardstick.tests as unknown as readonly Test[]);
  const id = start.isBuiltIn ? `own-${String(start.yardstick.id)}` : String(start.yardstick.id);
  const changed = { ...start.yardstick, id, title, tests };
  const change = (testId: string, key: string, value: unknown): void =>
    // A bound that was changed is the clinic's own; its old source would no longer be true.
    setTests(
      tests.map(test =>
        test.id === testId
          ? { ...test, [key]: value, ...(key === 'off' ? {} : { source: { kind: 'clinic', text: 'set in this workbench' } }) }
          : test,
      ),
    );
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
      className="sheet stack"
      onSubmit={event => {
        event.preventDefault();
        save.mutate();
      }}
    >
      <h2>{start.isBuiltIn ? 'A copy to change' : 'Change this yardstick'}</h2>
      <label className="field">
        <span>As it reads in a sentence</span>
        <input type="text" required value={title} onChange={event => setTitle(event.target.value)} />
      </label>
      {tests.map(test => (
        <fieldset key={test.id} className="stack">
          <legend>{start.tests.find(one => one.id === test.id)?.text ?? test.id}</legend>
          <div className="formgrid">
            {boundKeys.map(key =>
              typeof test[key] === 'number' ? (
                <label className="field" key={key}>
                  <span>{boundNames[key]}</span>
                  <input
                    type="number"
                    step="any"
                    required
                    defaultValue={test[key]}
                    onChange={event => event.target.value !== '' && change(test.id, key, Number(event.target.value))}
                  />
                </label>
              ) : null,
            )}
            {test.absent === true ? null : (
              <label className="field">
                <span>nearly: over by no more than</span>
                <input
                  type="number"
                  step="any"
                  min="0"
                  defaultValue={Number(test.slack ?? 0)}
                  onChange={event => event.target.value !== '' && change(test.id, 'slack', Number(event.target.value))}
                />
              </label>
            )}
            <label className="row">
              <input type="checkbox" checked={test.off !== true} onChange={event => change(test.id, 'off', !event.target.checked)} /> judged
            </label>
          </div>
        </fieldset>
      ))}
      <Trial before={start.yardstick} after={changed} />
      <Told error={save.error} />
      <p className="row">
        <button type="submit" className="act">
          Save the yardstick
        </button>
        <button type="button" className="quiet" onClick={onDone}>
          Cancel
        </button>
      </p>
    </form>
  );
}

/** The verdicts of one category before and after the change. */
function Trial({
  before,
  after,
}: {
  readonly before: Readonly<Record<string, unknown>>;
  readonly after: Readonly<Record<string, unknown>>;
}) {
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer<Workspace>(api.workspace.$get()) });
  const plates = useQuery({ queryKey: ['plates'], queryFn: () => answer<KeptPlate[]>(api.plates.$get()) });
  const category = workspace.data?.categories[0]?.name;
  const plate = String(
    plates.data?.find(({ plate: one }) => one.id === 'slices-on-low-sodium-bread')?.plate.id ?? plates.data?.[0]?.plate.id ?? 'on-its-own',
  );
  const trial = useDeferredValue(JSON.stringify(after));
  const ask = (yardstick: Record<string, unknown>) =>
    answer<Survey>(api.survey.$post({ json: { category: category ?? '', plate, yardstick, switchedOn: [] } }));
  const enabled = category !== undefined && plates.data !== undefined;
  const was = useQuery({ queryKey: ['trial', category, plate, before], queryFn: () => ask({ ...before }), enabled });
  const now = useQuery({
    queryKey: ['trial', category, plate, trial],
    queryFn: () => ask(JSON.parse(trial)),
    enabled,
    placeholderData: keepPreviousData,
  });
  if (was.data === undefined || now.data === undefined) return <Told error={was.error ?? now.error} />;
  return (
    <div className="notice" role="status">
      <p>
        Tried on {category}, {was.data.plateTitle}:{' '}
        {verdictWords.map(word => `${word} ${was.data.counts[word]} → ${now.data.counts[word]}`).join(', ')}.
      </p>
    </div>
  );
}
