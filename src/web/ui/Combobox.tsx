import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { ChoiceList, optionId } from './ChoiceList.tsx';
import styles from './Combobox.module.css';
import { type FieldWords, LabelledField } from './LabelledField.tsx';
import { type Choice, narrowChoices } from './narrowChoices.ts';

/** A longer list is cut here; what is typed narrows it. */
const mostShown = 100;
const unknown = 'Nothing is chosen: choose one of the list, or empty the field.';

/**
 * One of a list, found by typing. A list that is given whole is narrowed here. Where it is asked for as one types,
 * `onType` hears what is typed and `choices` are those that match, undefined while they are awaited; `matchCount` says
 * how many match where fewer are handed over. Typed words that are no choice stay, and are told: then nothing is chosen.
 */
export function Combobox({
  chosen,
  onChoose,
  choices,
  onType,
  matchCount = 0,
  ...words
}: FieldWords & {
  readonly chosen: Choice | undefined;
  readonly onChoose: (choice: Choice | undefined) => void;
  readonly choices: readonly Choice[] | undefined;
  readonly onType?: (typed: string) => void;
  readonly matchCount?: number;
}) {
  const input = useRef<HTMLInputElement>(null);
  const listId = useId();
  const [typed, setTyped] = useState<string>();
  const [isOpen, setOpen] = useState(false);
  const [activeKey, setActiveKey] = useState<string>();
  const matching = onType === undefined && choices !== undefined ? narrowChoices(choices, typed ?? '') : choices;
  const shown = matching?.slice(0, mostShown) ?? [];
  const active = shown.findIndex(({ key }) => key === activeKey);
  const meant = shown[active];
  const count = found(matching && Math.max(matching.length, matchCount), shown.length);
  const isUnknown = chosen === undefined && (typed ?? '').trim() !== '';
  // A form that is sent by the browser's own rules waits for a choice too.
  useEffect(() => input.current?.setCustomValidity(isUnknown ? unknown : ''), [isUnknown]);

  function open(): void {
    if (isOpen) return;
    setOpen(true);
    setActiveKey(chosen?.key);
  }
  function type(text: string): void {
    setOpen(true);
    setActiveKey(undefined);
    setTyped(text);
    onType?.(text);
    if (chosen !== undefined) onChoose(undefined);
  }
  function choose(choice: Choice): void {
    setOpen(false);
    setTyped(undefined);
    onType?.('');
    if (choice.key !== chosen?.key) onChoose(choice);
  }
  function leave(): void {
    setOpen(false);
    const wanted = typed?.trim().toLowerCase();
    const same = matching?.filter(choice => choice.words.toLowerCase() === wanted) ?? [];
    if (same.length === 1) choose(same[0]!);
    else if (wanted === '') setTyped(undefined);
  }
  function press(event: KeyboardEvent): void {
    const { key } = event;
    const step = { ArrowDown: 1, ArrowUp: -1, PageDown: 10, PageUp: -10 }[key];
    if (!isOpen && (key === 'ArrowDown' || key === 'ArrowUp')) open();
    else if (!isOpen) return;
    else if (step !== undefined) setActiveKey(shown[stepped(active, step, shown.length)]?.key);
    else if (key === 'Escape') setOpen(false);
    else if (key === 'Enter') {
      const only = shown.length === 1 ? shown[0] : undefined;
      const choice = meant ?? only;
      if (choice !== undefined) choose(choice);
    } else {
      if (key === 'Tab' && meant !== undefined) choose(meant);
      return;
    }
    event.preventDefault();
  }

  return (
    <LabelledField {...words} wrong={isUnknown && !isOpen ? unknown : words.wrong}>
      {marks => (
        <div className={styles.box}>
          <input
            {...marks}
            ref={input}
            type="text"
            role="combobox"
            className={styles.input}
            autoComplete="off"
            spellCheck={false}
            aria-autocomplete="list"
            aria-expanded={isOpen}
            aria-controls={listId}
            aria-activedescendant={isOpen && meant !== undefined ? optionId(listId, active) : undefined}
            value={typed ?? chosen?.words ?? ''}
            onChange={event => type(event.target.value)}
            onClick={open}
            onBlur={leave}
            onKeyDown={press}
          />
          <span className={styles.heard} role="status">
            {isOpen ? count : ''}
          </span>
          <ChoiceList
            id={listId}
            label={words.label}
            isOpen={isOpen}
            count={count}
            choices={shown}
            active={active}
            chosenKey={chosen?.key}
            onChoose={choose}
          />
        </div>
      )}
    </LabelledField>
  );
}

/** One key further goes around the list, a page stops at its ends. */
function stepped(at: number, step: number, length: number): number {
  if (at < 0) return step > 0 ? 0 : length - 1;
  if (Math.abs(step) === 1) return (at + step + length) % length;
  return Math.min(Math.max(at + step, 0), length - 1);
}

function found(matches: number | undefined, shown: number): string {
  if (matches === undefined) return 'Looking…';
  if (matches === 0) return 'Nothing found.';
  if (matches === shown) return `${matches} found.`;
  return `${matches} found, the first ${shown} are shown. Type more to narrow them.`;
}
