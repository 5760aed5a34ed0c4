import { Link } from '@tanstack/react-router';
import { dayText } from '#core/guide/day.ts';
import type { GuidePreview } from '../../api.ts';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { useOffered } from '../../ui/action/offered.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import { useOutputActions } from './guideActions.ts';
import type { GuideInHand } from './useGuide.ts';

/** What becomes of the guide: published with its day and labels, saved as files, or copied for a site builder. */
export function Outputs(given: { readonly id: string; readonly inHand: GuideInHand; readonly preview: GuidePreview | undefined }) {
  const { id, inHand, preview } = given;
  const { publish, files, copy, published, file, copied, fault } = useOutputActions(id, inHand, preview?.previewId !== undefined);
  useOffered([publish, copy, ...files.map(one => ({ ...one, about: `Save the guide: ${one.label}` }))]);
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="outputs-title">
      <h2 id="outputs-title">Publish</h2>
      {preview?.counts !== undefined && <Standing preview={preview} />}
      <p>{publicationText(inHand)}</p>
      <p className={layout.row}>
        <ActionButton action={publish} isMain />
        <span role="status">{published ? 'Published. Save its files below, or the whole site under Guides.' : ''}</span>
      </p>
      <h3>Files</h3>
      <p className={layout.row}>
        {files.map(one => (
          <ActionButton key={one.label} action={one} />
        ))}
        <ActionButton action={copy} />
      </p>
      <p role="status">
        {file === 'pending' ? 'Making the file …' : file === 'success' ? 'Saved.' : ''}
        {copied ? ' Copied: paste it into an HTML block of your page.' : ''}
      </p>
      <Told error={fault} />
    </section>
  );
}

function publicationText({ isPublished, isChanged, values }: GuideInHand): string {
  if (!isPublished)
    return 'Not published yet. Publishing sets the day and puts the labels that stand today on record, so that later changes are told.';
  const next = isChanged
    ? 'You have changed it since: the site keeps what was published until you publish it again.'
    : 'Publish it again when you have looked at what has changed since.';
  return `Published ${dayText(values.publishedOn)}. ${next}`;
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
