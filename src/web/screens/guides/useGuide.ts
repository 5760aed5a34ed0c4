import { useQueryClient } from '@tanstack/react-query';
import { useBlocker } from '@tanstack/react-router';
import { useEffect, useEffectEvent, useState } from 'react';
import { answer, api, type Guide } from '../../api.ts';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { type DocumentInHand, useDocument } from '../../ui/draft/useDocument.ts';
import { isDraftKept } from '../../ui/draft/useDraft.ts';
import { guideOf, type TypedGuide, typedGuide } from './typedGuide.ts';

/** How long typing must pause until it is saved, in milliseconds. */
const pauseMs = 600;

export interface GuideInHand extends DocumentInHand<TypedGuide> {
  readonly isPublished: boolean;
  /** Whether readers have another state than the form. */
  readonly isChanged: boolean;
  /** Saves, then publishes; only the day of publication is taken over into the form. @throws Problem */
  readonly publish: () => Promise<void>;
}

/** A guide in its form: what is typed is saved by itself when typing pauses, and when the screen is left. */
export function useGuide(id: string, start: Guide): GuideInHand {
  const queries = useQueryClient();
  const [{ isPublished, isChanged }, setKept] = useState(start);
  const param = { id };
  const standing = (kept: Guide) => ({ values: typedGuide(kept.guide), version: kept.version });
  const document = useDocument(browserDraft(`guide ${id}`), () => standing(start), {
    jsonOf: guideOf,
    read: async () => {
      const theirs = await answer(api.guides[':id'].$get({ param }));
      setKept(theirs);
      return standing(theirs);
    },
    write: async ({ values, version }) => {
      const kept = await answer(api.guides[':id'].$put({ param, json: { guide: guideOf(values), version } }));
      setKept(kept);
      return kept.version;
    },
  });
  const { values, isSaved, draft, save } = document;

  const saveByItself = useEffectEvent((): void => {
    // What went wrong is told, and the next change tries again.
    if (!isSaved) void save().catch(() => undefined);
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: saved when what is typed has stood still
  useEffect(() => {
    const timer = setTimeout(() => saveByItself(), pauseMs);
    return () => clearTimeout(timer);
  }, [values]);

  // What can be neither saved nor kept as a draft is not given up in silence.
  useBlocker({
    shouldBlockFn: async () => {
      if (isSaved) return false;
      try {
        await save();
        return false;
      } catch {
        return !isDraftKept(draft) && !window.confirm('The last changes could not be saved. Leave, and lose them?');
      }
    },
    enableBeforeUnload: () => !isSaved && !isDraftKept(draft),
  });
  useEffect(() => () => void queries.invalidateQueries({ queryKey: ['guides'] }), [queries]);

  const publish = async (): Promise<void> => {
    await document.amend(async version => {
      const kept = await answer(api.guides[':id'].publish.$post({ param, json: { version } }));
      setKept(kept);
      return { version: kept.version, part: { publishedOn: typedGuide(kept.guide).publishedOn } };
    });
    await queries.invalidateQueries({ queryKey: ['guides'] });
  };
  return { ...document, isPublished, isChanged, publish };
}
