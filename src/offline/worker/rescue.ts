// What is done when a version did not start: its files are put right, and a newer version is asked for.
import type { Mended, VerifiedCopy } from '../copy/verified-copy';
import type { ToWorker } from '../worker-messages';

declare const self: ServiceWorkerGlobalScope;

/** How long a newer version is waited for, ms: some hundred kilobytes over a slow network (chosen, no source). */
const longestInstall = 30_000;

/** Never rejects. A whole copy that does not start all the same gives way to the version that the host has. */
export async function rescue(copy: VerifiedCopy): Promise<Mended> {
  const looked = await copy.mend();
  if (looked.mended.length === 0 || looked.missing.length > 0) await moveOn();
  return looked;
}

/** Nobody can be measuring in a window without a screen; other windows keep the files that they were made of. */
async function moveOn(): Promise<void> {
  const { registration } = self;
  // Rejects without a network, or if the host has nothing good either.
  await registration.update().catch(() => undefined);
  const next = registration.installing ?? registration.waiting;
  if (!next) return;
  await settled(next);
  if (next.state === 'installed') next.postMessage({ kind: 'take-over' } satisfies ToWorker);
}

function settled(worker: ServiceWorker): Promise<void> {
  return new Promise((done) => {
    if (worker.state !== 'installing') return done();
    worker.addEventListener('statechange', () => done(), { once: true });
    setTimeout(done, longestInstall);
  });
}
