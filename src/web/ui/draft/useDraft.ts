import { useEffect, useEffectEvent, useRef, useState } from 'react';
import type { Typed } from '../form/typed.ts';
import { claim, type DraftPlace } from './draftPlace.ts';
import { isSameShape } from './sameShape.ts';

/** How it stands with the draft of a form: nothing to say, typed before and back again, or why what is typed is not kept. */
export type DraftState =
  | { readonly kind: 'quiet' }
  | { readonly kind: 'restored'; readonly at: string }
  | { readonly kind: 'elsewhere' }
  | { readonly kind: 'refused' }
  | { readonly kind: 'of-an-earlier-form'; readonly at: string; readonly text: string };

export interface FormDraft {
  readonly state: DraftState;
  /** Fills the form as it began and forgets what was kept. */
  readonly startOver: () => void;
  /** Forgets what was kept; called when it has been saved. What cannot be forgotten now is there again when the form is opened. */
  readonly forget: () => Promise<void>;
}

/** Whether what is typed outlives the form: then nothing is lost by leaving it. */
export function isDraftKept({ state: { kind } }: FormDraft): boolean {
  return kind !== 'elsewhere' && kind !== 'refused';
}

const pauseMilliseconds = 400;

/**
 * Keeps what is typed into a form, and fills it in again when the form is opened after a reload, a crash or a lock. One window at a time
 * keeps a form's draft.
 */
export function useDraft<Values extends object>(place: DraftPlace, typed: Typed<Values>): FormDraft {
  const [state, setState] = useState<DraftState>({ kind: 'quiet' });
  const [start, setStart] = useState(typed.values);
  const [isOurs, setOurs] = useState(false);
  const lastKept = useRef(JSON.stringify(typed.values));
  const text = JSON.stringify(typed.values);

  const fillIn = useEffectEvent((kept: Awaited<ReturnType<DraftPlace['read']>>): void => {
    // Typed in the moment before the draft was read: what stands is newer.
    if (kept === undefined || JSON.stringify(typed.values) !== JSON.stringify(start)) return;
    if (!isSameShape(start, kept.values)) {
      setState({ kind: 'of-an-earlier-form', at: kept.at, text: JSON.stringify(kept.values, undefined, 2) });
      return;
    }
    lastKept.current = JSON.stringify(kept.values);
    if (lastKept.current === JSON.stringify(start)) return;
    typed.set(Object.assign({}, kept.values));
    setState({ kind: 'restored', at: kept.at });
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: a place is the same while its name is
  useEffect(() => {
    let isGone = false;
    let release: (() => void) | undefined;
    const begin = async (): Promise<void> => {
      release = await claim(place);
      if (isGone) return release?.();
      if (release === undefined) return setState({ kind: 'elsewhere' });
      const kept = await place.read();
      if (isGone) return;
      fillIn(kept);
      setOurs(true);
    };
    begin().catch(() => setState({ kind: 'refused' }));
    return () => {
      isGone = true;
      release?.();
    };
  }, [place.name]);

  const keep = useEffectEvent(async (): Promise<void> => {
    if (!isOurs || text === lastKept.current) return;
    lastKept.current = text;
    try {
      // Typed and taken back: nothing is left to bring back.
      if (text === JSON.stringify(start)) await place.remove();
      else await place.write({ at: new Date().toISOString(), values: typed.values });
      if (state.kind === 'refused') setState({ kind: 'quiet' });
    } catch {
      // Tried again with the next key.
      lastKept.current = '';
      setState({ kind: 'refused' });
    }
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: kept when what is typed has stood still
  useEffect(() => {
    const timer = setTimeout(() => void keep(), pauseMilliseconds);
    return () => clearTimeout(timer);
  }, [text, isOurs]);

  const keepAtOnce = useEffectEvent((): void => {
    if (!isOurs || text === lastKept.current) return;
    try {
      place.writeAtOnce?.({ at: new Date().toISOString(), values: typed.values });
    } catch {
      // It was told while it was typed.
    }
  });
  useEffect(() => {
    const leave = (): void => keepAtOnce();
    addEventListener('pagehide', leave);
    return () => {
      removeEventListener('pagehide', leave);
      leave();
    };
  }, []);

  const forget = async (): Promise<void> => {
    lastKept.current = text;
    setStart(typed.values);
    setState(before => (before.kind === 'elsewhere' ? before : { kind: 'quiet' }));
    if (isOurs) await place.remove().catch(() => undefined);
  };
  return {
    state,
    forget,
    startOver: () => {
      typed.set(start);
      lastKept.current = JSON.stringify(start);
      setState({ kind: 'quiet' });
      void place.remove().catch(() => undefined);
    },
  };
}
