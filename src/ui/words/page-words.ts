export const pageWords = { parts: 'Parts of this page' } as const;
