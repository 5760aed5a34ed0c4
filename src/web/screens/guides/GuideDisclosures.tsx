import type { GuidePreview } from '../../api.ts';
import button from '../../ui/Button.module.css';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import text from '../../ui/text.module.css';
import type { GuidePart } from './GuideWords.tsx';
import type { TypedDisclosure } from './typedGuide.ts';

const kinds: Readonly<Record<string, string>> = {
  affiliate: 'paid links',
  'free-sample': 'free samples',
  sponsorship: 'sponsorship',
  none: 'nothing to disclose',
};

/** What readers have to be told: what the author gets, what to watch for, what was corrected. */
export function GuideDisclosures({ typed, change, wrong, foods }: GuidePart & { readonly foods: GuidePreview['foods'] }) {
  const { disclosures, corrections } = typed;
  const put = (index: number, part: Partial<TypedDisclosure>): void =>
    change({ disclosures: disclosures.map((one, at) => (at === index ? { ...one, ...part } : one)) });
  const correct = (index: number, part: Partial<(typeof corrections)[number]>): void =>
    change({ corrections: corrections.map((one, at) => (at === index ? { ...one, ...part } : one)) });
  return (
    <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="disclosures-title">
      <h2 id="disclosures-title">What readers have to be told</h2>
      <h3>What you get</h3>
      <p className={text.soft}>
        Readers must see, near the link, when a shop pays you or a maker sent or paid something (16 CFR part 255). {wrong('disclosures')}
      </p>
      {disclosures.map((disclosure, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: disclosures have no identity, and rows are only added at the end
        <fieldset className={layout.stack} key={index}>
          <legend>Disclosure {index + 1}</legend>
          <label className={layout.field}>
            <span>Kind</span>
            <select value={disclosure.kind} onChange={event => put(index, { kind: event.target.value })}>
              {Object.entries(kinds).map(([kind, name]) => (
                <option key={kind} value={kind}>
                  {name}
                </option>
              ))}
            </select>
          </label>
          <Field
            label="In your words"
            rows={2}
            value={disclosure.text}
            onChange={text => put(index, { text })}
            wrong={wrong(`disclosures[${index}].text`)}
          />
          {disclosure.kind === 'affiliate' && (
            <Field
              label="Shops whose links pay you, with commas between them"
              value={disclosure.shops}
              onChange={shops => put(index, { shops })}
              hint="Left empty: all of them."
            />
          )}
          {(disclosure.kind === 'free-sample' || disclosure.kind === 'sponsorship') && (
            <FoodsNamed foods={foods} named={disclosure.foods} onChange={named => put(index, { foods: named })} />
          )}
          <p className={layout.row}>
            <button
              type="button"
              className={button.quiet}
              onClick={() => change({ disclosures: disclosures.filter((_, at) => at !== index) })}
            >
              Remove this disclosure
            </button>
          </p>
        </fieldset>
      ))}
      <p className={layout.row}>
        <button
          type="button"
          className={button.quiet}
          onClick={() => change({ disclosures: [...disclosures, { kind: 'affiliate', text: '', shops: '', foods: [] }] })}
        >
          Add a disclosure
        </button>
      </p>
      <Field
        label="Cautions of your own, one a line"
        rows={3}
        value={typed.cautions}
        onChange={cautions => change({ cautions })}
        hint="The usual cautions stand on the page already."
      />
      <h3>Corrections</h3>
      {corrections.map((correction, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: corrections have no identity, and rows are only added at the end
        <fieldset className={layout.stack} key={index}>
          <legend>Correction {index + 1}</legend>
          <Field
            label="Day"
            type="date"
            value={correction.on}
            onChange={on => correct(index, { on })}
            wrong={wrong(`corrections[${index}].on`)}
          />
          <Field
            label="What was wrong, and is now right"
            rows={2}
            value={correction.text}
            onChange={text => correct(index, { text })}
            wrong={wrong(`corrections[${index}].text`)}
          />
          <button
            type="button"
            className={button.quiet}
            onClick={() => change({ corrections: corrections.filter((_, at) => at !== index) })}
          >
            Remove this correction
          </button>
        </fieldset>
      ))}
      <p className={layout.row}>
        <button
          type="button"
          className={button.quiet}
          onClick={() => change({ corrections: [...corrections, { on: new Date().toLocaleDateString('sv'), text: '' }] })}
        >
          Add a correction
        </button>
      </p>
    </section>
  );
}

/** Which foods a disclosure is about. */
function FoodsNamed(given: {
  readonly foods: GuidePreview['foods'];
  readonly named: readonly string[];
  readonly onChange: (named: readonly string[]) => void;
}) {
  const { foods, named, onChange } = given;
  return (
    <>
      <ul>
        {named.map(id => (
          <li key={id}>
            {foods.find(({ foodId }) => foodId === id)?.name ?? 'a food that is not in the survey any more'}{' '}
            <button type="button" className={button.quiet} onClick={() => onChange(named.filter(one => one !== id))}>
              Remove
            </button>
          </li>
        ))}
      </ul>
      <label className={layout.field}>
        <span>Add a food that it is about</span>
        <select value="" onChange={event => onChange([...named, event.target.value])}>
          <option value="">choose one</option>
          {foods
            .filter(({ foodId }) => !named.includes(foodId))
            .map(({ foodId, name, maker }) => (
              <option key={foodId} value={foodId}>
                {maker === undefined ? name : `${name}, ${maker}`}
              </option>
            ))}
        </select>
      </label>
    </>
  );
}
