// A script of its own beside the app's: notices when the first screen does not come, or what it loads by itself comes
// wrong, and has it put right.
import { ask, type Looked, type ToWorker } from '../worker-messages';

/** How long the first screen may take, ms: more than ten times what it takes here (0.6 s, `npm run bench:rack`). */
const longestStart = 10_000;
/**
 * How long the service worker may take to look at all files and fetch the wrong ones, ms (this and the next: own
 * choice).
 */
const longestRescue = 60_000;
/** It opens the page anew by itself at most this often, ms: what does not help must not go round in circles. */
const reloadEvery = 60_000;
const reloadedAt = 'ringwright-reloaded-at';

interface Part {
  readonly address: string;
  readonly integrity: string;
}

const isShown = (): boolean => document.querySelector('main') !== null;

let isRescuing = false;
/** The user has begun to do something: the page is not opened anew under their hands. */
let isInUse = false;

async function rescue(): Promise<void> {
  if (isRescuing) return;
  isRescuing = true;
  document.querySelector('.starting')?.classList.add('late');
  const workers = 'serviceWorker' in navigator ? navigator.serviceWorker : null;
  workers?.addEventListener('controllerchange', reloadUnlessInUse);
  const isRight = workers?.controller
    ? await askWorker(workers.controller)
    : await fetchPartsAgain();
  if (isRight) reloadUnlessInUse();
}

/** True if something was wrong and all is right now. */
async function askWorker(worker: ServiceWorker): Promise<boolean> {
  // An app that runs is not moved to another version unasked.
  const message: ToWorker = { kind: isShown() ? 'mend' : 'rescue' };
  const looked = await ask<Looked>(worker, message, longestRescue);
  return looked !== null && looked.mended > 0 && looked.missing === 0;
}

/**
 * Without a copy on the phone: past the browser's own cache, which may hold what the network gave wrongly. The app
 * that did not start could not ask for its copy either. True if the network gives all parts of the page.
 */
async function fetchPartsAgain(): Promise<boolean> {
  registerWorker();
  const answers = await Promise.allSettled(partsOfPage().map(fetchAgain));
  return answers.every(({ status }) => status === 'fulfilled');
}

/** Does nothing if the browser has it already. The app says what became of it, if it is there to say so. */
function registerWorker(): void {
  if (!('serviceWorker' in navigator) || navigator.serviceWorker.controller) return;
  navigator.serviceWorker.register(new URL('sw.js', document.baseURI)).catch(() => undefined);
}

const partsOfPage = (): readonly Part[] => [
  ...Array.from(document.scripts, ({ src, integrity }) => ({ address: src, integrity })),
  ...Array.from(document.querySelectorAll('link'), ({ href, integrity }) => ({
    address: href,
    integrity,
  })),
];

async function fetchAgain({ address, integrity }: Part): Promise<void> {
  // The browser itself refuses what is not as the page says.
  const answer = await fetch(address, { cache: 'reload', integrity });
  await answer.arrayBuffer();
  if (!answer.ok) throw new Error(address);
}

function reloadUnlessInUse(): void {
  if ((isShown() && isInUse) || Date.now() - lastReload() < reloadEvery) return;
  try {
    sessionStorage.setItem(reloadedAt, String(Date.now()));
  } catch {
    // Nothing can be remembered here; the words on the page say what to do.
    return;
  }
  window.location.reload();
}

function lastReload(): number {
  try {
    return Number(sessionStorage.getItem(reloadedAt) ?? 0);
  } catch {
    return Number.POSITIVE_INFINITY;
  }
}

/**
 * Before there is a copy on the phone, the parts that the first screen loads by itself are asked for with their hashes,
 * which the build has put into this script's tag: "path hash path hash". What is wrong then tells.
 */
function checkLateParts(): void {
  if ('serviceWorker' in navigator && navigator.serviceWorker.controller) return;
  const named = document.currentScript?.dataset['parts']?.split(' ') ?? [];
  for (let k = 0; k + 1 < named.length; k += 2) {
    const link = document.createElement('link');
    Object.assign(link, {
      rel: 'modulepreload',
      href: named[k],
      integrity: named[k + 1],
      crossOrigin: '',
    });
    document.head.append(link);
  }
}

/** A script, or a style, that did not load; or, before the first screen, an error that may be why it does not come. */
function isOurs({ target }: Event): boolean {
  if (target instanceof HTMLLinkElement) return /^(?:stylesheet|modulepreload)$/.test(target.rel);
  if (target instanceof HTMLElement) return target instanceof HTMLScriptElement;
  return !isShown();
}

// An element that does not load tells only those who listen on the way down.
window.addEventListener('error', (event) => void (isOurs(event) && rescue()), { capture: true });
for (const kind of ['pointerdown', 'keydown']) {
  window.addEventListener(kind, () => {
    isInUse = true;
  });
}
checkLateParts();
setTimeout(() => {
  if (!isShown()) void rescue();
  // The part of the app that keeps it on the phone may itself have come wrong.
  registerWorker();
}, longestStart);
