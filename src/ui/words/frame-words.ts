// What stands around every screen.
export const frameWords = { skip: 'Skip to the main buttons' } as const;
