import { Problem } from '../api.ts';
import layout from './layout.module.css';

/** A fault in the person's words, with the next step; announced when it appears. */
export function Told({ error }: { readonly error: unknown }) {
  if (error === null || error === undefined) return null;
  const problem =
    error instanceof Problem
      ? error
      : new Problem('Something went wrong', 'The page made a mistake.', 'Reload the page. What was saved is kept.', 'page');
  return (
    <div className={layout.notice} role="alert">
      <p>
        <b>{problem.title}.</b> {problem.message}
      </p>
      <p>Next: {problem.nextStep}</p>
    </div>
  );
}
