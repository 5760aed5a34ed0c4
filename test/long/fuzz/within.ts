/** Longer than this is a hang. */
export const longestMs = 5_000;
/** After this long nobody waits any more. */
const patienceMs = 30_000;

/** @throws Error when nothing came of the work */
export async function within<Result>(work: Promise<Result> | Result): Promise<Result> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_, failed) => {
    timer = setTimeout(() => failed(new Error('no end within half a minute')), patienceMs);
  });
  try {
    return await Promise.race([work, late]);
  } finally {
    clearTimeout(timer);
  }
}
