import { Problem } from '../../api.ts';
import look from '../Button.module.css';
import layout from '../layout.module.css';
import type { FormDraft } from './useDraft.ts';

/** Says that what was typed before is back, or why what is typed is not kept; nothing while all is well. */
export function Draft({ draft: { state, startOver, forget, fillIn, giveUp } }: { readonly draft: FormDraft }) {
  if (state.kind === 'quiet') return null;
  return (
    <div className={`${layout.notice} ${layout.stack} ${layout.noprint}`} role="status">
      {state.kind === 'restored' && (
        <p className={layout.row}>
          <span>What you typed here on {dayAndTime(state.at)} and did not save is back.</span>
          <button type="button" className={look.quiet} onClick={startOver}>
            Start over
          </button>
        </p>
      )}
      {state.kind === 'elsewhere' && (
        <p>
          This form is open in another window too. What you type here is kept only once it is saved; or close the other window and open this
          form again.
        </p>
      )}
      {state.kind === 'refused' && (
        <p>
          {isAnswerMissing(state.why)
            ? 'What you type is kept as soon as the program answers. Leave this page open until then.'
            : 'What you type cannot be kept before it is saved: the storage is full or forbidden, or refused it. Save before you leave this page.'}
        </p>
      )}
      {state.kind === 'aside' && (
        <>
          <p>
            What you typed here on {dayAndTime(state.at)} is not filled in: what is saved was changed since then, or you have begun to type
            anew. Compare, then choose; what you type before that is not kept until it is saved.
          </p>
          <details>
            <summary>What was typed</summary>
            <pre className={layout.scroll}>{state.text}</pre>
          </details>
          <p className={layout.row}>
            <button type="button" className={look.quiet} onClick={fillIn}>
              Fill it in
            </button>
            <button type="button" className={look.quiet} onClick={giveUp}>
              Forget it
            </button>
          </p>
        </>
      )}
      {state.kind === 'of-an-earlier-form' && (
        <>
          <p>
            What you typed here on {dayAndTime(state.at)} does not fit this form any more: the program was renewed, or what the form begins
            with is another. Copy what you need.
          </p>
          <details>
            <summary>What was typed</summary>
            <pre className={layout.scroll}>{state.text}</pre>
          </details>
          <button type="button" className={look.quiet} onClick={() => void forget()}>
            Forget it
          </button>
        </>
      )}
    </div>
  );
}

/** The program is stopped or hangs: nothing can be saved either, and it is tried again. */
function isAnswerMissing(why: unknown): boolean {
  return why instanceof Problem && why.code === 'no-answer';
}

/** "30 Nov, 14:02", by the reader's clock */
export function dayAndTime(at: string): string {
  return new Date(at).toLocaleString('en', { day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
}
