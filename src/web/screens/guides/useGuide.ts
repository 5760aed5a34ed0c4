import { useQueryClient } from '@tanstack/react-query';
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
  /** Takes over what the server made of the guide (its day of publication, its version). */
  readonly take: (guide: Guide) => void;
}

/** A guide in its form: what is typed is saved by itself when typing pauses, one request after the other, and when the screen is left. */
export function useGuide(id: string, start: Guide): GuideInHand {
  const queries = useQueryClient();
  const [typed, setTyped] = useState(() => typedGuide(start.guide));
  const [state, setState] = useState<SaveState>('saved');
  const [error, setError] = useState<unknown>();
  const [isPublished, setPublished] = useState(start.isPublished);
  const version = useRef(start.version);
  const waiting = useRef<TypedGuide>(undefined);
  const underWay = useRef(Promise.resolve());

  const saved = useCallback(async (): Promise<number> => {
    const save = async (): Promise<void> => {
      const now = waiting.current;
      if (now === undefined) return;
      waiting.current = undefined;
      setState('saving');
      try {
        const json = { guide: guideOf(now) as Record<string, unknown>, version: version.current };
        const kept = await answer<Guide>(api.guides[':id'].$put({ param: { id }, json }));
        version.current = kept.version;
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
    const next = underWay.current.then(save, save);
    underWay.current = next.catch(() => undefined);
    await next;
    return version.current;
  }, [id]);

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

  useEffect(() => {
    const warn = (event: BeforeUnloadEvent): void => {
      if (waiting.current !== undefined) event.preventDefault();
    };
    window.addEventListener('beforeunload', warn);
    return () => {
      window.removeEventListener('beforeunload', warn);
      void saved()
        .catch(() => undefined)
        .then(() => queries.invalidateQueries({ queryKey: ['guides'] }));
    };
  }, [saved, queries]);

  const take = (kept: Guide): void => {
    version.current = kept.version;
    setPublished(kept.isPublished);
    setTyped(typedGuide(kept.guide));
  };
  return { typed, change, state, error, isPublished, saved, take };
}
