import { randomUUID } from 'node:crypto';
import type { ClientVault } from '#app/clientVault.ts';

/** What every window is told about the lock. */
export interface LockStatus {
  readonly state: 'open' | 'locked';
  readonly hasPassphrase: boolean;
  readonly idleMinutes: number;
  /** Seconds until the next try of a passphrase is looked at. */
  readonly waitSeconds: number;
  /** Locked because nobody moved a key or a pointer for so long; until it is opened again. */
  readonly wasIdle: boolean;
  /** Another one after each lock and each start: a window that heard of neither knows by it that what it shows is to go. */
  readonly opening: string;
}

interface Timings {
  /** Between the last window's leaving and the lock: a page that is loaded again is back sooner. */
  readonly leaveMilliseconds: number;
  /** How often it is looked whether nobody has touched a key for too long. */
  readonly lookMilliseconds: number;
}

/** Time that goes on while the computer sleeps, and time that nobody can set back. */
interface Clocks {
  readonly wall: () => number;
  readonly steady: () => number;
}

/**
 * Keeps the door to client data: knows the windows that are there, locks when the last one has left or when no key and no pointer was
 * moved for too long, and tells every window at once. Without a passphrase there is nothing to lock.
 */
export class ClientDoor {
  private readonly vault: ClientVault;
  private readonly timings: Timings;
  private readonly clocks: Clocks;
  private opening = randomUUID();
  private wasIdle = false;
  private readonly windows = new Set<(status: LockStatus) => void>();
  private touched: { readonly wall: number; readonly steady: number };
  private leaving: NodeJS.Timeout | undefined;
  private looking: NodeJS.Timeout | undefined;

  /** @param forget wipes what the server keeps of clients beside the vault; called when it is locked. */
  constructor(
    vault: ClientVault,
    forget: () => void,
    timings: Timings = { leaveMilliseconds: 10_000, lookMilliseconds: 1_000 },
    clocks: Clocks = { wall: () => Date.now(), steady: () => performance.now() },
  ) {
    this.vault = vault;
    this.timings = timings;
    this.clocks = clocks;
    this.touched = this.moment();
    vault.watch(() => {
      if (vault.state() === 'locked') {
        this.opening = randomUUID();
        forget();
      } else this.wasIdle = false;
      this.changed();
    });
  }

  status(): LockStatus {
    const { vault } = this;
    return {
      state: vault.state(),
      hasPassphrase: vault.hasPassphrase(),
      idleMinutes: vault.idleMinutes(),
      waitSeconds: Math.ceil(vault.waitMilliseconds() / 1_000),
      wasIdle: this.wasIdle,
      opening: this.opening,
    };
  }

  /** A window is there: it is told how things are, and each change. The answer is to be called when it has gone. */
  enter(tell: (status: LockStatus) => void): () => void {
    clearTimeout(this.leaving);
    this.windows.add(tell);
    tell(this.status());
    return () => {
      if (!this.windows.delete(tell) || this.windows.size > 0) return;
      this.leaving = setTimeout(() => this.vault.lock(), this.timings.leaveMilliseconds).unref();
    };
  }

  /** A key or a pointer was moved in some window. */
  touch(): void {
    this.lockWhenIdle();
    this.touched = this.moment();
  }

  lockWhenIdle(): void {
    if (!this.isToBeLocked()) return;
    const now = this.moment();
    const idle = Math.max(now.wall - this.touched.wall, now.steady - this.touched.steady);
    if (idle < this.vault.idleMinutes() * 60_000) return;
    this.wasIdle = true;
    this.vault.lock();
  }

  /** Tells every window how things are. */
  changed(): void {
    clearInterval(this.looking);
    if (this.isToBeLocked()) {
      this.touched = this.moment();
      this.looking = setInterval(() => this.lockWhenIdle(), this.timings.lookMilliseconds).unref();
    }
    const status = this.status();
    for (const tell of this.windows) tell(status);
  }

  private isToBeLocked(): boolean {
    return this.vault.state() === 'open' && this.vault.hasPassphrase();
  }

  private moment() {
    return { wall: this.clocks.wall(), steady: this.clocks.steady() };
  }
}
