import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { answer, api } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Page } from '../../ui/page/Page.tsx';
import { Told } from '../../ui/Told.tsx';
import { momentInWords } from './archiveWords.ts';
import { DailyCopies } from './DailyCopies.tsx';
import { Damaged } from './Damaged.tsx';
import { ImportTable } from './ImportTable.tsx';
import { MakeArchive } from './MakeArchive.tsx';
import { NewLabel } from './NewLabel.tsx';
import { ReferenceTables } from './ReferenceTables.tsx';
import { RestoreArchive } from './RestoreArchive.tsx';
import { useWorkspaceActions } from './workspaceActions.ts';

/** Labels in, everything out: import, one label by hand, archives, copies, demo, delete. */
export function DataScreen() {
  const queries = useQueryClient();
  const refresh = (): Promise<void> => queries.invalidateQueries();
  const { data: workspace, error } = useQuery({ queryKey: ['workspace'], queryFn: () => answer(api.workspace.$get()) });
  const [confirm, setConfirm] = useState('');
  const [copy, setCopy] = useState<string>();
  const { switchDemo, deleteAll, fault } = useWorkspaceActions((workspace?.demoFoods ?? 0) > 0, confirm, () => setConfirm(''));
  useOffered([switchDemo]);
  return (
    <Page
      title="Data"
      about={
        <>
          {workspace === undefined
            ? '…'
            : `${workspace.foods} foods with ${workspace.labels} labels, kept on this computer (${workspace.database})${workspace.writtenAt === undefined ? '' : `, last changed ${momentInWords(workspace.writtenAt)}`}.`}{' '}
          Nothing is sent anywhere.
        </>
      }
      fault={error}
    >
      <ImportTable onDone={refresh} />
      <NewLabel onDone={refresh} />
      <ReferenceTables onDone={refresh} />
      <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="keep-title">
        <h2 id="keep-title">Keep and bring back</h2>
        <Told error={fault} />
        <Damaged />
        <MakeArchive />
        <RestoreArchive key={copy} isEmpty={workspace?.foods === workspace?.demoFoods} copy={copy} onDone={refresh} />
        <DailyCopies onRestore={setCopy} />
        <h3>Demo, and an empty workspace</h3>
        <p className={layout.row}>
          <ActionButton action={switchDemo} />
        </p>
        {workspace?.foods !== 0 && (
          <ActionForm action={deleteAll} className={layout.stack} isOffered={false}>
            <Field
              label="To delete all foods, labels, photos and documents (clients stay; they are erased under Clients), type: delete everything"
              value={confirm}
              onChange={setConfirm}
            />
            <p>
              <ActionButton action={deleteAll} submits />
            </p>
          </ActionForm>
        )}
      </section>
    </Page>
  );
}
