import { describe, expect, it } from 'vitest';
import { cents } from '../../src/domain/tuning/units';
import { routeOf } from '../../src/ui/route';
import { microphoneWords, signedCents, verdictWords, wrongNoteWords } from '../../src/ui/words';

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

describe('the address', () => {
  it('leads to the rack when it is unknown', () => {
    expect(routeOf('#/listen')).toBe('listen');
    expect(routeOf('#/elsewhere')).toBe('rack');
    expect(routeOf('')).toBe('rack');
  });
});
