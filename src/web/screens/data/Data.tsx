import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { momentInWords } from './archiveWords.ts';
import { DailyCopies } from './DailyCopies.tsx';
import { ImportTable } from './ImportTable.tsx';
import { emptyLabel, LabelForm } from './LabelForm.tsx';
import { MakeArchive } from './MakeArchive.tsx';
import { ReferenceTables } from './ReferenceTables.tsx';
import { RestoreArchive } from './RestoreArchive.tsx';

/** Labels in, everything out: import, one label by hand, archives, copies, demo, delete. */
export function DataScreen() {
  const queries = useQueryClient();
  const refresh = (): Promise<void> => queries.invalidateQueries();
  const workspace = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const [last, setLast] = useState<Parameters<Parameters<typeof LabelForm>[0]['onSave']>[0]>();
  const [saved, setSaved] = useState<{ readonly id: string; readonly name: string }>();
  const [confirm, setConfirm] = useState('');
  const demo = useMutation({ mutationFn: (load: boolean) => answer(load ? api.demo.$post() : api.demo.$delete()), onSuccess: refresh });
  const purge = useMutation({
    mutationFn: () => answer(api.workspace.$delete({ json: { confirm: 'delete everything' } })),
    onSuccess: refresh,
  });
  const [copy, setCopy] = useState<string>();
  const isEmpty = workspace.data?.foods === 0;
  return (
    <>
      <h1>Data</h1>
      <p className={text.soft}>
        {workspace.data === undefined
          ? '…'
          : `${workspace.data.foods} foods with ${workspace.data.labels} labels, kept on this computer (${workspace.data.database})${workspace.data.writtenAt === undefined ? '' : `, last changed ${momentInWords(workspace.data.writtenAt)}`}.`}{' '}
        Nothing is sent anywhere.
      </p>
      <ImportTable onDone={refresh} />
      <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="one-title">
        <h2 id="one-title">Type one label</h2>
        {saved !== undefined && (
          <p className={layout.notice} role="status">
            Saved:{' '}
            <Link to="/foods/$foodId" params={{ foodId: saved.id }} search={{}}>
              {saved.name}
            </Link>
            . The form starts from this label, for a look-alike beside it.
          </p>
        )}
        <LabelForm
          key={saved?.id ?? 'first'}
          start={last ?? emptyLabel}
          onSave={async label => {
            const { id } = await answer(api.foods.$post({ json: { label } }));
            const { gtin: _gtin, ...lookAlike } = label;
            setLast(lookAlike);
            setSaved({ id, name: label.name ?? '' });
            await refresh();
          }}
        />
      </section>
      <ReferenceTables onDone={refresh} />
      <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="keep-title">
        <h2 id="keep-title">Keep and bring back</h2>
        <Told error={demo.error ?? purge.error} />
        <Damaged />
        <MakeArchive />
        <RestoreArchive key={copy} isEmpty={workspace.data?.foods === workspace.data?.demoFoods} copy={copy} onDone={refresh} />
        <DailyCopies onRestore={setCopy} />
        <h3>Demo, and an empty workspace</h3>
        <p className={layout.row}>
          {(workspace.data?.demoFoods ?? 0) > 0 ? (
            <button type="button" className={button.quiet} onClick={() => demo.mutate(false)}>
              Remove the demo
            </button>
          ) : (
            <button type="button" className={button.quiet} onClick={() => demo.mutate(true)}>
              Load the demo
            </button>
          )}
        </p>
        {!isEmpty && (
          <form
            className={layout.stack}
            onSubmit={event => {
              event.preventDefault();
              purge.mutate();
              setConfirm('');
            }}
          >
            <label className={layout.field}>
              <span>
                To delete all foods, labels, photos and documents (clients stay; they are erased under Clients), type: delete everything
              </span>
              <input type="text" value={confirm} onChange={event => setConfirm(event.target.value)} />
            </label>
            <p>
              <button type="submit" className={button.quiet} disabled={confirm !== 'delete everything'}>
                Delete everything
              </button>
            </p>
          </form>
        )}
      </section>
    </>
  );
}

/** What was damaged behind the program's back. It is passed over everywhere, kept as it is, and goes along with an export. */
function Damaged() {
  const damaged = useQuery({ queryKey: ['damaged'], queryFn: () => answer(api.workspace.damaged.$get()) });
  if (damaged.data === undefined || damaged.data.length === 0) return null;
  const tables = [...Map.groupBy(damaged.data, ({ table }) => table.replaceAll('_', ' '))].map(
    ([table, rows]) => `${rows.length} in ${table}`,
  );
  return (
    <div className={layout.notice} role="status">
      <p>
        <b>Something in the database cannot be read</b> and is passed over: {tables.join(', ')}. Nothing of it was changed or deleted.
      </p>
      <p>Next: make an archive, so that it is kept as it is; then restore the newest daily copy from before.</p>
    </div>
  );
}
