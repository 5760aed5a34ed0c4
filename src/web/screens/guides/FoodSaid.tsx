import { Link } from '@tanstack/react-router';
import type { GuidePreview } from '../../api.ts';
import { Field } from '../../ui/form/Field.tsx';
import { Tick } from '../../ui/form/Ticks.tsx';
import type { Typed, TypedRows } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import text from '../../ui/text.module.css';
import { FoodPhoto } from './FoodPhoto.tsx';
import { emptyPlace, type TypedFood, type TypedGuide } from './typedGuide.ts';

/** What the author says of one food: how to measure it, where to buy it, a picture, or why it is left out. */
export function FoodSaid(given: {
  readonly said: Typed<TypedFood>;
  readonly leftOut: TypedRows<TypedGuide['leftOut'][number]>;
  readonly food: GuidePreview['foods'][number];
}) {
  const { said, leftOut, food } = given;
  const { foodId, name, marks } = food;
  const reason = leftOut.each.find(({ values }) => values.foodId === foodId);
  return (
    <div className={`${layout.stack} ${layout.inset}`}>
      {marks.map(mark => (
        <p className={text.tag} key={mark}>
          {mark}
        </p>
      ))}
      <p>
        <Link to="/foods/$foodId" params={{ foodId }}>
          Open the label of {name}
        </Link>
      </p>
      <Field label="How to measure the portion" rows={2} {...said.field('portionNotes')} />
      <RowsEditor
        label="Where to buy"
        rows={said.rows('whereToBuy')}
        blank={() => emptyPlace}
        addLabel="Add a place to buy"
        legendOf={(_, at) => `Where to buy, ${at + 1}`}
        nameOf={({ shop }, at) => (shop.trim() === '' ? `place ${at + 1}` : shop)}
      >
        {place => (
          <div className={layout.formgrid}>
            <Field label="Shop" {...place.field('shop')} />
            <Field label="Aisle" {...place.field('aisle')} />
            <Field label="Web address" type="url" {...place.field('url')} />
            <Field label="Price" {...place.field('price')} />
            <Field type="date" label="Price seen on" {...place.field('priceOn')} />
          </div>
        )}
      </RowsEditor>
      <FoodPhoto photo={said.part('photos')} name={name} />
      <Tick
        label="Leave this food out"
        value={reason !== undefined}
        onChange={isOut => (isOut ? leftOut.add({ foodId, reason: '' }) : reason?.remove())}
      />
      {reason !== undefined && <Field label="Why it is left out (readers see the reason and how many)" {...reason.field('reason')} />}
    </div>
  );
}
