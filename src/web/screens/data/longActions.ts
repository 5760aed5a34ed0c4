import { useMutation } from '@tanstack/react-query';
import { useRef, useState } from 'react';

/** What long work is begun with: the name by which its progress is asked for, and the signal that ends it. */
export interface Work {
  readonly workId: string;
  readonly init: { readonly signal: AbortSignal };
}

/** Long work that tells how far it is (`Progress`) and can be stopped. */
export function useLongWork<Given, Result>(told: {
  readonly work: (given: Given, work: Work) => Promise<Result>;
  readonly onDone?: (result: Result) => unknown;
  /** However it ends. */
  readonly onEnd?: () => unknown;
}) {
  const [workId] = useState(() => crypto.randomUUID());
  const stop = useRef<AbortController>(undefined);
  const { mutate, isPending, data, error, reset } = useMutation({
    mutationFn: (given: Given) => {
      stop.current = new AbortController();
      return told.work(given, { workId, init: { signal: stop.current.signal } });
    },
    onSuccess: told.onDone,
    onSettled: told.onEnd,
  });
  return { begin: mutate, isRunning: isPending, result: data, fault: error, reset, workId, cancel: () => stop.current?.abort() };
}
