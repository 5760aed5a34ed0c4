import { Problem } from '../../api.ts';
import { FileChoice } from '../../ui/FileChoice.tsx';
import layout from '../../ui/layout.module.css';
import { Empty } from '../../ui/page/Empty.tsx';
import { Reading } from '../../ui/page/Reading.tsx';
import { Removed } from '../../ui/Removed.tsx';
import { Told } from '../../ui/Told.tsx';

/** What stands where a screen will be, or cannot be. */
export function PagePieces() {
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="page-pieces">
      <h2 id="page-pieces">Instead of a screen</h2>
      <Reading />
      <Empty>
        <p>Nothing is on the shelf yet. Put a box there.</p>
      </Empty>
      <Told error={new Problem('The box is gone', 'Another window removed it.', 'Reload the page.', 'example')} />
      <Removed name="Box 4" undo={{ label: 'Undo', about: 'Put box 4 back', run: () => undefined }} />
      <p className={layout.row}>
        <FileChoice label="Choose a file" accept=".txt" onChoose={() => undefined} />
      </p>
    </section>
  );
}
