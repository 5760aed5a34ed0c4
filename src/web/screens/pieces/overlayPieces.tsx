import { useState } from 'react';
import { ActionButton } from '../../ui/action/ActionButton.tsx';
import { Combobox } from '../../ui/Combobox.tsx';
import { Dialog } from '../../ui/Dialog.tsx';
import { Field } from '../../ui/form/Field.tsx';
import layout from '../../ui/layout.module.css';
import { Menu } from '../../ui/Menu.tsx';
import type { Choice } from '../../ui/narrowChoices.ts';
import { OpenLine } from '../../ui/OpenLine.tsx';
import { useSettled } from '../../ui/useSettled.ts';
import styles from './overlayPieces.module.css';

const colors = ['Amber', 'Blue', 'Coral', 'Green', 'Ivory', 'Olive', 'Red', 'Violet'];
const things = [
  'basket',
  'bench',
  'bowl',
  'chair',
  'clock',
  'cup',
  'drawer',
  'kettle',
  'lamp',
  'shelf',
  'spoon',
  'stool',
  'table',
  'tray',
  'vase',
  'window',
];
const long: readonly Choice[] = colors.flatMap(color =>
  things.map(thing => ({ key: `${color} ${thing}`, words: `${color} ${thing}`, ...(thing === 'lamp' ? { note: 'without a bulb' } : {}) })),
);
const short = long.slice(0, 3);

/** What opens over a screen, and the fields that open something, in every state. */
export function OverlayPieces() {
  return (
    <section className={styles.pieces} aria-labelledby="overlays">
      <h2 id="overlays">Dialog, menu, combobox, day, line</h2>
      <Dialogs />
      <Menus />
      <Comboboxes />
      <Days />
      <Lines />
    </section>
  );
}

function Dialogs() {
  const [open, setOpen] = useState<'question' | 'form' | 'long'>();
  const [name, setName] = useState('');
  const close = (): void => setOpen(undefined);
  const cancel = <ActionButton action={{ label: 'Cancel', run: close }} />;
  return (
    <div className={styles.row}>
      <ActionButton action={{ label: 'Ask', run: () => setOpen('question') }} />
      <ActionButton action={{ label: 'Ask for a name', run: () => setOpen('form') }} />
      <ActionButton action={{ label: 'Ask at length', run: () => setOpen('long') }} />
      {open === 'question' && (
        <Dialog
          title="Remove the tray?"
          onClose={close}
          buttons={
            <>
              <ActionButton isMain action={{ label: 'Remove the tray', run: close }} />
              {cancel}
            </>
          }
        >
          <p>What lies on it stays.</p>
        </Dialog>
      )}
      {open === 'form' && (
        <Dialog
          title="Name the shelf"
          onClose={close}
          action={{ label: 'Keep the name', isPossible: name !== '', run: close }}
          buttons={
            <>
              <ActionButton isMain submits action={{ label: 'Keep the name', isPossible: name !== '', run: close }} />
              {cancel}
            </>
          }
        >
          <Field label="Name" value={name} onChange={setName} />
          <Example label="Stands beside" choices={long} />
        </Dialog>
      )}
      {open === 'long' && (
        <Dialog title="Everything that is on the shelves" onClose={close} buttons={cancel}>
          {long.map(({ key, words }) => (
            <p key={key}>{words}</p>
          ))}
        </Dialog>
      )}
    </div>
  );
}

function Menus() {
  const [done, setDone] = useState('');
  const [ticked, setTicked] = useState<readonly string[]>(['Blue']);
  const actions = ['Copy', 'Rename', 'Print', 'Put away', 'Remove'].map(words => ({
    key: words,
    words,
    isDisabled: words === 'Put away',
    onChoose: () => setDone(words),
  }));
  const ticks = colors.map(color => ({
    key: color,
    words: color,
    isTicked: ticked.includes(color),
    isDisabled: color === 'Ivory',
    onTick: (isTicked: boolean) => setTicked(isTicked ? [...ticked, color] : ticked.filter(one => one !== color)),
  }));
  return (
    <>
      <div className={styles.row}>
        <Menu label="Actions" actions={actions} />
        <Menu label="Colors" legend="Also show" ticks={ticks} />
        <Menu label="Nothing to do" isDisabled actions={[]} />
        <span className={styles.end}>
          <Menu
            label="At the edge"
            actions={[{ key: 'long', words: 'Put everything that is on the shelves into the basket', onChoose: () => setDone('long') }]}
          />
        </span>
      </div>
      <p role="status">
        Chosen: {done || 'nothing'}. Shown: {ticked.join(', ') || 'none'}.
      </p>
    </>
  );
}

function Comboboxes() {
  return (
    <div className={layout.formgrid}>
      <Example label="Of a long list" choices={long} hint="Color and thing." />
      <Example label="One is chosen" choices={long} first={long[120]} />
      <Example label="Of a short list" choices={short} isRequired />
      <Example label="Of an empty list" choices={[]} />
      <AskedFor />
      <Example label="Something is wrong" choices={short} first={short[0]} wrong="There is none left: choose another one." />
      <Example label="Not now" choices={short} first={short[1]} isDisabled />
    </div>
  );
}

type Given = Omit<Parameters<typeof Combobox>[0], 'chosen' | 'onChoose'>;

function Example({ first, ...given }: Given & { readonly first?: Choice | undefined }) {
  const [chosen, setChosen] = useState<Choice | undefined>(first);
  return <Combobox {...given} chosen={chosen} onChoose={setChosen} />;
}

/** Answers after a while, as a server does, with a few of those that match. */
function AskedFor() {
  const [typed, setTyped] = useState('');
  const settled = useSettled(typed, 300);
  const matching = long.filter(({ words }) => words.toLowerCase().includes(settled.toLowerCase()));
  return (
    <Example
      label="Asked for as one types"
      choices={settled === typed ? matching.slice(0, 5) : undefined}
      matchCount={matching.length}
      onType={setTyped}
    />
  );
}

function Days() {
  const [day, setDay] = useState('');
  const [other, setOther] = useState('2026-03-05');
  return (
    <div className={layout.formgrid}>
      <Field type="date" label="Empty day" value={day} onChange={setDay} hint="May stay empty." />
      <Field type="date" label="Needed day" value={other} onChange={setOther} isRequired />
      <Field type="date" label="Wrong day" value={other} onChange={setOther} wrong="It lies in the future: give the day on which it was." />
      <Field type="date" label="No day now" value={other} onChange={setOther} isDisabled />
      <p role="status">Days: {JSON.stringify([day, other])}</p>
    </div>
  );
}

function Lines() {
  const [open, setOpen] = useState('Second box');
  return (
    <ul className={layout.plain}>
      {['First box', 'Second box'].map(name => (
        <li key={name}>
          <OpenLine line={<b>{name}</b>} isOpen={open === name} onChange={isOpen => setOpen(isOpen ? name : '')}>
            <p className={layout.inset}>What is in it.</p>
          </OpenLine>
        </li>
      ))}
    </ul>
  );
}
