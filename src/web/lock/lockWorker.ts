import { type Heard, hearServer } from './hearServer.ts';
import { lockChannel } from './lockChannel.ts';

// One stream for all windows of a browser, since a browser opens only six connections to one program. It lives as long as any window does:
// when the last one is closed the stream ends, and the program locks.
const channel = new BroadcastChannel(lockChannel);
let last: Heard | undefined;
hearServer(heard => {
  last = heard;
  channel.postMessage(heard);
});
// A window that comes later is told how things are.
addEventListener('connect', () => {
  if (last !== undefined) channel.postMessage(last);
});
