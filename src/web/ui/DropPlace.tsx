import type { ReactNode } from 'react';

/** A part of the page on which files can be dropped; there is always another way to choose them in it. */
export function DropPlace(given: {
  readonly labelledBy: string;
  readonly className: string;
  readonly onFiles: (files: readonly File[]) => void;
  readonly children: ReactNode;
}) {
  const { labelledBy, className, onFiles, children } = given;
  return (
    <section
      className={className}
      aria-labelledby={labelledBy}
      onDragOver={event => event.preventDefault()}
      onDrop={event => {
        event.preventDefault();
        const files = [...event.dataTransfer.files];
        if (files.length > 0) onFiles(files);
      }}
    >
      {children}
    </section>
  );
}
