import { describe, expect, it } from 'vitest';
import { cents, instant, midiNote } from '../../../../src/domain/tuning/units';
import { keyOf } from '../../../../src/ui/frame/watch-keys';
import {
  blowsSoFar,
  farLines,
  keyWords,
  spokenWords,
} from '../../../../src/ui/words/measuring/hands-words';

describe('keys in words', () => {
  it('are called as people call them', () => {
    const name = (code: string) => keyWords({ kind: 'key', code });
    expect(name('KeyK')).toBe('K');
    expect(name('Digit7')).toBe('7');
    expect(name('PageDown')).toBe('Page Down');
    expect(name('AudioVolumeUp')).toBe('Audio Volume Up');
    expect(name(' ')).toBe('Space');
    expect(keyWords({ kind: 'headset', button: 'forward' })).toContain('headset');
  });

  it('are told by their place, and by their name where a remote gives no place', () => {
    expect(keyOf({ code: 'KeyZ', key: 'y' })).toEqual({ kind: 'key', code: 'KeyZ' });
    expect(keyOf({ code: '', key: 'MediaTrackNext' })).toEqual({
      kind: 'key',
      code: 'MediaTrackNext',
    });
  });
});

describe('a verdict for the ear and for the far eye', () => {
  const flat = { kind: 'octave-flat', cents: cents(-6.2) } as const;

  it('is spoken with the note first', () => {
    expect(spokenWords(midiNote(74), flat, null)).toMatch(/^D5, octave flat, 6$/i);
    expect(spokenWords(midiNote(66), { kind: 'aligned' }, null)).toMatch(
      /^F sharp ?4, partials aligned$/i,
    );
    expect(spokenWords(midiNote(74), flat, { centsPerStrike: -2 })).toMatch(/lower/);
  });

  it('has its number on a line of its own', () => {
    expect(farLines(flat)).toEqual(['octave', 'flat', '6']);
    expect(farLines({ kind: 'aligned' })).toEqual(['partials', 'aligned']);
  });
});

describe('blows heard so far', () => {
  const heard = (count: number | null) => ({ at: instant(0), count, logged: null });

  it('are told with how many were suggested', () => {
    expect(blowsSoFar(heard(1), 3)).toBe('1 of 3 blows heard.');
    expect(blowsSoFar(heard(4), 3)).toBe('4 blows heard. Suggested: 3.');
    expect(blowsSoFar(heard(2), null)).toBe('2 blows heard.');
    expect(blowsSoFar(heard(null), 3)).toBe('Blows logged.');
  });
});
