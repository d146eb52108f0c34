// Where files that were shared with the app wait for it: what the page and the service worker must agree about.

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
/** More files are not kept: a phone shares a handful at most. */
export const mostWaiting = 20;
