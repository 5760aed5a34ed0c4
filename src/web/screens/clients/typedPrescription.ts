import type { Client } from '../../api.ts';
import { type Decision, signedBefore, startingDecision } from './typedDecision.ts';

/** What is decided of each target, and who signs. */
export interface TypedPrescription {
  readonly decisions: Readonly<Record<string, Decision>>;
  readonly by: string;
  readonly credentials: string;
  /** A field named after the proposal: what was decided of another one does not fit into this form. */
  readonly proposal: Readonly<Record<string, true>>;
}

/** What a proposal says, and what was signed before it. */
type Proposed = Pick<Client, 'assessmentId' | 'weight' | 'targets' | 'prescriptions'>;

export function typedPrescription(client: Proposed): TypedPrescription {
  return {
    decisions: Object.fromEntries(
      (client.targets ?? []).map(target => [target.item, startingDecision(target, signedBefore(client, target.item))]),
    ),
    by: '',
    credentials: '',
    proposal: { [proposalOf(client)]: true },
  };
}

/** Another one when results that came in propose otherwise, or another prescription stands: decisions of an earlier proposal are not signed for a later one. */
export function proposalOf({ assessmentId, weight, targets, prescriptions }: Proposed): string {
  return [
    assessmentId,
    prescriptions[0]?.id,
    weight?.chosen,
    ...(targets ?? []).flatMap(({ item, kind, figure }) => [item, kind, figure]),
  ].join('; ');
}
