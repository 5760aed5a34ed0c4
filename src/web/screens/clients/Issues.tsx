import type { Proposal } from '../../api.ts';

/** What is asked or refused about an assessment while it is typed. */
export function Issues({ issues }: { readonly issues: readonly Proposal['issues'][number][] }) {
  return issues.map(({ kind, told }) => (
    <p key={told}>
      <b>{kind === 'question' ? 'A question.' : 'No target.'}</b> {told}
    </p>
  ));
}
