import type { WrongAt } from '../form/typed.ts';

/** What is still to be mended before a page can be made, and where it was typed. */
export interface Issue {
  readonly place: { readonly heading?: string | undefined };
  readonly found: string;
  readonly expected: string;
}

/** What a form says beside its fields, of what came with its preview. */
export function neededAt(issues: readonly Issue[]): WrongAt {
  return at => {
    const issue = issues.find(({ place }) => place.heading === at);
    return issue === undefined ? undefined : `Needed: ${issue.expected}.`;
  };
}
