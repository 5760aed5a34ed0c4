/** What was typed and not saved yet, and when it was last kept. */
export interface KeptDraft {
  readonly at: string;
  readonly values: unknown;
  /** What the form began with when it was typed: the version, or what was saved then. */
  readonly begunFrom?: string;
}

/** Where the draft of one form is kept: in this browser, or with the program where it is about a person. */
export interface DraftPlace {
  /** Tells this place from others; another form is another place. */
  readonly name: string;
  readonly read: () => Promise<KeptDraft | undefined>;
  /** @throws when it cannot be kept: the storage is full or forbidden, the program does not answer */
  readonly write: (draft: KeptDraft) => Promise<void>;
  readonly remove: () => Promise<void>;
  /** A last try while the page goes away, where that can be done at once. */
  readonly writeAtOnce?: (draft: KeptDraft) => void;
}

/** In this browser, under a name of its own. Nothing about a client may be kept here. @throws by `write` when the storage is full or forbidden */
export function browserDraft(form: string): DraftPlace {
  const key = `platewright-draft ${form}`;
  const write = (draft: KeptDraft): void => localStorage.setItem(key, JSON.stringify(draft));
  return {
    name: key,
    read: async () => {
      const text = localStorage.getItem(key);
      return text === null ? undefined : keptDraft(JSON.parse(text));
    },
    write: async draft => write(draft),
    remove: async () => localStorage.removeItem(key),
    writeAtOnce: write,
  };
}

function keptDraft(json: unknown): KeptDraft | undefined {
  const isDraft = typeof json === 'object' && json !== null && 'at' in json && typeof json.at === 'string' && 'values' in json;
  if (!isDraft) return undefined;
  const begunFrom = 'begunFrom' in json && typeof json.begunFrom === 'string' ? { begunFrom: json.begunFrom } : {};
  return { at: String(json.at), values: json.values, ...begunFrom };
}

const claimMilliseconds = 1_500;

/**
 * One window keeps the draft of a form; another one that opens the same form is told so. Held until `release`, or the window goes. A moment
 * is waited where it is held: a form that was closed just now still holds it.
 * @returns undefined while another window holds it
 */
export async function claim(place: DraftPlace): Promise<(() => void) | undefined> {
  const { promise: isOver, resolve: release } = Promise.withResolvers<void>();
  const hold = (options: LockOptions): Promise<boolean> =>
    new Promise(tell => {
      const held = (lock: Lock | null): Promise<void> | undefined => {
        tell(lock !== null);
        return lock === null ? undefined : isOver;
      };
      navigator.locks.request(place.name, options, held).catch(() => tell(false));
    });
  // Asked without a limit first: a slow computer is not to be taken for another window.
  const isHeld = (await hold({ ifAvailable: true })) || (await hold({ signal: AbortSignal.timeout(claimMilliseconds) }));
  return isHeld ? release : undefined;
}
