import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { ActionForm } from '../../ui/action/ActionForm.tsx';
import type { Action } from '../../ui/action/action.ts';
import { Draft } from '../../ui/draft/Draft.tsx';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { type DraftState, useDraft } from '../../ui/draft/useDraft.ts';
import { Choice } from '../../ui/form/Choice.tsx';
import { orNone, plainChoices } from '../../ui/form/choices.ts';
import { Field } from '../../ui/form/Field.tsx';
import { OneOf } from '../../ui/form/OneOf.tsx';
import { Tick, Ticks } from '../../ui/form/Ticks.tsx';
import { useTyped } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';
import { RowsEditor } from '../../ui/RowsEditor.tsx';

const colors = ['amber', 'blue', 'green'] as const;
type Color = (typeof colors)[number];
interface Shelf {
  readonly name: string;
  readonly about: string;
  readonly width: string;
  readonly color: Color | '';
  readonly wood: string;
  readonly side: 'left' | 'right';
  readonly isHung: boolean;
  readonly paints: readonly Color[];
  readonly boards: readonly { readonly name: string; readonly height: string }[];
}
const start: Shelf = {
  name: '',
  about: '',
  width: '90',
  color: '',
  wood: 'elm',
  side: 'left',
  isHung: true,
  paints: ['blue'],
  boards: [{ name: 'top', height: '180' }],
};
const wrongAt = (place: string): string | undefined =>
  ({ width: '90 is wider than the wall.', 'boards[0].height': 'A board stands at 20 to 160.' })[place];

/** A form with a field of every kind, a list, and its draft; then what a draft may have to say. */
export function FormPieces() {
  const typed = useTyped(start, wrongAt);
  const draft = useDraft(browserDraft('pieces'), typed);
  const save: Action = { label: 'Save the shelf', shortcut: 'Control+S', run: () => void draft.forget() };
  const nothing = { startOver: () => undefined, fillIn: () => undefined, giveUp: () => undefined };
  const states: readonly DraftState[] = [
    { kind: 'restored', at: '2026-03-05T14:02:00Z' },
    { kind: 'elsewhere' },
    { kind: 'refused', why: undefined },
    { kind: 'aside', at: '2026-11-30T14:02:00.000Z', text: '{ "name": "Cellar" }' },
    { kind: 'of-an-earlier-form', at: '2026-03-05T14:02:00Z', text: '{ "name": "a shelf" }' },
  ];
  return (
    <>
      <ActionForm action={save} className={`${layout.sheet} ${layout.stack}`} label="A shelf">
        <h2>Fields</h2>
        <Draft draft={draft} />
        <div className={layout.formgrid}>
          <Field label="Name of the shelf" hint="As you call it." isRequired {...typed.field('name')} />
          <Field label="Width, cm" type="number" {...typed.field('width')} />
          <Choice label="Color" choices={orNone('none', plainChoices(colors))} {...typed.field('color')} />
          <Choice label="Wood" choices={plainChoices(['oak', 'pine'])} gone="elm, no longer sold" {...typed.field('wood')} />
          <Field label="Not now" isDisabled value="cannot be changed" onChange={() => undefined} />
        </div>
        <OneOf label="Side" choices={plainChoices(['left', 'right'])} {...typed.field('side')} />
        <Tick label="It hangs" {...typed.field('isHung')} />
        <Ticks label="Paints" choices={plainChoices(colors)} {...typed.field('paints')} />
        <Field label="About it" rows={3} {...typed.field('about')} />
        <RowsEditor
          label="Boards"
          rows={typed.rows('boards')}
          blank={() => ({ name: '', height: '' })}
          addLabel="Add a board"
          nameOf={({ name }, at) => `the board ${name || at + 1}`}
          empty="No board yet."
        >
          {row => (
            <>
              <Field label="Board" {...row.field('name')} />
              <Field label="Height, cm" type="number" {...row.field('height')} />
            </>
          )}
        </RowsEditor>
        <p className={layout.row}>
          <ActionButton action={save} isMain submits />
        </p>
      </ActionForm>
      <section className={`${layout.sheet} ${layout.stack}`} aria-labelledby="draft-pieces">
        <h2 id="draft-pieces">What a draft says</h2>
        {states.map(state => (
          <Draft key={state.kind} draft={{ state, ...nothing, forget: async () => undefined }} />
        ))}
      </section>
    </>
  );
}
