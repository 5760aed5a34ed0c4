/** How the files of pictures end, by their kind: for whoever looks into an archive by hand. Nothing is decided by it. */
const endings: Readonly<Record<string, string>> = { 'image/jpeg': '.jpg', 'image/png': '.png', 'image/webp': '.webp' };

export function pictureEnding(mime: unknown): string {
  return (typeof mime === 'string' ? endings[mime] : undefined) ?? '.bin';
}
