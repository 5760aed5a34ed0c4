import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { typedOf } from '../form/typed.ts';
import type { DraftPlace } from './draftPlace.ts';
import { type FormDraft, useDraft } from './useDraft.ts';

/** What stands in the form or with the program, and the version of the program's that it was made from. */
export interface Standing<Values> {
  readonly values: Values;
  readonly version: number;
}

export interface DocumentCalls<Values> {
  readonly read: () => Promise<Standing<Values>>;
  /** Gives the version that then stands. @throws Problem `changed-meanwhile` when another version stands than the one that was seen */
  readonly write: (standing: Standing<Values>) => Promise<number>;
  /** What of the form is sent. Forms that send the same are the same. */
  readonly jsonOf: (values: Values) => unknown;
}

export interface DocumentInHand<Values> {
  readonly values: Values;
  readonly change: (next: (before: Values) => Values) => void;
  readonly draft: FormDraft;
  readonly isSaved: boolean;
  readonly isSaving: boolean;
  /** What went wrong with the last save. */
  readonly error: unknown;
  /** Saves what is not saved yet, one request after the other. @throws Problem */
  readonly save: () => Promise<void>;
  /** Saves, then lets the program change what is saved, as publishing does, with no save in between; `part` is taken over into the form. @throws Problem */
  readonly amend: (work: (version: number) => Promise<{ readonly version: number; readonly part: Partial<Values> }>) => Promise<void>;
  /** After somebody else has changed it: writes over that, or takes the newer state and gives up what was typed. */
  readonly settle: (how: 'keep mine' | 'take theirs') => Promise<void>;
}

interface Hand<Values> {
  readonly form: Standing<Values>;
  readonly saved: Standing<Values>;
  /** How often it was saved. */
  readonly saves: number;
}

/**
 * A document in its form, which stays open while it is saved. The draft keeps the version it was typed on: what comes back is never written
 * over a newer state that nobody has seen.
 */
export function useDocument<Values extends object>(
  place: DraftPlace,
  begin: () => Standing<Values>,
  { read, write, jsonOf }: DocumentCalls<Values>,
): DocumentInHand<Values> {
  const [hand, setHand] = useState<Hand<Values>>(() => {
    const start = begin();
    return { form: start, saved: start, saves: 0 };
  });
  const [isSaving, setSaving] = useState(false);
  const [error, setError] = useState<unknown>();
  /** The same, read by requests that end after the next drawing. */
  const now = useRef(hand);
  const underWay = useRef(Promise.resolve());
  const put = (next: (before: Hand<Values>) => Hand<Values>): void => {
    now.current = next(now.current);
    setHand(now.current);
  };
  const isSame = (one: Values, other: Values): boolean => one === other || JSON.stringify(jsonOf(one)) === JSON.stringify(jsonOf(other));
  const fillIn = (next: (before: Standing<Values>) => Standing<Values>): void =>
    put(before => {
      const form = next(before.form);
      return { ...before, form: isSame(form.values, before.saved.values) ? before.saved : form };
    });
  const draft = useDraft(place, typedOf(hand.form, fillIn));
  const isSaved = isSame(hand.form.values, hand.saved.values);

  const forgetWhatIsSaved = useEffectEvent((): void => {
    if (isSaved) void draft.forget();
  });
  useEffect(() => {
    if (hand.saves > 0) forgetWhatIsSaved();
  }, [hand.saves]);

  /** One request after the other: whatever comes meanwhile waits for its turn. */
  const inTurn = async (work: () => Promise<void>): Promise<void> => {
    const next = underWay.current.then(work);
    underWay.current = next.catch(() => undefined);
    await next;
  };
  const save = (): Promise<void> =>
    inTurn(async () => {
      const { form, saved } = now.current;
      if (isSame(form.values, saved.values)) return;
      setSaving(true);
      try {
        const version = await write(form);
        put(({ form: { values }, saves }) => ({ form: { values, version }, saved: { values: form.values, version }, saves: saves + 1 }));
        setError(undefined);
      } catch (problem) {
        setError(problem);
        throw problem;
      } finally {
        setSaving(false);
      }
    });
  const amend: DocumentInHand<Values>['amend'] = async work => {
    await save();
    await inTurn(async () => {
      const { version, part } = await work(now.current.form.version);
      const amended = ({ values }: Standing<Values>): Standing<Values> => ({ values: { ...values, ...part }, version });
      put(({ form, saved, saves }) => ({ form: amended(form), saved: amended(saved), saves: saves + 1 }));
    });
  };
  const settle: DocumentInHand<Values>['settle'] = async how => {
    try {
      const theirs = await read();
      setError(undefined);
      const mine = ({ values }: Standing<Values>): Standing<Values> => ({ values, version: theirs.version });
      put(({ form, saves }) => ({ form: how === 'keep mine' ? mine(form) : theirs, saved: theirs, saves: saves + 1 }));
      await save();
    } catch (problem) {
      setError(problem);
    }
  };
  const change = (next: (before: Values) => Values): void =>
    put(before => ({ ...before, form: { ...before.form, values: next(before.form.values) } }));
  return { values: hand.form.values, change, draft, isSaved, isSaving, error, save, amend, settle };
}
