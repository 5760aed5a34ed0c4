import { useQuery } from '@tanstack/react-query';
import { type ArchiveShort, answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { OneOf } from '../../ui/form/OneOf.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import type { useRestoreActions } from './archiveActions.ts';
import { clientsInWords, momentInWords, rowsInWords, sizeInWords } from './archiveWords.ts';

interface TypedRestore {
  readonly into: 'empty' | 'beside';
  readonly withClients: boolean;
  readonly passphrase: string;
}

/** What is in the archive that was looked at, and where to with it. A passphrase is kept in no draft. */
export function RestoreForm(given: {
  readonly archive: ArchiveShort;
  readonly isEmpty: boolean;
  readonly actions: Pick<ReturnType<typeof useRestoreActions>, 'restore' | 'leave'>;
}) {
  const { archive, isEmpty, actions } = given;
  const typed = useTyped<TypedRestore>({
    into: isEmpty ? 'empty' : 'beside',
    withClients: archive.clients !== undefined,
    passphrase: '',
  });
  const { into, withClients, passphrase } = typed.values;
  const lock = useQuery({ queryKey: ['lock'], queryFn: () => answer(api.clients.lock.$get()), gcTime: 0 });
  const isUnlocked = lock.data?.hasPassphrase === false;
  const asksPassphrase = withClients && into === 'beside' && archive.clients?.opensWith === 'passphrase';
  const restore = actions.restore(archive.id, { into, withClients, ...(asksPassphrase ? { passphrase } : {}) });
  return (
    <ActionForm action={restore} className={`${layout.notice} ${layout.stack}`}>
      <p>
        <b>
          {archive.kind === 'archive' ? `An archive of ${momentInWords(archive.madeAt)}` : 'A workspace file of an earlier Platewright'}
        </b>{' '}
        ({sizeInWords(archive.bytes)}), read through and whole. In it: {rowsInWords(archive.rows) ?? 'no food or document'};{' '}
        {clientsInWords(archive)}.
        {archive.damaged > 0 && ` ${archive.damaged} values in it cannot be read; they come along as they are and are passed over.`}
      </p>
      <OneOf
        label="Where to"
        choices={[
          [
            'empty',
            `Into this workspace, ${
              isEmpty
                ? 'which is empty but for the demo; what was added to foods of the demo goes with it'
                : 'which must be empty first (Delete everything, below)'
            }`,
          ],
          ['beside', 'Beside what is here: what is new is added, what stands here is left as it is, and what differs is told'],
        ]}
        impossible={isEmpty ? [] : ['empty']}
        {...typed.field('into')}
      />
      {archive.clients !== undefined && (
        <Tick
          label={[
            'The client records too',
            into === 'empty' && archive.clients.opensWith === 'passphrase' && '; they stay sealed, and their passphrase holds from then on',
            into === 'beside' && isUnlocked && '; no passphrase is set here, so anyone using this computer account can read them then',
          ]
            .filter(Boolean)
            .join('')}
          {...typed.field('withClients')}
        />
      )}
      {asksPassphrase && (
        <Field label="Passphrase of the client records in the archive" type="password" isRequired {...typed.field('passphrase')} />
      )}
      <p className={layout.row}>
        <ActionButton action={restore} isMain submits />
        <ActionButton action={actions.leave(archive.id)} />
      </p>
    </ActionForm>
  );
}
