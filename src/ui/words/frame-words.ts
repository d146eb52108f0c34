// What stands around every screen: the way past what comes before the main buttons, and the bar that takes something
// back. They load after the first paint, so they are not among the words of the first screens.

export const frameWords = {
  /** Shown to whoever comes to it with the keyboard. */
  skip: 'Skip to the main buttons',
  /** The name of the bar, for whoever listens to the screen. */
  undoBar: 'Taken out just now',
  undo: 'Undo',
} as const;
