/** Hands a file to the browser to save. */
export function saveFile(file: Blob, name: string): void {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(file);
  link.download = name;
  link.click();
  // Some browsers read the file only after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}
