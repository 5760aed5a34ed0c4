import { useEffect, useEffectEvent, useRef, useState } from 'react';
import type { Typed } from '../form/typed.ts';
import { claim, type DraftPlace, type KeptDraft } from './draftPlace.ts';
import { isSameShape } from './sameShape.ts';

/** How it stands with the draft of a form: nothing to say, typed before and back again, or why what is typed is not kept. */
export type DraftState =
  | { readonly kind: 'quiet' }
  | { readonly kind: 'restored'; readonly at: string }
  | { readonly kind: 'elsewhere' }
  | { readonly kind: 'refused'; readonly why: unknown }
  | { readonly kind: 'of-an-earlier-form'; readonly at: string; readonly text: string }
  /** Kept, and not filled in by itself: what is saved is another state by now, or something else was typed already. */
  | { readonly kind: 'aside'; readonly at: string; readonly text: string };

export interface FormDraft {
  readonly state: DraftState;
  /** Fills the form as it began and forgets what was kept. */
  readonly startOver: () => void;
  /** Forgets what was kept; called when it has been saved. What cannot be forgotten now is there again when the form is opened. */
  readonly forget: () => Promise<void>;
  /** Fills in what lies aside. */
  readonly fillIn: () => void;
  /** Forgets what lies aside; the form stays as it is. */
  readonly giveUp: () => void;
}

/** Whether what is typed outlives the form: then nothing is lost by leaving it. */
export function isDraftKept({ state: { kind } }: FormDraft): boolean {
  return kind !== 'elsewhere' && kind !== 'refused' && kind !== 'aside';
}

const pauseMilliseconds = 400;
const againMilliseconds = 5_000;

/**
 * Keeps what is typed into a form, and fills it in again when the form is opened after a reload, a crash or a lock. One window at a time
 * keeps a form's draft.
 * @param begunFrom what the form begins with: what was typed on another state is filled in only when that is asked for
 */
export function useDraft<Values extends object>(place: DraftPlace, typed: Typed<Values>, begunFrom = ''): FormDraft {
  const [state, setState] = useState<DraftState>({ kind: 'quiet' });
  const [start, setStart] = useState(typed.values);
  const [isOurs, setOurs] = useState(false);
  const aside = useRef<Values>(undefined);
  /** As it was when the form began: what is read anew meanwhile does not stand in the form. */
  const [begun] = useState(begunFrom);
  const lastKept = useRef(JSON.stringify(typed.values));
  const text = JSON.stringify(typed.values);

  const begin = useEffectEvent((kept: KeptDraft | undefined): void => {
    if (kept === undefined) return;
    if (!isSameShape(start, kept.values)) {
      setState({ kind: 'of-an-earlier-form', at: kept.at, text: JSON.stringify(kept.values, undefined, 2) });
      return;
    }
    const keptText = JSON.stringify(kept.values);
    const startText = JSON.stringify(start);
    if (keptText === startText || keptText === text) return;
    // Typed in the moment before the draft was read, or saved by somebody else since: neither takes the place of the other unseen.
    if (text !== startText || (kept.begunFrom ?? '') !== begun) {
      aside.current = kept.values;
      setState({ kind: 'aside', at: kept.at, text: JSON.stringify(kept.values, undefined, 2) });
      return;
    }
    lastKept.current = keptText;
    typed.set(kept.values);
    setState({ kind: 'restored', at: kept.at });
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: a place is the same while its name is
  useEffect(() => {
    let isGone = false;
    let release: (() => void) | undefined;
    const open = async (): Promise<void> => {
      release = await claim(place);
      if (isGone) return release?.();
      if (release === undefined) return setState({ kind: 'elsewhere' });
      const kept = await place.read();
      if (isGone) return;
      begin(kept);
      setOurs(true);
    };
    open().catch(why => setState({ kind: 'refused', why }));
    return () => {
      isGone = true;
      release?.();
    };
  }, [place.name]);

  const now = (): KeptDraft => ({ at: new Date().toISOString(), values: typed.values, begunFrom: begun });
  const keep = useEffectEvent(async (): Promise<void> => {
    if (!isOurs || state.kind === 'aside' || text === lastKept.current) return;
    lastKept.current = text;
    try {
      // Typed and taken back: nothing is left to bring back.
      if (text === JSON.stringify(start)) await place.remove();
      else await place.write(now());
      if (state.kind === 'refused') setState({ kind: 'quiet' });
    } catch (why) {
      // Tried again with the next key, and after a while without one.
      lastKept.current = '';
      setState({ kind: 'refused', why });
    }
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: kept when what is typed has stood still
  useEffect(() => {
    const timer = setTimeout(() => void keep(), pauseMilliseconds);
    return () => clearTimeout(timer);
  }, [text, isOurs, state.kind]);
  // A program that was stopped may be back without another key.
  useEffect(() => {
    if (state.kind !== 'refused') return;
    const again = setInterval(() => void keep(), againMilliseconds);
    return () => clearInterval(again);
  }, [state.kind]);

  const keepAtOnce = useEffectEvent((): void => {
    if (!isOurs || state.kind === 'aside' || text === lastKept.current) return;
    try {
      place.writeAtOnce?.(now());
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
    // Only who has seen it gives it up.
    if (state.kind === 'aside') return;
    setState(before => (before.kind === 'elsewhere' ? before : { kind: 'quiet' }));
    if (isOurs) await place.remove().catch(() => undefined);
  };
  return {
    state,
    forget,
    fillIn: () => {
      if (state.kind !== 'aside' || aside.current === undefined) return;
      lastKept.current = JSON.stringify(aside.current);
      typed.set(aside.current);
      setState({ kind: 'restored', at: state.at });
    },
    giveUp: () => {
      setState({ kind: 'quiet' });
      void place.remove().catch(() => undefined);
    },
    startOver: () => {
      typed.set(start);
      lastKept.current = JSON.stringify(start);
      setState({ kind: 'quiet' });
      void place.remove().catch(() => undefined);
    },
  };
}
