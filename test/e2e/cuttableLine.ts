import { connect, createServer, type Socket } from 'node:net';

/** A line to the program that can be cut and mended, as when a computer sleeps or the program hangs. */
export interface CuttableLine {
  readonly address: string;
  readonly cut: () => void;
  readonly mend: () => void;
  readonly close: () => void;
}

export async function cuttableLine(to: string): Promise<CuttableLine> {
  const { port } = new URL(to);
  const sockets = new Set<Socket>();
  let isCut = false;
  const server = createServer(near => {
    if (isCut) return void near.destroy();
    const far = connect(Number(port), '127.0.0.1');
    for (const [one, other] of [
      [near, far],
      [far, near],
    ] as const) {
      sockets.add(one);
      one.pipe(other);
      one.on('error', () => other.destroy());
      one.on('close', () => {
        sockets.delete(one);
        other.destroy();
      });
    }
  });
  await new Promise<void>(done => server.listen(0, '127.0.0.1', done));
  const own = server.address();
  if (own === null || typeof own === 'string') throw new Error('no port');
  const cut = (): void => {
    isCut = true;
    for (const socket of sockets) socket.destroy();
  };
  return {
    address: `http://127.0.0.1:${own.port}`,
    cut,
    mend: () => {
      isCut = false;
    },
    close: () => {
      cut();
      server.close();
    },
  };
}
