import type { GuidePreview } from '../../api.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { type Choices, orNone } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import type { Typed } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';
import text from '../../ui/text.module.css';
import type { TypedDisclosure, TypedGuide } from './typedGuide.ts';

const kinds: Choices<string> = [
  ['affiliate', 'paid links'],
  ['free-sample', 'free samples'],
  ['sponsorship', 'sponsorship'],
  ['none', 'nothing to disclose'],
];

interface Given {
  readonly typed: Typed<TypedGuide>;
  /** Undefined while they could not be judged yet. */
  readonly foods: GuidePreview['foods'] | undefined;
}

/** What readers have to be told: what the author gets, what to watch for, what was corrected. */
export function GuideDisclosures({ typed, foods }: Given) {
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="disclosures-title">
      <h2 id="disclosures-title">What readers have to be told</h2>
      <p className={text.soft}>
        Readers must see, near the link, when a shop pays you or a maker sent or paid something (16 CFR part 255).{' '}
        {typed.field('disclosures').wrong}
      </p>
      <RowsEditor
        label="What you get"
        rows={typed.rows('disclosures')}
        blank={() => ({ kind: 'affiliate', text: '', shops: '', foods: [] })}
        addLabel="Add a disclosure"
        legendOf={(_, at) => `Disclosure ${at + 1}`}
        nameOf={(_, at) => `disclosure ${at + 1}`}
      >
        {disclosure => <DisclosureFields disclosure={disclosure} foods={foods} />}
      </RowsEditor>
      <Field
        label="Cautions of your own, one a line"
        rows={3}
        hint="The usual cautions stand on the page already."
        {...typed.field('cautions')}
      />
      <RowsEditor
        label="Corrections"
        rows={typed.rows('corrections')}
        blank={() => ({ on: new Date().toLocaleDateString('sv'), text: '' })}
        addLabel="Add a correction"
        legendOf={(_, at) => `Correction ${at + 1}`}
        nameOf={(_, at) => `correction ${at + 1}`}
      >
        {correction => (
          <>
            <Field type="date" label="Day" {...correction.field('on')} />
            <Field label="What was wrong, and is now right" rows={2} {...correction.field('text')} />
          </>
        )}
      </RowsEditor>
    </section>
  );
}

function DisclosureFields({ disclosure, foods }: { readonly disclosure: Typed<TypedDisclosure>; readonly foods: Given['foods'] }) {
  const { kind } = disclosure.values;
  return (
    <>
      <Choice label="Kind" choices={kinds} {...disclosure.field('kind')} />
      <Field label="In your words" rows={2} {...disclosure.field('text')} />
      {kind === 'affiliate' && (
        <Field label="Shops whose links pay you, with commas between them" hint="Left empty: all of them." {...disclosure.field('shops')} />
      )}
      {(kind === 'free-sample' || kind === 'sponsorship') && <FoodsNamed disclosure={disclosure} foods={foods} />}
    </>
  );
}

/** Which foods a disclosure is about. */
function FoodsNamed({ disclosure, foods }: { readonly disclosure: Typed<TypedDisclosure>; readonly foods: Given['foods'] }) {
  const named = disclosure.rows('foods');
  const nameOf = (id: string): string =>
    foods === undefined
      ? 'a food of the survey'
      : (foods.find(({ foodId }) => foodId === id)?.name ?? 'a food that is not in the survey any more');
  const others = (foods ?? [])
    .filter(({ foodId }) => !disclosure.values.foods.includes(foodId))
    .map(({ foodId, name, maker }) => [foodId, maker === undefined ? name : `${name}, ${maker}`] as const);
  return (
    <RowsEditor
      label="Foods that it is about"
      rows={named}
      nameOf={nameOf}
      below={
        <Choice
          label="Add a food that it is about"
          choices={orNone('choose one', others)}
          value=""
          onChange={id => id !== '' && named.add(id)}
        />
      }
    >
      {({ values }) => <span>{nameOf(values)}</span>}
    </RowsEditor>
  );
}
