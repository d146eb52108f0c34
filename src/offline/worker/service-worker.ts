// The service worker: keeps the app on the phone, gives it out, and takes in what is shared with it.
import { WrongAnswer } from '../copy/fetch-listed';
import type { ListedFile } from '../copy/listed-file';
import { type Mended, VerifiedCopy } from '../copy/verified-copy';
import type { Looked, ToWorker } from '../worker-messages';
import { answerFor } from './answer-request';
import { receiveShared } from './receive-shared';
import { rescue } from './rescue';
import { dropOlder, tellPages } from './windows';

declare const self: ServiceWorkerGlobalScope;
/** Put round this script by the build: the files of this version, and a name for just this list. */
declare const builtFiles: readonly ListedFile[];
declare const builtVersion: string;

const copy = new VerifiedCopy(builtFiles, builtVersion, {
  scope: self.registration.scope,
  caches: self.caches,
  fetch: (address, options) => fetch(address, options),
});

self.addEventListener('install', (event) => {
  event.waitUntil(
    copy.fill().catch(async (error: unknown) => {
      if (error instanceof WrongAnswer) await tellPages({ kind: 'wrong-answer' });
      // Not installed: whatever was there before stays as it is.
      throw error;
    }),
  );
});

// The first page is served from the copy at once, and not only after it was opened again.
self.addEventListener('activate', (event) => event.waitUntil(self.clients.claim()));

self.addEventListener('fetch', (event) => {
  const answer = receiveShared(event.request) ?? answerFor(event.request, copy);
  if (answer) event.respondWith(answer);
});

self.addEventListener('message', (event) => {
  event.waitUntil(obey(event.data as ToWorker, event.ports[0]));
});

async function obey(message: ToWorker, answers: MessagePort | undefined): Promise<void> {
  switch (message.kind) {
    case 'is-whole':
      answers?.postMessage({ whole: await copy.isWhole(message.parts) });
      return;
    case 'take-over':
      return self.skipWaiting();
    case 'claim':
      return self.clients.claim();
    case 'shown':
      return dropOlder(copy);
    case 'mend':
      answers?.postMessage(counted(await copy.mend()));
      return;
    case 'rescue':
      answers?.postMessage(counted(await rescue(copy)));
  }
}

const counted = ({ mended, missing }: Mended): Looked => ({
  mended: mended.length,
  missing: missing.length,
});
