// What stands around every screen.

export const frameWords = {
  /** Past all that stands before them. */
  skip: 'Skip to the main buttons',
  /** The bar that takes something back. */
  undoBar: 'Taken out just now',
  undo: 'Undo',
} as const;
