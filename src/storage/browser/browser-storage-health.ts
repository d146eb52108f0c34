// What the browser says about the storage of the app. Its answers are shown, never relied on.
import type { Durability, StorageHealth, StorageState } from '../../domain/ports/storage-health';

export class BrowserStorageHealth implements StorageHealth {
  async look(): Promise<StorageState> {
    const storage = storageManager();
    const [isPersistent, estimate] = await Promise.all([
      orNull(() => storage?.persisted?.()),
      orNull(() => storage?.estimate?.()),
    ]);
    return {
      durability: durabilityOf(isPersistent),
      usedBytes: estimate?.usage ?? null,
      mostBytes: estimate?.quota ?? null,
    };
  }

  async askToKeep(): Promise<Durability> {
    const storage = storageManager();
    if (await orNull(() => storage?.persisted?.())) return 'persistent';
    return durabilityOf(await orNull(() => storage?.persist?.()));
  }
}

/** Undefined in old browsers and on pages that did not come over https. */
const storageManager = (): Partial<StorageManager> | undefined => navigator.storage;

const durabilityOf = (isPersistent: boolean | null): Durability => {
  if (isPersistent === null) return 'unknown';
  return isPersistent ? 'persistent' : 'best-effort';
};

/** A browser that has no answer, or refuses one in a private window, says nothing. */
async function orNull<T>(ask: () => Promise<T> | undefined): Promise<T | null> {
  try {
    return (await ask()) ?? null;
  } catch {
    return null;
  }
}
