import { describe, expect, it } from 'vitest';
import { cents } from '../../../src/domain/tuning/units';
import {
  courseWords,
  pitchTrendWords,
  roundWords,
  unevennessTrendWords,
} from '../../../src/ui/words/history-words';
import { resultSample, wholeLead } from '../../domain/rounds/result-sample';

const trend = (centsPerYear: number, sigmaCents: number) => ({
  centsPerYear: cents(centsPerYear),
  sigmaCents: cents(sigmaCents),
});

describe('the drift of a pan in words', () => {
  it('has a direction and twice its standard error', () => {
    expect(pitchTrendWords(trend(-6.2, 1.4))).toBe(
      'The pan pitch drops 6 cents a year, give or take 3.',
    );
    expect(unevennessTrendWords(trend(4, 0.3))).toBe(
      'The notes drift apart: 4 cents a year, give or take 1.',
    );
    expect(unevennessTrendWords(trend(-4, 0.3))).toMatch(/^The notes come closer together/);
  });

  it('is not claimed where chance would do the same', () => {
    expect(pitchTrendWords(trend(2.6, 1.4))).toBe(
      'Too early to say whether the pan pitch drifts: 3 cents a year, give or take 3.',
    );
    expect(unevennessTrendWords(trend(1, 2))).toBe('The notes keep their places among themselves.');
  });

  it('is not given a number that is worth nothing', () => {
    expect(pitchTrendWords(trend(40, 50))).toMatch(/^Too few settled rounds/);
    expect(pitchTrendWords(null)).toMatch(/^Too few settled rounds/);
    expect(unevennessTrendWords(null)).toBe('');
  });
});

describe('a round in the list', () => {
  it('says how it was taken, the pan pitch, how many notes were out and whether to trust it', () => {
    const result = resultSample(
      wholeLead((note) => ({ fundamental: note === 62 ? -20 : note === 60 ? 40 : 5 })),
      { conditions: { standing: 'sun', temperature: 31 } },
    );
    const { found, asides } = roundWords(result);
    expect(found).toBe('2 notes out');
    expect(asides.replaceAll('\u00a0', ' ')).toBe(
      'guided round · A = 441.3 Hz (+5.0) · 31 °C · provisional',
    );
    expect(roundWords(resultSample(wholeLead(() => ({})))).found).toBe('none out');
  });
});

describe('the course of a value', () => {
  it('is told by its ends and the number of readings', () => {
    expect(courseWords([{ cents: 2.1 }, { cents: 0 }, { cents: -9.2 }])).toBe(
      'from +2.1 to −9.2 in 3 readings',
    );
    expect(courseWords([{ cents: 2.1 }])).toBe('+2.1 in one reading');
    expect(courseWords([])).toBe('not heard');
  });
});
