import { describe, expect, it } from 'vitest';
import type { LeaveReason, SuggestedBlows } from '../../../../src/domain/advice/advice';
import type { ProfessionalReason } from '../../../../src/domain/advice/beyond-limits';
import { cents, midiNote } from '../../../../src/domain/tuning/units';
import {
  adviceTitle,
  blowsWords,
  disturbsWords,
  expectedWords,
  leaveWords,
  professionalWords,
  reasonWords,
  riskWords,
} from '../../../../src/ui/words/measuring/advice-words';

const square = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;
const ends: SuggestedBlows = {
  kind: 'blows',
  aim: 'mend',
  place: 'long-ends',
  side: 'above',
  firmness: 'light',
  count: 3,
  gain: 4,
  doubt: 1,
  overshoot: 0.1,
  worsening: 2.2,
  harm: -3,
  expected: {
    mean: [4, 6, 0.2],
    covariance: square,
    doubt: square,
    interval90: [
      [1, 7],
      [2, 10],
      [-2, 2],
    ],
  },
  off: [
    { partial: 'fundamental', cents: cents(-12) },
    { partial: 'octave', cents: cents(-8) },
  ],
  disturbs: [
    { kind: 'neighbour', note: midiNote(79), border: 0.3 },
    { kind: 'ring-partner', note: midiNote(86), own: 'octave' },
  ],
};

describe('a suggestion', () => {
  it('says what, why, what to expect, at what risk, and what it may disturb by name', () => {
    expect(blowsWords(ends)).toBe('3 light blows: ends of the long axis, from above');
    expect(reasonWords(ends, null, 0)).toBe(
      'The fundamental and the octave are flat. Blows here raise the fundamental and the octave. So says the trade; this pan has shown nothing here yet.',
    );
    expect(expectedWords(ends, null)).toBe(
      'fundamental +4 (+1 to +7), octave +6 (+2 to +10), third partial 0 (−2 to +2)',
    );
    expect(riskWords(ends)).toBe(
      'About 2 times in 20 it goes too far. At the worst a partial ends 3 cents further off.',
    );
    expect(disturbsWords(ends)).toBe('neighbours G5; D6, which ring along');
  });

  it('says that a single light blow is there to learn, and how often the pan has shown it', () => {
    const one: SuggestedBlows = { ...ends, aim: 'try', count: 1 };
    expect(blowsWords(one)).toBe('one light blow: ends of the long axis, from above');
    expect(reasonWords(one, null, 1)).toContain('One light blow shows what this place does');
    expect(reasonWords(one, null, 4)).toContain('4 sets');
    expect(reasonWords({ ...one, count: 3 }, null, 1)).toContain('A few light blows show what');
  });

  it('says of a first step that it does not help by itself', () => {
    const first: SuggestedBlows = { ...ends, aim: 'prepare' };
    expect(adviceTitle(first)).toBe('First of two steps');
    expect(reasonWords(first, null, 2)).toContain(
      'By itself it makes nothing better. It makes room for the next step, which should help.',
    );
  });

  it('names flat and sharp partials apart', () => {
    const mixed: SuggestedBlows = {
      ...ends,
      off: [
        { partial: 'fundamental', cents: cents(-12) },
        { partial: 'third', cents: cents(14) },
      ],
    };
    expect(reasonWords(mixed, null, 0)).toContain(
      'The fundamental is flat and the third partial is sharp.',
    );
  });
});

describe('a note that is not to be hammered', () => {
  const leaves: readonly LeaveReason[] = [
    { kind: 'dead' },
    { kind: 'not-settled' },
    { kind: 'walking', centsPerStrike: cents(-1) },
    { kind: 'octave-open' },
    { kind: 'aligned' },
    { kind: 'high-note', cents: cents(1.6) },
    { kind: 'no-help', sets: 3 },
    { kind: 'nothing-helps' },
    { kind: 'too-unsure' },
  ];
  const professionals: readonly ProfessionalReason[] = [
    { kind: 'cracked', note: midiNote(74) },
    { kind: 'far-off', cents: cents(-62) },
    { kind: 'no-octave' },
    { kind: 'choked', decaySeconds: 0.1, usualSeconds: 0.5 },
    { kind: 'falling', centsPerStrike: cents(-0.8) },
  ];

  it('has a sentence of its own for every reason', () => {
    const sentences = [...leaves.map(leaveWords), ...professionals.map(professionalWords)];
    expect(new Set(sentences).size).toBe(sentences.length);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });
});
