import { createServer, connect as dial, type Server, type Socket } from 'node:net';

/** Where a connection is cut: before the server hears "commit", or after it has answered and before the answer arrives. */
export type Cut = 'before-commit' | 'after-commit';

/** Stands between a store and its server, and cuts the connection at a commit. */
export class CuttingProxy {
  /** Cuts at the next commit, once. */
  next: Cut | undefined;
  /** Lets nobody in any more after the cut. */
  staysClosed = false;
  private isClosed = false;
  private readonly server: Server;
  private readonly sockets = new Set<Socket>();

  private constructor(target: number) {
    this.server = createServer(client => {
      if (this.isClosed) return void client.destroy();
      const server = dial(target, '127.0.0.1');
      let cut: Cut | undefined;
      for (const [from, to] of [
        [client, server],
        [server, client],
      ] as const) {
        this.sockets.add(from);
        from.on('error', () => to.destroy());
        from.on('close', () => to.destroy());
      }
      const end = (): void => {
        this.isClosed = this.staysClosed;
        client.destroy();
        server.destroy();
      };
      client.on('data', bytes => {
        if (this.next !== undefined && bytes.includes('commit')) {
          cut = this.next;
          this.next = undefined;
        }
        if (cut === 'before-commit') end();
        else server.write(bytes);
      });
      server.on('data', bytes => {
        if (cut === 'after-commit' && bytes.includes('COMMIT')) end();
        else client.write(bytes);
      });
    });
  }

  static async start(target: number): Promise<CuttingProxy> {
    const proxy = new CuttingProxy(target);
    await new Promise<void>(listening => proxy.server.listen(0, '127.0.0.1', listening));
    return proxy;
  }

  get port(): number {
    const address = this.server.address();
    return typeof address === 'object' && address !== null ? address.port : 0;
  }

  end(): void {
    for (const socket of this.sockets) socket.destroy();
    this.server.close();
  }
}
