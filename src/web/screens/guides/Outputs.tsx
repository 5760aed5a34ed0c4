import { useMutation } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { dayText } from '#core/guide/day.ts';
import { api, type GuidePreview, problemOf } from '../../api.ts';
import button from '../../ui/Button.module.css';
import layout from '../../ui/layout.module.css';
import { saveFile } from '../../ui/saveFile.ts';
import { Told } from '../../ui/Told.tsx';
import type { GuideInHand } from './useGuide.ts';

const files = [
  ['html', 'Page (HTML)'],
  ['large-print.html', 'Page in large print'],
  ['letter.pdf', 'PDF, Letter'],
  ['a4.pdf', 'PDF, A4'],
  ['large-print.letter.pdf', 'PDF in large print, Letter'],
  ['large-print.a4.pdf', 'PDF in large print, A4'],
  ['csv', 'Table (CSV)'],
  ['pocket-card.svg', 'Pocket card'],
  ['slide-chart.svg', 'Slide chart'],
] as const;
type End = (typeof files)[number][0] | 'fragment.html';

/** What becomes of the guide: published with its day and labels, saved as files, or copied for a site builder. */
export function Outputs(given: {
  readonly id: string;
  readonly inHand: GuideInHand;
  readonly isPublished: boolean;
  readonly preview: GuidePreview | undefined;
}) {
  const { id, inHand, isPublished, preview } = given;
  const isReady = preview?.previewId !== undefined;
  const fetched = async (end: End): Promise<Blob> => {
    await inHand.saved();
    const response = await api.guides[':id'].files[':end'].$get({ param: { id, end } });
    if (!response.ok) throw await problemOf(response);
    return response.blob();
  };
  const save = useMutation({ mutationFn: fetched, onSuccess: (file, end) => saveFile(file, `${id}.${end}`) });
  const copy = useMutation({
    mutationFn: async () => navigator.clipboard.writeText(await (await fetched('fragment.html')).text()),
  });
  const publish = useMutation({
    mutationFn: inHand.publish,
  });
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="outputs-title">
      <h2 id="outputs-title">Publish</h2>
      {preview?.counts !== undefined && <Standing preview={preview} />}
      <p>
        {isPublished
          ? `Published ${dayText(inHand.typed.publishedOn)}. ${inHand.isChanged ? 'You have changed it since: the site keeps what was published until you publish it again.' : 'Publish it again when you have looked at what has changed since.'}`
          : 'Not published yet. Publishing sets the day and puts the labels that stand today on record, so that later changes are told.'}
      </p>
      <p className={layout.row}>
        <button type="button" className={button.act} disabled={!isReady || publish.isPending} onClick={() => publish.mutate()}>
          {isPublished ? 'Publish again' : 'Publish'}
        </button>
        <span role="status">{publish.isSuccess ? 'Published. Save its files below, or the whole site under Guides.' : ''}</span>
      </p>
      <h3>Files</h3>
      <p className={layout.row}>
        {files.map(([end, name]) => (
          <button key={end} type="button" className={button.quiet} disabled={!isReady || save.isPending} onClick={() => save.mutate(end)}>
            {name}
          </button>
        ))}
        <button type="button" className={button.quiet} disabled={!isReady || copy.isPending} onClick={() => copy.mutate()}>
          Copy for a site builder
        </button>
      </p>
      <p role="status">
        {save.isPending ? 'Making the file …' : save.isSuccess ? 'Saved.' : ''}
        {copy.isSuccess ? ' Copied: paste it into an HTML block of your page.' : ''}
      </p>
      <Told error={publish.error ?? save.error ?? copy.error} />
    </section>
  );
}

/** What has to be looked at before readers are: labels that changed or are due, foods that were taken off. */
function Standing({ preview: { counts, takenOff, foods } }: { readonly preview: GuidePreview }) {
  const marked = foods.filter(({ marks }) => marks.length > 0);
  return (
    <>
      <p>
        {counts!.read} foods judged: {counts!.fits} fit, {counts!.nearly} nearly, {counts!.leftOut} left out.
      </p>
      {takenOff.length > 0 && <p>Taken off since it was published: {takenOff.join('; ')}.</p>}
      {marked.length > 0 && (
        <details>
          <summary>{marked.length} to check against the package</summary>
          <ul>
            {marked.map(({ foodId, name, marks }) => (
              <li key={foodId}>
                <Link to="/foods/$foodId" params={{ foodId }}>
                  {name}
                </Link>
                : {marks.join(' ')}
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}
