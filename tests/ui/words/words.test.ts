import { describe, expect, it } from 'vitest';
import { cents } from '../../../src/domain/tuning/units';
import {
  microphoneWords,
  signedCents,
  tenthsUp,
  twoFundamentalsWords,
  twoOctavesWords,
  verdictWords,
  walkingWords,
  wrongNoteWords,
} from '../../../src/ui/words/words';

describe('the words', () => {
  it('show whole cents with a real minus sign, and no sign on zero', () => {
    expect([-9.4, 4.2, -0.4, 0.4].map(signedCents)).toEqual(['−9', '+4', '0', '0']);
  });

  it('show the same number in the line as in the big word', () => {
    for (const value of [-5.5, -6.5, 5.5, 12.49]) {
      const { number } = verdictWords({ kind: value < 0 ? 'flat' : 'sharp', cents: cents(value) });
      expect(signedCents(value).slice(1)).toBe(number);
    }
  });

  it('name the partial, the direction and the cents', () => {
    expect(verdictWords({ kind: 'octave-flat', cents: cents(-6) })).toEqual({
      lines: ['octave', 'flat'],
      number: '6',
    });
    expect(
      verdictWords({ kind: 'third-sharp', cents: cents(12), third: 'double-octave' }).lines,
    ).toEqual(['double', 'octave', 'sharp']);
    expect(verdictWords({ kind: 'in-tune' })).toEqual({ lines: ['in tune'], number: null });
    expect(verdictWords({ kind: 'aligned' })).toEqual({
      lines: ['partials', 'aligned'],
      number: null,
    });
  });
});

describe('a wrong note', () => {
  it('is named, with what to do', () => {
    expect(Object.values(wrongNoteWords('D6')).join(' ')).toBe(
      'Not this note: D6 is ringing. Damp it and strike again.',
    );
  });
});

describe('two lines at the octave', () => {
  it('are named with their distance and the damping test, with or without a named partner', () => {
    expect(Object.values(twoOctavesWords('12 cents', 'D6')).join(' ')).toBe(
      'Two lines at the octave, 12 cents apart. Lay a finger on D6 and strike again.',
    );
    expect(twoOctavesWords('12 cents', null).todo).toBe('Damp the other notes and strike again.');
  });

  it('leave the octave unsure, without a number', () => {
    expect(verdictWords({ kind: 'octave-open' })).toEqual({
      lines: ['octave', 'unsure'],
      number: null,
    });
  });
});

describe('a note that walks', () => {
  it('is named with its direction, its step and what not to do', () => {
    const lower = walkingWords(-0.84);
    expect(`${lower.says} ${lower.todo}`).toBe('Walking: each strike lower. Stop and let it rest.');
    expect(lower.why).toContain('0.8 cents a strike');
    expect(walkingWords(0.84).says).toBe('Walking: each strike higher.');
  });
});

describe('a standard error', () => {
  it('is never shown smaller than it is', () => {
    expect([0.04, 0.1, 0.11, 0.3, 0.68].map(tenthsUp)).toEqual(['0.1', '0.1', '0.2', '0.3', '0.7']);
  });
});

describe('a microphone that does not start', () => {
  const failures = ['insecure', 'wrong-rate', 'unknown'] as const;
  const sentences = failures.map((why) => microphoneWords({ kind: 'failed', why }).sentence);

  it('has a sentence of its own for each reason', () => {
    expect(new Set(sentences).size).toBe(failures.length);
  });

  it('is told what to do in the last words of each', () => {
    expect(sentences[0]).toMatch(/Open the app at such an address\.$/);
    expect(sentences[1]).toMatch(/Switch off wireless earphones, then try again\.$/);
    expect(sentences[2]).toMatch(/Close other apps that use it, then try again\.$/);
  });
});

it('says of two lines at the fundamental how far they are apart and what tells them apart', () => {
  expect(Object.values(twoFundamentalsWords(5.2)).join(' ')).toBe(
    'Two lines at the fundamental, 5 Hz apart. Strike nearer the middle, damp the other notes, and compare three strikes.',
  );
});
