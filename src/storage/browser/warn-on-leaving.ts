// Asks before the window is closed while something is not saved; the browser has its own words for it.

interface Leaving {
  addEventListener(type: 'beforeunload', listener: (event: Event) => void): void;
}

/** `isUnsaved` is asked at the moment of closing. */
export function warnOnLeaving(window: Leaving, isUnsaved: () => boolean): void {
  window.addEventListener('beforeunload', (event) => {
    if (isUnsaved()) event.preventDefault();
  });
}
