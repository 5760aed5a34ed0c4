/** A `ref` for a form that opens elsewhere on the page than the button that opened it: its first field takes the focus and comes into view. */
export function focusFirstField(form: HTMLFormElement | null): void {
  form?.querySelector<HTMLElement>('input, select, textarea')?.focus();
}
