import { useQueryClient } from '@tanstack/react-query';
import { answer, api, type KeptHandout, Problem } from '../../api.ts';
import { browserDraft } from '../../ui/draft/draftPlace.ts';
import { type DocumentInHand, useDocument } from '../../ui/draft/useDocument.ts';
import { isDraftKept } from '../../ui/draft/useDraft.ts';
import { useLeaveGuard } from '../../ui/useLeaveGuard.ts';
import { handoutOf, type TypedHandout, typedHandout } from './typedHandout.ts';

/** A handout on a topic in its form, saved by a button. */
export function useTopicHandout(id: string, start: KeptHandout): DocumentInHand<TypedHandout> {
  const queries = useQueryClient();
  const standing = ({ handout, version }: KeptHandout) => ({ values: typedHandout(handout), version });
  const document = useDocument(browserDraft(`handout ${id}`), () => standing(start), {
    jsonOf: handoutOf,
    read: async () => {
      const theirs = (await answer(api.handouts.$get())).find(({ handout }) => handout.id === id);
      if (theirs === undefined)
        throw new Problem(
          'This handout is not there any more',
          'It was removed while you wrote.',
          'Copy what you need into another one.',
          'handout-gone',
        );
      return standing(theirs);
    },
    write: async ({ values, version }) => {
      const kept = await answer(api.handouts[':id'].$put({ param: { id }, json: { handout: handoutOf(values), version } }));
      await queries.invalidateQueries({ queryKey: ['handouts'] });
      return kept.version;
    },
  });
  useLeaveGuard(!document.isSaved && !isDraftKept(document.draft));
  return document;
}
