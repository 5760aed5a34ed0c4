import type { ClientDoor, LockStatus } from './clientDoor.ts';

/** A window that hears nothing for longer takes the program for gone. */
const beatMilliseconds = 5_000;

/** Server-sent events, one stream a browser: how the lock is now, each change at once, and a beat in between. */
export function lockEvents(door: ClientDoor): Response {
  const letters = new TextEncoder();
  let gone = (): void => undefined;
  const body = new ReadableStream<Uint8Array>({
    start(stream) {
      const tell = (status: LockStatus): void => stream.enqueue(letters.encode(`data: ${JSON.stringify(status)}\n\n`));
      const leave = door.enter(tell);
      const beat = setInterval(() => tell(door.status()), beatMilliseconds).unref();
      gone = () => {
        clearInterval(beat);
        leave();
      };
    },
    cancel: () => gone(),
  });
  return new Response(body, { headers: { 'content-type': 'text/event-stream', 'cache-control': 'no-store' } });
}
