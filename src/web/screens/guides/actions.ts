import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useRef, useState } from 'react';
import type { GuideTyped } from '#core/guide/guideFromJson.ts';
import { answer, api, type Guide, type GuideShort, problemOf } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { guideIdOf } from './typedNewGuide.ts';

/** What can be done with the guides that are kept. `open` shows the form of a new one. */
export function useGuideListActions(open: () => void) {
  const queries = useQueryClient();
  const [removed, setRemoved] = useState<Guide>();
  const refresh = () => queries.invalidateQueries({ queryKey: ['guides'] });
  const takeAway = useMutation({
    mutationFn: async ({ id, version }: GuideShort) => {
      const kept = await answer(api.guides[':id'].$get({ param: { id } }));
      await answer(api.guides[':id'].$delete({ param: { id }, query: { version: String(version) } }));
      return kept;
    },
    onSuccess: kept => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ guide, published }: Guide) =>
      answer(
        api.guides[':id'].$put({
          param: { id: String(guide.id) },
          json: { guide, version: null, ...(published === undefined ? {} : { published }) },
        }),
      ),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  const begin: Action = { label: 'Begin a guide', shortcut: 'Alt+N', run: open };
  const undo: Action | undefined = removed && {
    label: 'Undo',
    about: `Undo the removal of ${String(removed.guide.title)}`,
    isBusy: putBack.isPending,
    run: () => putBack.mutate(removed),
  };
  return {
    begin,
    remove: (one: GuideShort): Action => ({
      label: 'Remove',
      about: `Remove the guide ${one.title}`,
      isBusy: takeAway.isPending,
      run: () => takeAway.mutate(one),
    }),
    undo,
    removed,
    fault: takeAway.error ?? putBack.error,
  };
}

/** Begins a guide, or does not. `made` gives the guide, and undefined while something that it needs is missing. */
export function useNewGuideActions(made: GuideTyped | undefined, forget: () => Promise<void>, onDone: () => void) {
  const navigate = useNavigate();
  const send = useMutation({
    mutationFn: async (guide: GuideTyped) => {
      const id = guideIdOf(String(guide.title));
      await answer(api.guides[':id'].$put({ param: { id }, json: { guide, version: null } }));
      return id;
    },
    onSuccess: async guideId => {
      await forget();
      await navigate({ to: '/guides/$guideId', params: { guideId } });
    },
  });
  const begin: Action = {
    label: 'Begin',
    about: 'Begin the guide',
    isPossible: made !== undefined,
    isBusy: send.isPending,
    run: () => made !== undefined && send.mutate(made),
  };
  const cancel: Action = {
    label: 'Cancel',
    run: () => {
      void forget();
      onDone();
    },
  };
  return { begin, cancel, fault: send.error };
}

/** Saves the site of all published guides, or stops in the middle of it. */
export function useSiteActions({ siteUrl, pdf }: { readonly siteUrl: string; readonly pdf: boolean }) {
  const stop = useRef<AbortController>(undefined);
  const [workId, setWorkId] = useState('');
  const build = useMutation({
    mutationFn: async (id: string) => {
      stop.current = new AbortController();
      const response = await api['guide-site'].$post(
        { json: { pdf, workId: id, ...(siteUrl.trim() === '' ? {} : { siteUrl: siteUrl.trim() }) } },
        { init: { signal: stop.current.signal } },
      );
      if (!response.ok) throw await problemOf(response);
      return response.blob();
    },
    onSuccess: blob => saveFile(blob, 'guides.zip'),
  });
  const save: Action = {
    label: 'Save the site',
    isBusy: build.isPending,
    run: () => {
      const id = crypto.randomUUID();
      setWorkId(id);
      build.mutate(id);
    },
  };
  const wasStopped = build.error instanceof DOMException && build.error.name === 'AbortError';
  return {
    save,
    cancel: () => stop.current?.abort(),
    workId,
    isBuilding: build.isPending,
    wasStopped,
    fault: wasStopped ? undefined : build.error,
  };
}
