// What is done when a version did not start: its files are put right, and a newer version is asked for.
import type { VerifiedCopy } from '../copy/verified-copy';
import type { Looked } from '../worker-messages';

declare const self: ServiceWorkerGlobalScope;

/** How long a newer version is waited for, ms: some hundred kilobytes over a slow network. */
const longestInstall = 30_000;

/** Never rejects. A whole copy that does not start all the same gives way to the version that the host has. */
export async function mendVersion(copy: VerifiedCopy): Promise<Looked> {
  const { mended, missing } = await copy.mend();
  if (mended.length === 0 || missing.length > 0) await moveOn();
  return { mended: mended.length, missing: missing.length };
}

/** Nobody can be measuring in a window without a screen; other windows keep the files that they were made of. */
async function moveOn(): Promise<void> {
  const { registration } = self;
  // Rejects without a network, or when the host has nothing good either.
  await registration.update().catch(() => undefined);
  const next = registration.installing ?? registration.waiting;
  if (!next) return;
  await settled(next);
  if (next.state === 'installed') next.postMessage({ kind: 'take-over' });
}

function settled(worker: ServiceWorker): Promise<void> {
  return new Promise((done) => {
    if (worker.state !== 'installing') return done();
    worker.addEventListener('statechange', () => done(), { once: true });
    setTimeout(done, longestInstall);
  });
}
