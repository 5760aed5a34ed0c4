import { useMutation } from '@tanstack/react-query';
import { TextField } from '../../ui/TextField.tsx';
import { Told } from '../../ui/Told.tsx';
import type { GuidePart } from './GuideWords.tsx';
import { smallPicture } from './smallPicture.ts';

/** A picture of the package, made small here, so that the page stays one file that phones can load. */
export function FoodPhoto({
  typed,
  change,
  foodId,
  name,
}: Pick<GuidePart, 'typed' | 'change'> & { readonly foodId: string; readonly name: string }) {
  const { [foodId]: photo, ...others } = typed.photos;
  const pick = useMutation({
    mutationFn: smallPicture,
    onSuccess: dataUrl => change({ photos: { ...others, [foodId]: { dataUrl, alt: photo?.alt ?? `The package of ${name}` } } }),
  });
  return (
    <fieldset className="stack">
      <legend>Picture of the package</legend>
      {photo !== undefined && <img className="thumb" src={photo.dataUrl} alt={photo.alt} />}
      <label className="field">
        <span>{photo === undefined ? 'Choose a picture of your own' : 'Choose another'}</span>
        <input
          type="file"
          accept="image/*"
          onChange={event => {
            const [file] = event.target.files ?? [];
            if (file !== undefined) pick.mutate(file);
          }}
        />
      </label>
      <Told error={pick.error} />
      {photo !== undefined && (
        <>
          <TextField
            label="What it shows, for readers who do not see it"
            value={photo.alt}
            onChange={alt => change({ photos: { ...others, [foodId]: { ...photo, alt } } })}
            wrong={photo.alt.trim() === '' ? 'Needed: a few words.' : undefined}
          />
          <p className="row">
            <button type="button" className="quiet" onClick={() => change({ photos: others })}>
              Remove the picture
            </button>
          </p>
        </>
      )}
    </fieldset>
  );
}
