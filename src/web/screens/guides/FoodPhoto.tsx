import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { FileChoice } from '../../ui/FileChoice.tsx';
import { Field } from '../../ui/form/Field.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { Told } from '../../ui/Told.tsx';
import styles from './FoodPhoto.module.css';
import { useFoodPhotoActions } from './guideActions.ts';
import type { TypedFood } from './typedGuide.ts';

/** A picture of the package, made small here, so that the page stays one file that phones can load. */
export function FoodPhoto({ photo, name }: { readonly photo: Typed<TypedFood['photos']>; readonly name: string }) {
  const { choose, remove, fault } = useFoodPhotoActions(photo, name);
  const { dataUrl, alt } = photo.values;
  return (
    <fieldset className={layout.stack}>
      <legend>Picture of the package</legend>
      {dataUrl !== '' && <img className={styles.thumb} src={dataUrl} alt={alt} />}
      <p className={layout.row}>
        <FileChoice label={dataUrl === '' ? 'Choose a picture of your own' : 'Choose another'} accept="image/*" onChoose={choose} />
        {dataUrl !== '' && <ActionButton action={remove} />}
      </p>
      <Told error={fault} />
      {dataUrl !== '' && <Field label="What it shows, for readers who do not see it" {...photo.field('alt')} />}
    </fieldset>
  );
}
