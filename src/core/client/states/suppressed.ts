import { type ClientFacts, takes } from '#core/client/assessment/clientFacts.ts';

/** Why the immune system is held down; undefined where it is not. Food safety goes by it, here and on foods. */
export function suppressed(facts: ClientFacts): string | undefined {
  if (facts.setting === 'transplant') return 'transplant';
  return takes(facts, 'tacrolimus', 'ciclosporin', 'sirolimus-or-everolimus', 'other-immunosuppressant', 'high-dose-steroid')
    ? 'immunosuppressed'
    : undefined;
}
