// The part of the service worker that takes in what is shared with the app. The app's copy is not its business.
import {
  filePart,
  mostWaiting,
  nameHeader,
  receiveAddress,
  sharePath,
  waitingCache,
} from '../waiting-place';

declare const self: ServiceWorkerGlobalScope;

self.addEventListener('fetch', (event) => {
  const { request } = event;
  const place = new URL(sharePath, self.registration.scope);
  if (request.method === 'POST' && request.url === place.href) {
    event.respondWith(receive(request));
  }
});

/** Puts the files where the page finds them, and opens the page. Nothing in them is looked at here. */
async function receive(request: Request): Promise<Response> {
  try {
    const form = await request.formData();
    // A form in which no file was chosen has one without a name.
    const files = form
      .getAll(filePart)
      .filter((part): part is File => part instanceof File && part.name !== '');
    // What is shared now replaces what nobody wanted before: nothing can pile up.
    await caches.delete(waitingCache);
    const cache = await caches.open(waitingCache);
    for (const file of files.slice(0, mostWaiting)) {
      const headers = { [nameHeader]: encodeURIComponent(file.name) };
      await cache.put(newAddress(), new Response(file, { headers }));
    }
  } catch {
    // The phone is full, or the form is none: the screen says that nothing waits, and how to choose a file.
  }
  return Response.redirect(new URL(receiveAddress, self.registration.scope), 303);
}

/** Never used before, so that nobody lets go of another file than was looked at. */
const newAddress = (): string =>
  new URL(`waiting-file-${crypto.randomUUID()}`, self.registration.scope).href;
