/** A file made to do harm, or broken as files break. Made only when it is asked for: some are large. */
export interface HostileFile {
  readonly name: string;
  readonly make: () => Uint8Array<ArrayBuffer>;
  /** The fault that refuses it, or that it is read. */
  readonly gives: string;
}
