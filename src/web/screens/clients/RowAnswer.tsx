import layout from '../../ui/layout.module.css';
/** A question about a row, with the tick that answers it. Another value or unit is asked about anew. */
export function RowAnswer({
  question,
  is,
  name,
  onAnswer,
}: {
  readonly question: string | undefined;
  readonly is: boolean;
  readonly name: string;
  readonly onAnswer: (yes: boolean) => void;
}) {
  if (question === undefined && !is) return null;
  return (
    <div className={layout.notice}>
      {question === undefined ? null : (
        <p>
          <b>A question.</b> {question}
        </p>
      )}
      <label className={layout.row}>
        <input type="checkbox" checked={is} onChange={event => onAnswer(event.target.checked)} />
        <span>Yes, {name} is right</span>
      </label>
    </div>
  );
}
