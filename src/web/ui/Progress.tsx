import { useQuery } from '@tanstack/react-query';
import { answer, api } from '../api.ts';
import button from './Button.module.css';
import layout from './layout.module.css';

/** How far long work is, asked for while it runs, with the button that stops it. */
export function Progress({
  workId,
  begins,
  onCancel,
}: {
  readonly workId: string;
  readonly begins: string;
  readonly onCancel: () => void;
}) {
  const far = useQuery({
    queryKey: ['progress', workId],
    queryFn: () => answer(api.progress[':id'].$get({ param: { id: workId } })),
    refetchInterval: 300,
    gcTime: 0,
  });
  const { what, done, of } = far.data ?? { what: begins, done: undefined, of: 1 };
  return (
    <div className={layout.row} role="status">
      <label className={layout.row}>
        <span>
          {what}
          {done === undefined ? ' …' : `: ${done.toLocaleString('en')}${of === 0 ? '' : ` of ${of.toLocaleString('en')}`}`}
        </span>
        <progress max={of === 0 ? 1 : of} {...(done === undefined || of === 0 ? {} : { value: done })} />
      </label>
      <button type="button" className={button.quiet} onClick={onCancel}>
        Cancel
      </button>
    </div>
  );
}
