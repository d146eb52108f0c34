// Looks into the caches of the service worker.
import { isCompleteCopy, restoreFileList } from './offline-copy';

/** True if this page is served from the phone and everything it may need is kept there; never rejects. */
export async function hasCompleteCopy(): Promise<boolean> {
  if (!navigator.serviceWorker.controller) return false;
  try {
    const [kept, listed] = await Promise.all([urlsKept(), filesListed()]);
    return isCompleteCopy(kept, listed, filesInUse());
  } catch {
    // Storage may not be looked at: nothing can be promised.
    return false;
  }
}

async function urlsKept(): Promise<readonly string[]> {
  const kept = await Promise.all(
    (await caches.keys()).map(async (name) => (await caches.open(name)).keys()),
  );
  return kept.flat().map(({ url }) => url);
}

/** Addresses of all that the build made, from the list that is itself part of the copy. */
async function filesListed(): Promise<readonly string[]> {
  // Workbox adds a revision to the address.
  const list = await caches.match(new URL('files.json', document.baseURI), { ignoreSearch: true });
  const files = restoreFileList(await list?.json());
  return files.map((file) => new URL(file, document.baseURI).href);
}

/** Scripts and styles that this very page was made of. */
function filesInUse(): readonly string[] {
  return [
    ...Array.from(document.scripts, ({ src }) => src),
    ...Array.from(
      document.querySelectorAll<HTMLLinkElement>('link[rel="stylesheet"]'),
      (link) => link.href,
    ),
  ].filter((address) => address !== '');
}
