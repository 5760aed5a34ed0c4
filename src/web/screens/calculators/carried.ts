import { useEffect, useState } from 'react';
import type { Carried } from '#core/client/formulas/catalog/assessmentFields.ts';

/** A result on its way into a client's assessment, with what is said about it there. */
export interface CarriedResult extends Carried {
  readonly clientId: string;
  /** "weight loss in 3 months 10.0%". */
  readonly words: string;
  /** The formula that it comes from. */
  readonly from: string;
}

/** In this window's memory alone: an address, the browser's history and its storage outlive the lock of client data. */
let onItsWay: CarriedResult | undefined;

export function carry(result: CarriedResult): void {
  onItsWay = result;
}

/** The result that was sent to this client, and the form of an assessment that it opens: it goes when the form is kept, cancelled or left. */
export function useCarried(clientId: string): {
  readonly carried: CarriedResult | undefined;
  readonly isAssessing: boolean;
  readonly setAssessing: (isAssessing: boolean) => void;
} {
  const [carried, setCarried] = useState(() => (onItsWay?.clientId === clientId ? onItsWay : undefined));
  const [isAssessing, setOpen] = useState(carried !== undefined);
  useEffect(() => {
    onItsWay = undefined;
  }, []);
  const setAssessing = (isOpen: boolean): void => {
    setOpen(isOpen);
    if (!isOpen) setCarried(undefined);
  };
  return { carried: carried?.clientId === clientId ? carried : undefined, isAssessing, setAssessing };
}
