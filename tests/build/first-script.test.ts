import { expect, test } from 'vitest';
import { builtFiles, firstScripts, readBuilt } from './built-files';

/** Texts that stand in one module each, and in no words of the screens. */
const lateParts = [
  ['the rules of tonight', 'most-left-out'],
  ['the limits for a professional', 'usualSeconds'],
  ['the reading of WAV files', 'WAVE'],
  ['the registration of the service worker', 'is-whole'],
  ['the restoring of settings', 'CapsLock'],
] as const;

test.each(lateParts)('the first JavaScript comes without %s', (_part, text) => {
  const isIn = (scripts: readonly string[]) =>
    scripts.some((script) => readBuilt(script).toString().includes(text));
  expect(isIn(firstScripts())).toBe(false);
  // Otherwise the text has changed and this test says nothing.
  expect(isIn(builtFiles().filter((file) => file.endsWith('.js')))).toBe(true);
});
