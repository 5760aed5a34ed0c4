import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { type RefObject, useState } from 'react';
import type { HandoutTyped } from '#core/handout/handoutFromJson.ts';
import { answer, api, type Client, type KeptHandout, Problem, problemOf } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import type { DocumentInHand } from '../../ui/draft/useDocument.ts';
import type { Dress, Print } from '../../ui/preview/PaperPages.tsx';
import { saveFile } from '../../ui/saveFile.ts';
import { handoutOf, isSameHandout, type TypedHandout, titleOf, typedHandout } from './typedHandout.ts';

/** What can be done with the handouts on a topic that are kept. */
export function useTopicHandoutActions() {
  const queries = useQueryClient();
  const navigate = useNavigate();
  const [removed, setRemoved] = useState<KeptHandout>();
  const refresh = () => queries.invalidateQueries({ queryKey: ['handouts'] });
  const put = (id: string, handout: HandoutTyped) => answer(api.handouts[':id'].$put({ param: { id }, json: { handout, version: null } }));
  const start = useMutation({
    mutationFn: async () => {
      const id = `handout-${crypto.randomUUID().slice(0, 8)}`;
      const handout = {
        setting: 'ckd-not-on-dialysis',
        writtenOn: new Date().toLocaleDateString('sv'),
        author: { name: '' },
        topic: { yardstickId: 'low-in-sodium-as-eaten' },
      };
      await put(id, handout);
      await refresh();
      return id;
    },
    onSuccess: handoutId => navigate({ to: '/handouts/$handoutId', params: { handoutId } }),
  });
  const takeAway = useMutation({
    mutationFn: ({ handout, version }: KeptHandout) =>
      answer(api.handouts[':id'].$delete({ param: { id: String(handout.id) }, query: { version: String(version) } })),
    onSuccess: (_, kept) => {
      setRemoved(kept);
      return refresh();
    },
  });
  const putBack = useMutation({
    mutationFn: ({ handout }: KeptHandout) => put(String(handout.id), handout),
    onSuccess: () => {
      setRemoved(undefined);
      return refresh();
    },
  });
  const begin: Action = { label: 'Begin a handout', isBusy: start.isPending, run: () => start.mutate() };
  const undo: Action | undefined = removed && {
    label: 'Undo',
    about: `Undo the removal of ${titleOf(removed.handout)}`,
    isBusy: putBack.isPending,
    run: () => putBack.mutate(removed),
  };
  return {
    begin,
    remove: (kept: KeptHandout): Action => ({
      label: 'Remove',
      about: `Remove the handout ${titleOf(kept.handout)}`,
      isBusy: takeAway.isPending,
      run: () => takeAway.mutate(kept),
    }),
    undo,
    removed,
    fault: start.error ?? takeAway.error ?? putBack.error,
  };
}

/** Saves the handout on a topic that is open. What goes wrong is told by the document. */
export function useSaveTopicHandout({ isSaved, isSaving, save }: DocumentInHand<TypedHandout>): Action {
  return {
    label: 'Save',
    shortcut: 'Control+S',
    isPossible: !isSaved,
    isBusy: isSaving,
    run: () => void save().catch(() => undefined),
  };
}

/**
 * Keeps the handout of a client with the record, unless another one stands there by now than `seen`: the rest of the record may have been changed since, which changes its version.
 */
export function useClientHandoutActions(
  { id }: Client,
  seen: TypedHandout,
  values: TypedHandout,
  onKept: (kept: TypedHandout) => Promise<void>,
) {
  const param = { id };
  const send = useMutation({
    mutationFn: async (saving: TypedHandout) => {
      const { handout, version } = await answer(api.clients[':id'].handout.$get({ param }));
      if (handout !== null && !isSameHandout(typedHandout(handout), seen))
        throw new Problem(
          'Somebody else changed this',
          'The handout was kept in another window meanwhile.',
          'Your entry is still in the form. Load the page again: the other one stands in the form then, and yours is offered beside it.',
          'changed-meanwhile',
        );
      return answer(api.clients[':id'].handout.$put({ param, json: { handout: handoutOf(saving), version } }));
    },
    onSuccess: (_, saving) => onKept(saving),
  });
  const keep: Action = {
    label: 'Keep this for the next time',
    isBusy: send.isPending,
    run: () => send.mutate(values),
  };
  return { keep, isKept: send.isSuccess, fault: send.error };
}

const papers: readonly (readonly [name: string, end: string, dress: Dress])[] = [
  ['PDF, Letter', 'letter.pdf', { paper: 'letter', largePrint: false }],
  ['PDF, A4', 'a4.pdf', { paper: 'a4', largePrint: false }],
  ['PDF in large print, Letter', 'large-print.letter.pdf', { paper: 'letter', largePrint: true }],
  ['PDF in large print, A4', 'large-print.a4.pdf', { paper: 'a4', largePrint: true }],
];

/** Saves a handout as files. `src` is where its page can be looked at, undefined while it cannot be made. */
export function useHandoutFileActions(src: string | undefined, print: Print, name: string) {
  const keepFile = useMutation({
    mutationFn: async ({ end, dress }: { readonly end: string; readonly dress?: Dress }) => {
      if (dress === undefined) {
        const page = await fetch(src!);
        if (!page.ok) throw new Problem('This preview is an old one', 'The page was built anew.', 'Wait a moment, then save again.', 'old');
        return { end, file: new Blob([await page.text()], { type: 'text/html' }) };
      }
      const response = await print(dress);
      if (!response.ok) throw await problemOf(response);
      return { end, file: new Blob([await response.arrayBuffer()], { type: 'application/pdf' }) };
    },
    onSuccess: ({ end, file }) => saveFile(file, `${name}.${end}`),
  });
  const saves = (label: string, end: string, dress?: Dress): Action => ({
    label,
    isPossible: src !== undefined,
    isBusy: keepFile.isPending,
    run: () => keepFile.mutate({ end, ...(dress === undefined ? {} : { dress }) }),
  });
  return {
    files: [...papers.map(([label, end, dress]) => saves(label, end, dress)), saves('Page (HTML)', 'html')],
    file: keepFile.status,
    fault: keepFile.error,
  };
}

/** Opens the handout of a client where it stands on the page, and goes there. */
export function openHandout(open: () => void, place: RefObject<HTMLElement | null>): Action {
  return {
    label: 'Make the handout',
    run: () => {
      open();
      place.current?.querySelector('summary')?.focus();
    },
  };
}
