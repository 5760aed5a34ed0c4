import { useMutation } from '@tanstack/react-query';
import { useState } from 'react';
import { differencesOf, type LabClient } from '#core/client/labs/labPerson.ts';
import type { DayOrder } from '#core/quantity/writtenDay.ts';
import { answer, api } from '../../api.ts';
import type { Action } from '../../ui/action/action.ts';
import { type TypedLab, typedLab } from './typedResults.ts';

/**
 * Results read from a file. They go into the form at once, unless something is to be asked first: whose they are, where the file names somebody else, and which day is meant, where
 * days are written in figures and nothing in the file shows their order.
 */
export function useLabFile(client: LabClient, onLabs: (labs: readonly TypedLab[]) => void) {
  const [file, setFile] = useState<{ readonly text: string; readonly order?: DayOrder }>();
  const [isTaken, setTaken] = useState(false);
  const reading = useMutation({
    mutationFn: ({ text, order }: { readonly text: string; readonly order?: DayOrder }) =>
      answer(api.clients.labs.$post({ json: { text, ...(order === undefined ? {} : { dayOrder: order }) } })),
    onSuccess: read => {
      const isClear = differencesOf(read.person, client).length === 0 && file?.order === undefined && read.guessedOrder === undefined;
      if (isClear) take(read.labs.map(typedLab));
    },
  });
  const take = (labs: readonly TypedLab[]): void => {
    setTaken(true);
    onLabs(labs);
  };
  const begin = (next: { readonly text: string; readonly order?: DayOrder }): void => {
    setTaken(false);
    setFile(next);
    reading.mutate(next);
  };
  const { labs = [], issues = [], person = {}, guessedOrder } = reading.data ?? {};
  const isAsked = reading.isSuccess && !isTaken;
  const takeOver: Action = { label: 'Take these results over', isPossible: labs.length > 0, run: () => take(labs.map(typedLab)) };
  const leave: Action = {
    label: 'Leave them',
    run: () => {
      setFile(undefined);
      reading.reset();
    },
  };
  return {
    read: async (chosen: File): Promise<void> => begin({ text: await chosen.text() }),
    told: reading.isSuccess ? [labs.length === 1 ? '1 result was read.' : `${labs.length} results were read.`, ...issues] : [],
    /** Asked before anything is taken over; undefined where nothing is. */
    question: isAsked
      ? {
          person,
          differences: differencesOf(person, client),
          days: guessedOrder,
          readAgain: (order: DayOrder): void => void (file !== undefined && begin({ ...file, order })),
          takeOver,
          leave,
        }
      : undefined,
    fault: reading.error,
  };
}
