import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import button from '../../ui/Button.module.css';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useMakeArchive } from './archiveActions.ts';
import { clientsInWords, rowsInWords, sizeInWords } from './archiveWords.ts';

/** Everything into one file: asked for, made, read back, saved. A passphrase is kept in no draft. */
export function MakeArchive() {
  const typed = useTyped({ withClients: true, passphrase: '', again: '' });
  const { withClients, passphrase, again } = typed.values;
  const lock = useQuery({ queryKey: ['lock'], queryFn: () => answer(api.clients.lock.$get()) });
  const asksPassphrase = withClients && lock.data?.hasPassphrase === false;
  const { make, making } = useMakeArchive(typed.values, asksPassphrase, () => typed.set({ passphrase: '', again: '' }));
  const made = making.result;
  return (
    <ActionForm action={make} className={layout.stack}>
      <h3>Make an archive</h3>
      <p className={text.soft}>
        One file with everything: foods, labels, photos, plates, yardsticks, saved surveys, guides, handouts, composition tables and,
        sealed, client records. Estimates are not in it: they are computed again.
      </p>
      <Tick
        label={`With the client records${lock.data?.hasPassphrase ? ', sealed under their passphrase' : ''}`}
        {...typed.field('withClients')}
      />
      {asksPassphrase && (
        <>
          <div className={layout.formgrid}>
            <Field label="Passphrase for this file" type="password" autoComplete="new-password" isRequired {...typed.field('passphrase')} />
            <Field label="The same once more" type="password" autoComplete="new-password" isRequired {...typed.field('again')} />
          </div>
          <p className={text.soft}>
            Whoever restores the file needs this passphrase for the client records. Nobody can bring it back when it is forgotten.
          </p>
          {again !== '' && again !== passphrase && <p role="status">The two are not the same yet.</p>}
        </>
      )}
      <Told error={making.fault} />
      {making.isRunning ? (
        <Progress workId={making.workId} begins="Making the archive" onCancel={making.cancel} />
      ) : (
        <p>
          <ActionButton action={make} isMain submits />
        </p>
      )}
      {made !== undefined && !making.isRunning && (
        <div className={`${layout.notice} ${layout.stack}`} role="status">
          <p>
            <b>The archive is made and was read back whole</b> ({sizeInWords(made.bytes)}). In it:{' '}
            {rowsInWords(made.rows) ?? 'no food or document'}; {clientsInWords(made)}.
            {made.clients === undefined && ' Client records are not in it.'}
            {made.damaged > 0 && ` ${made.damaged} values that cannot be read went along as they are.`}
          </p>
          <p>
            <a className={button.act} href={`/api/archives/${made.id}/file`} download>
              Save the file
            </a>
          </p>
        </div>
      )}
    </ActionForm>
  );
}
