import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { Told } from '../../ui/Told.tsx';
import { useSiteActions } from './actions.ts';

/** Every published guide as a folder for a static host, packed into one file. */
export function GuideSite() {
  const typed = useTyped({ siteUrl: '', pdf: false });
  const { save, cancel, workId, isBuilding, wasStopped, fault } = useSiteActions(typed.values);
  return (
    <ActionForm action={save} className={`${layout.sheet} ${layout.stack} ${layout.noprint}`}>
      <h2>A site for readers</h2>
      <p>
        All published guides as a folder of pages for any static host: an index by category, a feed of changes, cards to cut out. Nothing is
        uploaded: you save one ZIP file and unpack it where you like.
      </p>
      <Field
        label="Where the site will be found"
        type="url"
        hint="Needed for the site map, and so that the feed keeps its entries. It may be left empty."
        {...typed.field('siteUrl')}
      />
      <Tick label="with PDFs in A4 and Letter, plain and in large print" {...typed.field('pdf')} />
      {isBuilding ? (
        <Progress workId={workId} begins="Building the pages" onCancel={cancel} />
      ) : (
        <p className={layout.row}>
          <ActionButton action={save} isMain submits />
        </p>
      )}
      {wasStopped && <p role="status">Stopped. Nothing was saved.</p>}
      <Told error={fault} />
    </ActionForm>
  );
}
