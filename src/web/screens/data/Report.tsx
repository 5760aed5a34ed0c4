import type { ImportLook } from '../../api.ts';
import text from '../../ui/text.module.css';

/** What was noticed while files were read, by file and place. */
export function Report({ report }: { readonly report: ImportLook['report'] }) {
  const most = 100;
  if (report.length === 0) return <p>Nothing was noticed: every cell could be read.</p>;
  return (
    <details open>
      <summary>{report.length === 1 ? 'One thing was' : `${report.length} things were`} noticed</summary>
      <ul>
        {report.slice(0, most).map(({ code, place, found, expected }, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the same thing may be noticed twice in one row
          <li key={`${code}${index}`}>
            {place.file === undefined ? '' : `${place.file}, `}
            {place.line === undefined ? '' : `line ${place.line}: `}
            {place.row === undefined ? '' : `Row ${place.row}, `}
            {place.heading === undefined ? '' : `${place.heading}: `}found {found}; expected {expected}.
          </li>
        ))}
      </ul>
      {report.length > most && <p className={text.soft}>And {report.length - most} more.</p>}
    </details>
  );
}
