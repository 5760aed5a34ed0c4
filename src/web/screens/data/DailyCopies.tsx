import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import { Table } from '../../ui/table/Table.tsx';
import text from '../../ui/text.module.css';
import { momentInWords, sizeInWords } from './archiveWords.ts';
import { useCopyActions } from './copyActions.ts';
import { DeleteEarlierCopies } from './DeleteEarlierCopies.tsx';

/** The copies that the program makes by itself: how the last one went, where they lie, and which are there. */
export function DailyCopies({ onRestore }: { readonly onRestore: (day: string) => void }) {
  const actions = useCopyActions(onRestore);
  const copies = useQuery({ queryKey: ['copies'], queryFn: () => answer(api.copies.$get()) });
  useOffered(actions.making.isRunning ? [] : [actions.make]);
  if (copies.data === undefined) return <Told error={copies.error} />;
  const { lastAt, lastFault, heldUntil, restoreBrokenOff, earlierFolders = [] } = copies.data;
  const { making, folder } = actions;
  return (
    <div className={layout.stack}>
      <h3>Daily copies</h3>
      {restoreBrokenOff && (
        <div className={layout.notice} role="alert">
          <p>
            <b>A restore was broken off.</b> Its foods and documents may be here without its client records. Next: restore the same archive
            once more, beside what is here; it adds what is missing.
          </p>
        </div>
      )}
      {lastFault !== undefined && (
        <div className={layout.notice} role="alert">
          <p>
            <b>The copy of {momentInWords(lastFault.at)} was not made.</b> {lastFault.title}. {lastFault.message} Next: {lastFault.nextStep}
          </p>
        </div>
      )}
      <p className={text.soft}>
        On each day on which something has changed, a copy of everything is made: the last seven days, and one a week for four weeks before.
        Client records under a passphrase stay sealed in them; without one, whoever has a copy can read them. The last one:{' '}
        {lastAt === undefined ? 'none yet' : momentInWords(lastAt)}.
        {heldUntil !== undefined &&
          ` What you erase today is in a copy until ${heldUntil} at the latest, when Platewright is used till then.`}
      </p>
      <p className={text.soft}>
        Folder: <code>{copies.data.folder}</code>. On another disk, copies outlive this one.
        {earlierFolders.length > 0 &&
          ` Copies made before in ${earlierFolders.join(', ')} stay there until you delete them${copies.data.earlier.holdKey > 0 ? '; whoever has one can read the client records in it' : ''}.`}
      </p>
      <Told error={actions.fault} />
      {making.isRunning ? (
        <Progress workId={making.workId} begins="Making a copy" onCancel={making.cancel} />
      ) : (
        <p className={layout.row}>
          <ActionButton action={actions.make} />
          {folder.typed === undefined && <ActionButton action={actions.choose(copies.data.folder)} />}
        </p>
      )}
      {folder.typed !== undefined && (
        <ActionForm action={folder.use} className={layout.stack}>
          <Field label="Folder for copies to come, from its root on" isRequired value={folder.typed} onChange={folder.set} />
          <p className={layout.row}>
            <ActionButton action={folder.use} isMain submits />
            <ActionButton action={folder.cancel} />
          </p>
        </ActionForm>
      )}
      {copies.data.copies.length > 0 && (
        <details>
          <summary>{copies.data.copies.length === 1 ? 'One copy' : `${copies.data.copies.length} copies`}</summary>
          <div className={layout.stack}>
            <Table
              label="Copies that are here"
              rows={copies.data.copies}
              keyOf={({ day }) => day}
              columns={[
                { key: 'made', name: 'Made', cell: ({ madeAt }) => momentInWords(madeAt), sortBy: ({ madeAt }) => madeAt },
                {
                  key: 'size',
                  name: 'Size',
                  width: '7rem',
                  isNumber: true,
                  cell: ({ bytes }) => sizeInWords(bytes),
                  sortBy: ({ bytes }) => bytes,
                },
                { key: 'key', name: 'Client records', cell: ({ holdsKey }) => (holdsKey ? 'not locked' : 'sealed, or none') },
                {
                  key: 'restore',
                  name: 'Restore',
                  isNameUnseen: true,
                  isOnPaper: false,
                  width: 'auto',
                  cell: ({ day, madeAt }) => <ActionButton action={actions.restore(day, momentInWords(madeAt))} />,
                },
              ]}
            />
            <DeleteEarlierCopies />
          </div>
        </details>
      )}
    </div>
  );
}
