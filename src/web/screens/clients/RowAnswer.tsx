import { Tick } from '../../ui/form/Ticks.tsx';
import type { Bound } from '../../ui/form/typed.ts';
import layout from '../../ui/layout.module.css';

/** A question about a row, with the tick that answers it. Another value or unit is asked about anew. */
export function RowAnswer({
  question,
  name,
  ...isRight
}: Bound<boolean> & { readonly question: string | undefined; readonly name: string }) {
  if (question === undefined && !isRight.value) return null;
  return (
    <div className={layout.notice}>
      {question !== undefined && (
        <p>
          <b>A question.</b> {question}
        </p>
      )}
      <Tick label={`Yes, ${name} is right`} {...isRight} />
    </div>
  );
}
