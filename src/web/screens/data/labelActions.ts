import { useMutation } from '@tanstack/react-query';
import type { Action } from '../../ui/action/action.ts';
import { type Label, labelOf, type TypedLabel } from './typedLabel.ts';

/** What becomes of a label that was typed. */
export interface LabelEnds<Saved> {
  /** Sends it. */
  readonly onSave: (label: Label, reason: string) => Promise<Saved>;
  /** It is kept: the form may go. */
  readonly onSaved: (saved: Saved, label: Label) => Promise<void> | void;
  readonly onCancel?: () => void;
}

/** Saving the form of a label, or leaving it. `forget` drops its draft. */
export function useLabelActions<Saved>(
  start: Label,
  values: TypedLabel,
  forget: () => Promise<void>,
  { onSave, onSaved, onCancel }: LabelEnds<Saved>,
) {
  const send = useMutation({
    mutationFn: async (label: Label) => ({ label, saved: await onSave(label, values.reason) }),
    onSuccess: async ({ saved, label }) => {
      await forget();
      await onSaved(saved, label);
    },
  });
  const save: Action = {
    label: 'Save the label',
    shortcut: 'Control+S',
    isBusy: send.isPending,
    run: () => send.mutate(labelOf(values, start)),
  };
  const leave = async (): Promise<void> => {
    await forget();
    onCancel?.();
  };
  const cancel: Action | undefined = onCancel && { label: 'Cancel', run: () => void leave() };
  return { save, cancel, fault: send.error };
}
