import { useQuery } from '@tanstack/react-query';
import { Problem } from '../../api.ts';
import { Told } from '../Told.tsx';
import text from '../text.module.css';
import styles from './preview.module.css';
import { type Spoken, spokenOrder } from './spokenOrder.ts';

/** What a screen reader says, line by line: what each thing is, then its words. */
export function ReadAloud({ src }: { readonly src: string }) {
  const page = useQuery({
    queryKey: ['page aloud', src],
    queryFn: async () => {
      const response = await fetch(src);
      if (!response.ok)
        throw new Problem('This preview is an old one', 'The page was built anew.', 'Change something, or wait a moment.', 'old');
      // Its styles are not asked for, and the policy of the workbench would complain of them.
      const html = (await response.text()).replace(/<style>[\s\S]*?<\/style>/g, '');
      return spokenOrder(new DOMParser().parseFromString(html, 'text/html'));
    },
    gcTime: 0,
  });
  return (
    <>
      <Told error={page.error} />
      {page.data !== undefined && <Headings all={page.data} />}
      <ol className={styles.spoken}>
        {page.data?.map(({ what, words }, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines of a finished page, never moved
          <li key={at}>
            <span className={text.soft}>{what}</span> {words}
          </li>
        ))}
      </ol>
    </>
  );
}

function Headings({ all }: { readonly all: readonly Spoken[] }) {
  const count = (start: string): number => all.filter(({ what }) => what.startsWith(start)).length;
  return (
    <p className={text.soft}>
      {all.length} lines: {count('heading')} headings, {count('link')} links, {count('picture')} pictures, {count('table')} tables. Screen
      readers differ in their wording, not in this order.
    </p>
  );
}
