import { useMutation } from '@tanstack/react-query';
import { Problem, problemOf } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import type { Dress, Print } from '../../ui/preview/PaperPages.tsx';
import { saveFile } from '../../ui/saveFile.ts';
import { Told } from '../../ui/Told.tsx';
import text from '../../ui/text.module.css';

const papers: readonly (readonly [name: string, end: string, dress: Dress])[] = [
  ['PDF, Letter', 'letter.pdf', { paper: 'letter', largePrint: false }],
  ['PDF, A4', 'a4.pdf', { paper: 'a4', largePrint: false }],
  ['PDF in large print, Letter', 'large-print.letter.pdf', { paper: 'letter', largePrint: true }],
  ['PDF in large print, A4', 'large-print.a4.pdf', { paper: 'a4', largePrint: true }],
];

/** Saves a handout: the fridge page is the first sheet of each PDF. */
export function HandoutFiles({ src, print, name }: { readonly src: string | undefined; readonly print: Print; readonly name: string }) {
  const save = useMutation({
    mutationFn: async ({ end, dress }: { readonly end: string; readonly dress?: Dress }) => {
      if (dress === undefined) {
        const page = await fetch(src!);
        if (!page.ok) throw new Problem('This preview is an old one', 'The page was built anew.', 'Wait a moment, then save again.', 'old');
        return { end, file: new Blob([await page.text()], { type: 'text/html' }) };
      }
      const response = await print(dress);
      if (!response.ok) throw await problemOf(response);
      return { end, file: new Blob([await response.arrayBuffer()], { type: 'application/pdf' }) };
    },
    onSuccess: ({ end, file }) => saveFile(file, `${name}.${end}`),
  });
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="files-title">
      <h2 id="files-title">Give it</h2>
      <p className={text.soft}>The first sheet is the fridge page.</p>
      <p className={layout.row}>
        {papers.map(([title, end, dress]) => (
          <button
            key={end}
            type="button"
            className={button.quiet}
            disabled={src === undefined || save.isPending}
            onClick={() => save.mutate({ end, dress })}
          >
            {title}
          </button>
        ))}
        <button
          type="button"
          className={button.quiet}
          disabled={src === undefined || save.isPending}
          onClick={() => save.mutate({ end: 'html' })}
        >
          Page (HTML)
        </button>
      </p>
      <p role="status">{save.isPending ? 'Making the file …' : save.isSuccess ? 'Saved.' : ''}</p>
      <Told error={save.error} />
    </section>
  );
}
