// Files that come to the app from outside: shared with it, or opened with it.
import type { FileOnHand } from './file-handout';
import type { Unsubscribe } from './unsubscribe';

/** Why what was shared was not taken in: sent by another site, too long, or too much waits already. */
export type ShareRefusal = 'other-site' | 'too-large' | 'no-room';

/** Nothing here throws or rejects. */
export interface Arrivals {
  /** A file has come while the app was open. */
  onArrival(listener: () => void): Unsubscribe;
  /** The file that has waited longest, or null. It waits until it is let go, even if the app is closed in between. */
  waiting(): Promise<FileOnHand | null>;
  letGo(file: FileOnHand): Promise<void>;
  /** Why the last ones that were shared did not come in; null if they did. Told once. */
  refused(): Promise<ShareRefusal | null>;
}
