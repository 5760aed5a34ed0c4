import { useSyncExternalStore } from 'react';
import type { LockStatus } from '../../server/clientDoor.ts';
import type { Heard } from './hearServer.ts';

/** What a window knows of the lock. */
export interface Presence {
  /** False while nothing is heard of the program: it is stopped, or hangs. */
  readonly isHeard: boolean;
  /** Undefined until the program was heard for the first time. */
  readonly status: LockStatus | undefined;
  /** 'hidden': the program is not heard, and client data is out of sight; 'dropped': for so long that it was let go. */
  readonly shown: 'shown' | 'hidden' | 'dropped';
  /** Raised when what stands of a client in this window is to go. */
  readonly cleared: number;
}

/** A blip must not cost what was typed. */
const dropMilliseconds = 20_000;
/** Whatever tells this window of the program tells it every five seconds. */
const silenceMilliseconds = 14_000;

/** Fails closed: what is not heard to be open counts as locked. */
export class LockPresence {
  private presence: Presence = { isHeard: true, status: undefined, shown: 'shown', cleared: 0 };
  private readonly listeners = new Set<() => void>();
  private readonly clear: () => void;
  private dropping: ReturnType<typeof setTimeout> | undefined;
  private lastHeard = performance.now();

  /** @param clear lets go of everything of a client that this window keeps. */
  constructor(clear: () => void) {
    this.clear = clear;
    setInterval(() => {
      if (performance.now() - this.lastHeard > silenceMilliseconds) this.hear('lost');
    }, 2_000);
  }

  hear(heard: Heard): void {
    if (heard === 'lost') this.lose();
    else this.learn(heard.status);
  }

  learn(status: LockStatus): void {
    this.lastHeard = performance.now();
    clearTimeout(this.dropping);
    this.dropping = undefined;
    const before = this.presence.status;
    const wasLocked = before !== undefined && before.opening !== status.opening && (before.hasPassphrase || status.hasPassphrase);
    if (wasLocked) this.letGo({ isHeard: true, status, shown: 'shown' });
    else this.set({ isHeard: true, status, shown: 'shown' });
  }

  /** The program is not heard. Without a passphrase nothing is locked, then or now. */
  private lose(): void {
    if (this.presence.isHeard) this.set({ isHeard: false });
    if (this.dropping !== undefined || this.presence.shown !== 'shown' || this.presence.status?.hasPassphrase !== true) return;
    this.set({ shown: 'hidden' });
    this.dropping = setTimeout(() => this.letGo({ shown: 'dropped' }), dropMilliseconds);
  }

  private letGo(change: Partial<Presence>): void {
    this.set({ ...change, cleared: this.presence.cleared + 1 });
    this.clear();
  }

  private set(change: Partial<Presence>): void {
    this.presence = { ...this.presence, ...change };
    for (const listener of this.listeners) listener();
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  };

  readonly now = (): Presence => this.presence;
}

let presence: LockPresence | undefined;

export function startPresence(clear: () => void): LockPresence {
  presence = new LockPresence(clear);
  return presence;
}

export function thePresence(): LockPresence {
  if (presence === undefined) throw new Error('the window does not listen yet');
  return presence;
}

export function useLock(): Presence {
  const { subscribe, now } = thePresence();
  return useSyncExternalStore(subscribe, now);
}
