// Whether the copy on the phone can stand in for the network.

/**
 * True if `kept` (addresses in the caches) holds the start page, every file `listed` by the build,
 * and every file `inUse` by this page: the list may belong to another version.
 */
export function isCompleteCopy(
  kept: readonly string[],
  listed: readonly string[],
  inUse: readonly string[],
): boolean {
  // Workbox adds a revision to the address of files whose name does not change.
  const paths = new Set(kept.map(pathOf));
  const hasAll = (addresses: readonly string[]): boolean =>
    addresses.length > 0 && addresses.every((address) => paths.has(pathOf(address)));
  const hasPage = [...paths].some((path) => path.endsWith('/index.html'));
  return hasPage && hasAll(listed) && hasAll(inUse);
}

/** The names in files.json; none if it is something else. */
export function restoreFileList(list: unknown): readonly string[] {
  return Array.isArray(list) && list.every((file) => typeof file === 'string') ? list : [];
}

const pathOf = (address: string): string => new URL(address).pathname;
