import { describe, expect, it } from 'vitest';
import type { LeaveReason, SuggestedBlows } from '../../../../src/domain/advice/advice';
import type { ProfessionalReason } from '../../../../src/domain/advice/beyond-limits';
import {
  type FaultName,
  type TradeCase,
  tradeCases,
} from '../../../../src/domain/advice/trade-cases';
import { cents, instant, midiNote } from '../../../../src/domain/tuning/units';
import { noteListWords } from '../../../../src/ui/words/list-words';
import {
  adviceWords,
  disturbsWords,
  leaveWords,
  professionalWords,
  riskWords,
} from '../../../../src/ui/words/measuring/advice-words';
import { benchWords, effectSentence } from '../../../../src/ui/words/measuring/bench-words';
import {
  blowsWords,
  expectedWords,
  planWords,
  reasonWords,
} from '../../../../src/ui/words/measuring/blow-reasons';
import { blowsSoFar, handsWords, stepWords } from '../../../../src/ui/words/measuring/hands-words';
import {
  sourceWords,
  tradeFaultWords,
  tradePlacesWords,
  whatMovesWords,
} from '../../../../src/ui/words/measuring/what-moves-words';
import { answersWords } from '../../../../src/ui/words/tuner/answers-words';

const square = [
  [1, 0, 0],
  [0, 1, 0],
  [0, 0, 1],
] as const;
function caseOf(fault: FaultName): TradeCase {
  const found = tradeCases.find((each) => each.fault === fault);
  if (!found) throw new Error(fault);
  return found;
}

const wide3 = [112, -112, 112] as const;
const ends: SuggestedBlows = {
  kind: 'blows',
  step: caseOf('fundamental-and-octave-flat'),
  later: [],
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

describe('a suggestion', () => {
  it('says what, why, what to expect, at what risk, and what it may disturb by name', () => {
    expect(blowsWords(ends)).toBe('3 light blows: ends of the long axis, from above');
    expect(reasonWords(ends, null, 0)).toBe(
      'The fundamental and the octave are flat. The fundamental and the octave together must rise. So says the trade; this pan has shown nothing here yet.',
    );
    expect(expectedWords(ends, null)).toBe(
      'fundamental up 4 (+1 to +7), octave up 6 (+2 to +10), third partial hardly (−2 to +2)',
    );
    expect(riskWords(ends)).toBe(
      'About 2 times in 20 it goes too far. At the worst a partial ends 3 cents further off.',
    );
    expect(disturbsWords(ends)).toBe('neighbours G5; D6, which ring along');
  });

  it('says how often the pan has shown what blows do here', () => {
    expect(reasonWords(ends, null, 4)).toContain(
      'This pan has shown in 4 sets what blows do here.',
    );
  });

  it('says of blows that may go either way that this is to be found out', () => {
    const octave: SuggestedBlows = {
      ...ends,
      aim: 'try',
      place: 'glancing-long',
      count: 1,
      step: caseOf('octave-flat'),
      off: [{ partial: 'octave', cents: cents(-12) }],
    };
    expect(blowsWords(octave)).toBe('one light blow: glancing along the long axis, from above');
    expect(reasonWords(octave, null, 1)).toBe(
      'The octave is flat. The octave alone must rise. Nobody can know which way blows here move the octave. Then strike, and see.',
    );
  });

  it('says of a partial that is off only against the fundamental that it comes right by itself', () => {
    const corners: SuggestedBlows = {
      ...ends,
      step: caseOf('fundamental-flat'),
      off: [
        { partial: 'fundamental', cents: cents(-12) },
        { partial: 'octave', cents: cents(12) },
      ],
    };
    expect(reasonWords(corners, null, 0)).toContain(
      'The fundamental is flat and the octave is sharp. The fundamental alone must rise. The octave then is good again.',
    );
  });

  it('tells the whole plan where several steps are needed, and none where one is enough', () => {
    expect(planWords(ends, null)).toEqual([]);
    const two: SuggestedBlows = { ...ends, later: [caseOf('third-sharp')] };
    expect(planWords(two, null)).toEqual([
      'Step 1: the fundamental and the octave together must rise, ends of the long axis from above.',
      'Step 2: the third partial alone must fall, glancing along the short axis from above or from below.',
      'Strike after each step: what comes next may change.',
    ]);
  });
});

describe('every sentence of advice', () => {
  const sentencesOf = (text: string): readonly string[] =>
    text.split(/[.:;] ?/).filter((each) => each !== '');
  const wordCount = (sentence: string): number =>
    sentence.split(/\s+/).filter((word) => /[\p{L}\d]/u.test(word)).length;
  const notes = [73, 74, 75, 76, 77, 78, 79, 80].map(midiNote);
  const wide = [-112.4, 112.4] as const;

  it('has 25 words at the most', () => {
    const offs = [1, 2, 3, 4, 5, 6, 7].flatMap((which) =>
      [-1, 1].map((way) =>
        (['fundamental', 'octave', 'third'] as const)
          .filter((_, k) => which & (1 << k))
          .map((partial, k) => ({ partial, cents: cents(k % 2 ? way * 12 : -way * 12) })),
      ),
    );
    const longest = { third: { kind: 'double-octave' } } as unknown as Parameters<
      typeof reasonWords
    >[1];
    const said = tradeCases.flatMap((step) =>
      step.places.flatMap((where) =>
        offs.flatMap((off) =>
          (['mend', 'try'] as const).flatMap((aim) =>
            [0, 1, 20].flatMap((setsHere) => {
              const advice: SuggestedBlows = {
                ...ends,
                ...where,
                aim,
                step,
                off,
                later: [caseOf('octave-sharp'), caseOf('third-flat')],
                worsening: 99,
                expected: { ...ends.expected, mean: wide3, interval90: [wide, wide, wide] },
                disturbs: notes.map((note, k) =>
                  k < 6
                    ? { kind: 'neighbour', note, border: 0.3 }
                    : { kind: 'ring-partner', note, own: 'octave' },
                ),
              };
              return [
                blowsWords(advice),
                reasonWords(advice, longest, setsHere),
                ...planWords(advice, longest),
                `${adviceWords.expect}: ${expectedWords(advice, longest)}`,
                riskWords(advice),
                `${adviceWords.disturbs} ${disturbsWords(advice)}`,
              ];
            }),
          ),
        ),
      ),
    );
    const all = new Set(
      [
        ...said,
        ...leaves.map(leaveWords),
        ...professionals.map(professionalWords),
        adviceWords.undo,
        ...tradeCases.flatMap((each) => [
          tradeFaultWords(each),
          tradePlacesWords(each),
          sourceWords(each),
        ]),
        ...Object.values(whatMovesWords).flat(),
        ...Object.values(benchWords).flatMap((text) =>
          typeof text === 'string' ? [text] : Array.isArray(text) ? (text as string[]) : [],
        ),
        ...Object.values(answersWords).filter((text) => typeof text === 'string'),
        ...Object.values(handsWords).filter((text) => typeof text === 'string'),
        benchWords.cover(noteListWords(notes.slice(0, 2)), noteListWords(notes.slice(2, 4))),
        benchWords.ringing(noteListWords(notes.slice(0, 4))),
        handsWords.mayMove(noteListWords(notes)),
        effectSentence(
          [99, -99, 98].map((by, k) => ({
            partial: [0, 1, 2][k] as 0 | 1 | 2,
            cents: by,
            within: 1,
            isSure: true,
          })),
          longest,
        ),
        blowsSoFar({ at: instant(0), count: 12, logged: null }, 3),
        ...(['mend', 'try'] as const).map((aim) => stepWords({ ...ends, aim })),
      ].flatMap(sentencesOf),
    );
    expect(all.size).toBeGreaterThan(60);
    for (const sentence of all) expect(wordCount(sentence), sentence).toBeLessThanOrEqual(25);
  });
});

describe('a note that is not to be hammered', () => {
  it('has a sentence of its own for every reason', () => {
    const sentences = [...leaves.map(leaveWords), ...professionals.map(professionalWords)];
    expect(new Set(sentences).size).toBe(sentences.length);
    for (const sentence of sentences) expect(sentence).toMatch(/^[A-Z].*\.$/);
  });
});
