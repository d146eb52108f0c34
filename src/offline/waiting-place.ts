// Where files that were shared with the app wait for it: what the page and the service worker must agree about.
import type { ShareRefusal } from '../domain/ports/arrivals';

/** The cache they wait in. It belongs to no version of the app: what waits survives an update. */
export const waitingCache = 'ringwright-waiting-files';
/** Where the manifest sends shared files, below the folder of the app. */
export const sharePath = 'receive-shared';
/** Name of the part of the form that holds them, as the manifest says. */
export const filePart = 'file';
/** The screen that the service worker leads to. */
export const receiveAddress = './#/receive';
/** Header of a waiting file with its name, percent-encoded. */
export const nameHeader = 'X-File-Name';
/** Header of a waiting file with its length, bytes. */
export const lengthHeader = 'X-File-Length';
/** More files are not kept: a phone shares a handful at most (chosen, no source). */
export const mostWaiting = 20;
/** All that waits together, bytes: twice what Chromium passes on in one go. A larger file can be chosen in the app. */
export const mostBytes = 100_000_000;
/** Beside the files, below the folder of the app: why the last ones were not taken in. */
export const refusedPlace = 'refused-share';
/** Header of that entry with the reason. */
export const reasonHeader = 'X-Reason';

export const shareRefusals: readonly ShareRefusal[] = ['other-site', 'too-large', 'no-room'];
