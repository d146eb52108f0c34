// Whether the copy on the phone can stand in for the network.

/**
 * True if `kept` (addresses in the caches) holds the start page and every file `inUse` by the page.
 *
 * The precache list itself cannot be read from the page. It need not be: a service worker that controls
 * the page was installed, and its installation fails unless every file of its list was stored (Workbox,
 * PrecacheController.install). What this finds is storage that was cleared since, or another version's copy.
 */
export function isCompleteCopy(kept: readonly string[], inUse: readonly string[]): boolean {
  // Workbox adds a revision to the address of files whose name does not change.
  const paths = new Set(kept.map(pathOf));
  const hasPage = [...paths].some((path) => path.endsWith('/index.html'));
  return hasPage && inUse.length > 0 && inUse.every((address) => paths.has(pathOf(address)));
}

const pathOf = (address: string): string => new URL(address).pathname;
