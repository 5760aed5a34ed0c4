import { useQueryClient } from '@tanstack/react-query';
import { useBlocker } from '@tanstack/react-router';
import { useCallback, useEffect, useRef, useState } from 'react';
import { answer, api, type Guide } from '../../api.ts';
import { guideOf, type TypedGuide, typedGuide } from './typedGuide.ts';

/** How long typing must pause until it is saved, in milliseconds. */
const pauseMs = 600;

export type SaveState = 'saved' | 'saving' | 'not saved yet';

export interface GuideInHand {
  readonly typed: TypedGuide;
  readonly change: (change: Partial<TypedGuide>) => void;
  readonly state: SaveState;
  readonly error: unknown;
  readonly isPublished: boolean;
  /** Saves at once what is not saved yet, and gives the version that then stands. */
  readonly saved: () => Promise<number>;
  /** Saves, then publishes, with no save in between; only the day of publication is taken over into the form. */
  readonly publish: () => Promise<void>;
  /** Whether readers have another state than the form. */
  readonly isChanged: boolean;
  /** After somebody else has changed the guide: writes over it, or takes the newer state and gives up what was typed. */
  readonly settle: (how: 'keep mine' | 'take theirs') => Promise<void>;
}

/** A guide in its form: what is typed is saved by itself when typing pauses, one request after the other, and when the screen is left. */
export function useGuide(id: string, start: Guide): GuideInHand {
  const queries = useQueryClient();
  const [typed, setTyped] = useState(() => typedGuide(start.guide));
  const [state, setState] = useState<SaveState>('saved');
  const [error, setError] = useState<unknown>();
  const [isPublished, setPublished] = useState(start.isPublished);
  const [isChanged, setChanged] = useState(start.isChanged);
  const version = useRef(start.version);
  const waiting = useRef<TypedGuide>(undefined);
  const underWay = useRef(Promise.resolve());

  /** One request after the other: whatever comes meanwhile waits for its turn. */
  const inTurn = useCallback(async (work: () => Promise<void>): Promise<void> => {
    const next = underWay.current.then(work);
    underWay.current = next.catch(() => undefined);
    await next;
  }, []);

  const saved = useCallback(async (): Promise<number> => {
    const save = async (): Promise<void> => {
      const now = waiting.current;
      if (now === undefined) return;
      waiting.current = undefined;
      setState('saving');
      try {
        const json = { guide: guideOf(now), version: version.current };
        const kept = await answer(api.guides[':id'].$put({ param: { id }, json }));
        version.current = kept.version;
        setChanged(kept.isChanged);
        setError(undefined);
        setState(waiting.current === undefined ? 'saved' : 'not saved yet');
      } catch (problem) {
        // What was typed stays in the form, and the next change tries again.
        waiting.current ??= now;
        setError(problem);
        setState('not saved yet');
        throw problem;
      }
    };
    await inTurn(save);
    return version.current;
  }, [id, inTurn]);

  const change = useCallback((part: Partial<TypedGuide>) => {
    setTyped(before => {
      const now = { ...before, ...part };
      waiting.current = now;
      return now;
    });
    setState('not saved yet');
  }, []);

  useEffect(() => {
    if (waiting.current !== typed) return;
    const timer = setTimeout(() => void saved().catch(() => undefined), pauseMs);
    return () => clearTimeout(timer);
  }, [typed, saved]);

  // What could not be saved is not given up in silence: the person is asked before the screen or the page is left.
  useBlocker({
    shouldBlockFn: async () => {
      if (waiting.current === undefined) return false;
      try {
        await saved();
        return false;
      } catch {
        return !window.confirm('The last changes could not be saved. Leave, and lose them?');
      }
    },
    enableBeforeUnload: () => waiting.current !== undefined,
  });
  useEffect(() => () => void queries.invalidateQueries({ queryKey: ['guides'] }), [queries]);

  const publish = async (): Promise<void> => {
    await saved();
    await inTurn(async () => {
      const kept = await answer(api.guides[':id'].publish.$post({ param: { id }, json: { version: version.current } }));
      version.current = kept.version;
      setPublished(kept.isPublished);
      setChanged(false);
      const { publishedOn } = typedGuide(kept.guide);
      if (waiting.current !== undefined) waiting.current = { ...waiting.current, publishedOn };
      setTyped(now => {
        const dated = { ...now, publishedOn };
        if (waiting.current !== undefined) waiting.current = dated;
        return dated;
      });
    });
    await queries.invalidateQueries({ queryKey: ['guides'] });
  };
  const settle = async (how: 'keep mine' | 'take theirs'): Promise<void> => {
    const theirs = await answer(api.guides[':id'].$get({ param: { id } }));
    version.current = theirs.version;
    setPublished(theirs.isPublished);
    setError(undefined);
    if (how === 'keep mine') {
      await saved().catch(() => undefined);
      return;
    }
    waiting.current = undefined;
    setChanged(theirs.isChanged);
    setTyped(typedGuide(theirs.guide));
    setState('saved');
  };
  return { typed, change, state, error, isPublished, isChanged, saved, publish, settle };
}
