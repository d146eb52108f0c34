// Files that come to the app from outside: shared with it, or opened with it.
import type { FileOnHand } from './file-handout';
import type { Unsubscribe } from './unsubscribe';

/** Why what was shared was not taken in: sent by another site, too long, or too much waits already. */
export type ShareRefusal = 'other-site' | 'too-large' | 'no-room';

/** Nothing here throws or rejects. */
export interface Arrivals {
  /** One has come while the app is open. */
  onArrival(listener: () => void): Unsubscribe;
  /** The file that has waited longest, or null. It waits until it is let go, also when the app is closed meanwhile. */
  waiting(): Promise<FileOnHand | null>;
  letGo(file: FileOnHand): Promise<void>;
  /** Why the last ones that were shared did not come in; null if they did. Told once. */
  refused(): Promise<ShareRefusal | null>;
}
