import button from './Button.module.css';
import text from './text.module.css';
/** A button that lets files be chosen, the same one again too: it may have been mended meanwhile. */
export function FileChoice(given: {
  readonly label: string;
  readonly accept: string;
  readonly isMain?: boolean;
  readonly multiple?: boolean;
  readonly onChoose: (first: File, all: readonly File[]) => void;
}) {
  const { label, accept, isMain = false, multiple = false, onChoose } = given;
  return (
    <label className={isMain ? button.act : button.quiet}>
      {label}
      <input
        type="file"
        className={text.unseen}
        accept={accept}
        multiple={multiple}
        onChange={event => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          if (files[0] !== undefined) onChoose(files[0], files);
        }}
      />
    </label>
  );
}
