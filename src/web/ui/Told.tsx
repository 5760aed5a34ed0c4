import { Problem } from '../api.ts';

/** A fault in the person's words, with the next step; announced when it appears. */
export function Told({ error }: { readonly error: unknown }) {
  if (error === null || error === undefined) return null;
  const problem =
    error instanceof Problem
      ? error
      : new Problem('Something went wrong', 'The page made a mistake.', 'Reload the page. What was saved is kept.', 'page');
  return (
    <div className="notice" role="alert">
      <p>
        <b>{problem.title}.</b> {problem.message}
      </p>
      <p>Next: {problem.nextStep}</p>
    </div>
  );
}

/** What an additive letter means: "P" phosphate, "K" potassium, "?" not certain. */
export function AdditiveTags({ letters }: { readonly letters: string }) {
  if (letters === '') return null;
  return (
    <span className="row">
      {letters.split(' ').map(letter => (
        <span className="tag" key={letter}>
          <b>{letter}</b> {letter.startsWith('P') ? 'phosphate' : 'potassium'}
          {letter.endsWith('?') ? ', not certain' : ''}
        </span>
      ))}
    </span>
  );
}
