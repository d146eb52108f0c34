// What the page and the service worker say to each other.

/** To the worker. Where an answer is named, a MessagePort for it goes along. */
export type ToWorker =
  /** Answer: `Whole`. `parts` are the paths of the scripts and styles that the page is made of. */
  | { readonly kind: 'is-whole'; readonly parts: readonly string[] }
  /** Put this version in place now. */
  | { readonly kind: 'take-over' }
  /** Serve the windows that no version serves yet. */
  | { readonly kind: 'claim' }
  /** The first screen is there. */
  | { readonly kind: 'shown' }
  /** Look at every file, and fetch anew what is wrong. Answer: `Looked`. */
  | { readonly kind: 'mend' }
  /** Nothing came on the screen: mend, or else take the version that the host has. Answer: `Looked`. */
  | { readonly kind: 'rescue' };

/** To the page. */
export type ToPage =
  /** This version was not kept, because the network gave something else. */
  | { readonly kind: 'wrong-answer' }
  /** Answer: the paths of what the page is made of. */
  | { readonly kind: 'which-parts' };

export interface Whole {
  readonly whole: boolean;
}

export interface Looked {
  readonly mended: number;
  readonly missing: number;
}

/** The answer to `message`, or null if none comes within `patience` (ms). */
export function ask<Answer>(
  whom: { postMessage(message: unknown, transfer: Transferable[]): void },
  message: ToWorker | ToPage,
  patience: number,
): Promise<Answer | null> {
  return new Promise((done) => {
    const { port1, port2 } = new MessageChannel();
    const end = (answer: Answer | null): void => {
      port1.close();
      done(answer);
    };
    port1.onmessage = ({ data }) => end(data as Answer);
    setTimeout(() => end(null), patience);
    whom.postMessage(message, [port2]);
  });
}
