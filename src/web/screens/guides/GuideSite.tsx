import { useMutation } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { api, problemOf } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Progress } from '../../ui/Progress.tsx';
import { saveFile } from '../../ui/saveFile.ts';
import { Told } from '../../ui/Told.tsx';

/** Every published guide as a folder for a static host, packed into one file. */
export function GuideSite() {
  const [siteUrl, setSiteUrl] = useState('');
  const [pdf, setPdf] = useState(false);
  const stop = useRef<AbortController>(undefined);
  const [workId, setWorkId] = useState('');
  const build = useMutation({
    mutationFn: async (id: string) => {
      stop.current = new AbortController();
      const response = await api['guide-site'].$post(
        { json: { pdf, workId: id, ...(siteUrl.trim() === '' ? {} : { siteUrl: siteUrl.trim() }) } },
        { init: { signal: stop.current.signal } },
      );
      if (!response.ok) throw await problemOf(response);
      return response.blob();
    },
    onSuccess: blob => saveFile(blob, 'guides.zip'),
  });
  const wasStopped = build.error instanceof DOMException && build.error.name === 'AbortError';
  return (
    <form
      className={`${layout.sheet} ${layout.stack} ${layout.noprint}`}
      onSubmit={event => {
        event.preventDefault();
        const id = crypto.randomUUID();
        setWorkId(id);
        build.mutate(id);
      }}
    >
      <h2>A site for readers</h2>
      <p>
        All published guides as a folder of pages for any static host: an index by category, a feed of changes, cards to cut out. Nothing is
        uploaded: you save one ZIP file and unpack it where you like.
      </p>
      <Field
        label="Where the site will be found"
        type="url"
        value={siteUrl}
        onChange={setSiteUrl}
        hint="Needed for the site map, and so that the feed keeps its entries. It may be left empty."
      />
      <label className={layout.row}>
        <input type="checkbox" checked={pdf} onChange={event => setPdf(event.target.checked)} />
        <span>with PDFs in A4 and Letter, plain and in large print</span>
      </label>
      {build.isPending ? (
        <Progress workId={workId} begins="Building the pages" onCancel={() => stop.current?.abort()} />
      ) : (
        <p className={layout.row}>
          <button type="submit" className={button.act}>
            Save the site
          </button>
        </p>
      )}
      {wasStopped ? <p role="status">Stopped. Nothing was saved.</p> : <Told error={build.error} />}
    </form>
  );
}
