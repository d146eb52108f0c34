// The part of the service worker that takes in what is shared with the app. The app's copy is not its business.
import type { ShareRefusal } from '../../domain/ports/arrivals';
import {
  filePart,
  lengthHeader,
  mostBytes,
  mostWaiting,
  nameHeader,
  reasonHeader,
  receiveAddress,
  refusedPlace,
  sharePath,
  waitingCache,
} from '../waiting-place';
import { LongerThanAllowed, limitedForm } from './limited-form';

declare const self: ServiceWorkerGlobalScope;

const inScope = (path: string): string => new URL(path, self.registration.scope).href;

/** Puts the files where the page finds them, and opens the page; null if the request shares nothing. */
export function receiveShared(request: Request): Promise<Response> | null {
  const isShare = request.method === 'POST' && request.url === inScope(sharePath);
  return isShare ? receive(request) : null;
}

/** Nothing in the files is looked at here, and what waits already is never touched. */
async function receive(request: Request): Promise<Response> {
  try {
    const cache = await caches.open(waitingCache);
    const refusal = isOtherSites(request) ? 'other-site' : await keep(request, cache);
    if (refusal) {
      await cache.put(
        inScope(refusedPlace),
        new Response(null, { headers: { [reasonHeader]: refusal } }),
      );
    }
  } catch {
    // The phone is full, or the form is none: the screen says that nothing waits, and how to choose a file.
  }
  return Response.redirect(inScope(receiveAddress), 303);
}

/**
 * True if a page of another site sent the form and says so. A phone's share sheet has no origin ("null"), and neither
 * has a page that hides where it is: for those there are the limits, and the question before anything is taken in.
 */
function isOtherSites({ headers, referrer }: Request): boolean {
  const own = new URL(self.registration.scope).origin;
  const origin = headers.get('Origin') ?? 'null';
  const comesFrom = origin === 'null' && URL.canParse(referrer) ? new URL(referrer).origin : origin;
  return comesFrom !== 'null' && comesFrom !== own;
}

async function keep(request: Request, cache: Cache): Promise<ShareRefusal | null> {
  let form: FormData;
  try {
    form = await limitedForm(request, mostBytes);
  } catch (error) {
    if (error instanceof LongerThanAllowed) return 'too-large';
    throw error;
  }
  // A form in which no file was chosen has one without a name.
  const files = form
    .getAll(filePart)
    .filter((part): part is File => part instanceof File && part.name !== '');
  const waiting = await lengthsWaiting(cache);
  const bytes = [...waiting, ...files.map(({ size }) => size)].reduce((a, b) => a + b, 0);
  if (bytes > mostBytes || waiting.length + files.length > mostWaiting) return 'no-room';
  for (const file of files) {
    const headers = {
      [nameHeader]: encodeURIComponent(file.name),
      [lengthHeader]: String(file.size),
    };
    await cache.put(newAddress(), new Response(file, { headers }));
  }
  return null;
}

/** Bytes of each file that waits. */
async function lengthsWaiting(cache: Cache): Promise<readonly number[]> {
  const kept = (await cache.matchAll()).filter(({ headers }) => headers.has(nameHeader));
  return kept.map(({ headers }) => Number(headers.get(lengthHeader) ?? 0));
}

/** Never used before, so that nobody lets go of another file than was looked at. */
const newAddress = (): string => inScope(`waiting-file-${crypto.randomUUID()}`);
