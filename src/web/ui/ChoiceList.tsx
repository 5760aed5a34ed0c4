import { useLayoutEffect, useRef } from 'react';
import styles from './ChoiceList.module.css';
import type { Choice } from './narrowChoices.ts';

/** The list under a field: the field keeps the focus and says which of the choices is meant. */
export function ChoiceList({
  id,
  label,
  isOpen,
  count,
  choices,
  active,
  chosenKey,
  onChoose,
}: {
  readonly id: string;
  readonly label: string;
  readonly isOpen: boolean;
  readonly count: string;
  readonly choices: readonly Choice[];
  /** Its place among the choices; -1 while none is meant. */
  readonly active: number;
  readonly chosenKey: string | undefined;
  readonly onChoose: (choice: Choice) => void;
}) {
  const list = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (isOpen) list.current?.showPopover();
    else list.current?.hidePopover();
  }, [isOpen]);
  useLayoutEffect(() => {
    if (isOpen && active >= 0) document.getElementById(optionId(id, active))?.scrollIntoView({ block: 'nearest' });
  }, [id, isOpen, active]);
  return (
    <div ref={list} popover="manual" className={styles.list} onMouseDown={event => event.preventDefault()}>
      <div className={styles.count} aria-hidden="true">
        {count}
      </div>
      <div id={id} role="listbox" aria-label={label} className={styles.choices}>
        {isOpen &&
          choices.map((choice, place) => (
            <div
              key={choice.key}
              id={optionId(id, place)}
              role="option"
              aria-selected={choice.key === chosenKey}
              data-active={place === active || undefined}
              className={styles.option}
              onClick={() => onChoose(choice)}
            >
              {choice.words}
              {choice.note !== undefined && <span className={styles.note}> {choice.note}</span>}
            </div>
          ))}
      </div>
    </div>
  );
}

export function optionId(listId: string, place: number): string {
  return `${listId}-${place}`;
}
