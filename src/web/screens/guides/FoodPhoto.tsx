import { useMutation } from '@tanstack/react-query';
import button from '../../ui/Button.module.css';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import styles from './FoodPhoto.module.css';
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
    <fieldset className={layout.stack}>
      <legend>Picture of the package</legend>
      {photo !== undefined && <img className={styles.thumb} src={photo.dataUrl} alt={photo.alt} />}
      <label className={layout.field}>
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
          <Field
            label="What it shows, for readers who do not see it"
            value={photo.alt}
            onChange={alt => change({ photos: { ...others, [foodId]: { ...photo, alt } } })}
            wrong={photo.alt.trim() === '' ? 'Needed: a few words.' : undefined}
          />
          <p className={layout.row}>
            <button type="button" className={button.quiet} onClick={() => change({ photos: others })}>
              Remove the picture
            </button>
          </p>
        </>
      )}
    </fieldset>
  );
}
