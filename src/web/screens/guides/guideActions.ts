import { useMutation } from '@tanstack/react-query';
import { api, problemOf } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import type { Typed } from '../../ui/form/typed.ts';
import { saveFile } from '../../ui/saveFile.ts';
import { smallPicture } from './smallPicture.ts';
import type { TypedFood } from './typedGuide.ts';
import type { GuideInHand } from './useGuide.ts';

const files = [
  ['html', 'Page (HTML)'],
  ['large-print.html', 'Page in large print'],
  ['letter.pdf', 'PDF, Letter'],
  ['a4.pdf', 'PDF, A4'],
  ['large-print.letter.pdf', 'PDF in large print, Letter'],
  ['large-print.a4.pdf', 'PDF in large print, A4'],
  ['csv', 'Table (CSV)'],
  ['pocket-card.svg', 'Pocket card'],
  ['slide-chart.svg', 'Slide chart'],
] as const;
type End = (typeof files)[number][0] | 'fragment.html';

/** What becomes of a guide: published, saved as files, or copied. Each saves first what is typed. `isReady` once its page can be made. */
export function useOutputActions(id: string, { save, publish, isPublished }: GuideInHand, isReady: boolean) {
  const fetched = async (end: End): Promise<Blob> => {
    await save();
    const response = await api.guides[':id'].files[':end'].$get({ param: { id, end } });
    if (!response.ok) throw await problemOf(response);
    return response.blob();
  };
  const keepFile = useMutation({ mutationFn: fetched, onSuccess: (file, end) => saveFile(file, `${id}.${end}`) });
  const putOnClipboard = useMutation({
    mutationFn: async () => navigator.clipboard.writeText(await (await fetched('fragment.html')).text()),
  });
  const makePublic = useMutation({ mutationFn: publish });
  const publishIt: Action = {
    label: isPublished ? 'Publish again' : 'Publish',
    isPossible: isReady,
    isBusy: makePublic.isPending,
    run: () => makePublic.mutate(),
  };
  const copy: Action = {
    label: 'Copy for a site builder',
    isPossible: isReady,
    isBusy: putOnClipboard.isPending,
    run: () => putOnClipboard.mutate(),
  };
  return {
    publish: publishIt,
    copy,
    files: files.map(
      ([end, label]): Action => ({ label, isPossible: isReady, isBusy: keepFile.isPending, run: () => keepFile.mutate(end) }),
    ),
    published: makePublic.isSuccess,
    file: keepFile.status,
    copied: putOnClipboard.isSuccess,
    fault: makePublic.error ?? keepFile.error ?? putOnClipboard.error,
  };
}

/** The picture of one food: chosen and made small, or removed. */
export function useFoodPhotoActions(photo: Typed<TypedFood['photos']>, name: string) {
  const shrink = useMutation({
    mutationFn: smallPicture,
    onSuccess: dataUrl => photo.set({ dataUrl, alt: photo.values.dataUrl === '' ? `The package of ${name}` : photo.values.alt }),
  });
  const remove: Action = {
    label: 'Remove the picture',
    about: `Remove the picture of ${name}`,
    run: () => photo.set({ dataUrl: '', alt: '' }),
  };
  return { choose: (file: File) => shrink.mutate(file), remove, fault: shrink.error };
}
