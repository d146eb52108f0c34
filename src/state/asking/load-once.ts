// A part of the app that loads when it is first wanted.

/** Loads once, however often it is called; after a failure (no network, no copy yet) the next call tries again. */
export function loadOnce<T>(load: () => Promise<T>): () => Promise<T> {
  let loading: Promise<T> | null = null;
  return () => {
    loading ??= load().catch((error: unknown) => {
      loading = null;
      throw error;
    });
    return loading;
  };
}
