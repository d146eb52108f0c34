// How long a sound file is, without decoding it.

/** Longest wait for what a file says about itself, ms (chosen, no source). */
const patience = 10_000;
/** Later than any file ends, s: a file that does not say its length is looked through for its end. */
const beyondTheEnd = 1e7;

/** Length in seconds; null if the browser cannot tell. Never rejects. */
export function secondsOf(file: Blob): Promise<number | null> {
  return new Promise((done) => {
    const address = URL.createObjectURL(file);
    const element = new Audio();
    const end = (seconds: number | null): void => {
      clearTimeout(timer);
      element.removeAttribute('src');
      URL.revokeObjectURL(address);
      done(seconds);
    };
    const timer = setTimeout(() => end(null), patience);
    const look = (): void => {
      if (Number.isFinite(element.duration)) end(element.duration);
      // Recorded in a browser: its length stands nowhere.
      else if (element.currentTime === 0) element.currentTime = beyondTheEnd;
    };
    element.onloadedmetadata = look;
    element.ondurationchange = look;
    element.onerror = () => end(null);
    element.preload = 'metadata';
    element.src = address;
  });
}
