import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import type { Print } from '../../ui/preview/PaperPages.tsx';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';
import { useHandoutFileActions } from './actions.ts';

/** Saves a handout: the fridge page is the first sheet of each PDF. */
export function HandoutFiles({ src, print, name }: { readonly src: string | undefined; readonly print: Print; readonly name: string }) {
  const { files, file, fault } = useHandoutFileActions(src, print, name);
  useOffered(files.map(one => ({ ...one, about: `Save the handout: ${one.label}` })));
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="files-title">
      <h2 id="files-title">Give it</h2>
      <p className={text.soft}>The first sheet is the fridge page.</p>
      <p className={layout.row}>
        {files.map(one => (
          <ActionButton key={one.label} action={one} />
        ))}
      </p>
      <p role="status">{file === 'pending' ? 'Making the file …' : file === 'success' ? 'Saved.' : ''}</p>
      <Told error={fault} />
    </section>
  );
}
