// Which requests the copy answers. All others go to the network as if there were no service worker.
import { brokenPage, mendedPage } from '../copy/plain-pages';
import type { VerifiedCopy } from '../copy/verified-copy';
import { rescue } from './rescue';

const startPage = 'index.html';

/** An answer to come, or null if the request is not the app's own: a host may keep other pages beside and below it. */
export function answerFor(request: Request, copy: VerifiedCopy): Promise<Response> | null {
  const url = new URL(request.url);
  const { scope } = copy.place;
  if (request.method !== 'GET' || !url.href.startsWith(scope)) return null;
  const path = url.pathname.slice(new URL(scope).pathname.length);
  if (request.mode === 'navigate') {
    if (path !== '' && path !== startPage) return null;
    return url.searchParams.has('mend') ? mend(copy) : start(copy);
  }
  if (copy.has(path)) return part(path, copy);
  // Below assets/ are files of this app only; this one belongs to the version of a window opened before.
  return path.startsWith('assets/') ? olderPart(request, copy) : null;
}

const start = async (copy: VerifiedCopy): Promise<Response> =>
  (await copy.take(startPage)) ?? brokenPage();

async function mend(copy: VerifiedCopy): Promise<Response> {
  const { mended, missing } = await rescue(copy);
  return mendedPage(mended.length, missing.length);
}

const part = async (path: string, copy: VerifiedCopy): Promise<Response> =>
  (await copy.take(path)) ?? Response.error();

const olderPart = async (request: Request, copy: VerifiedCopy): Promise<Response> =>
  (await copy.older.take(request.url)) ?? fetch(request);
