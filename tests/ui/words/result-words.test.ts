import { describe, expect, it } from 'vitest';
import { roundChanges } from '../../../src/domain/rounds/round-changes';
import { changeLabel, changeNoteMark } from '../../../src/ui/parts/result/change-note-mark';
import {
  changedPartials,
  changeLine,
  panShiftWords,
  signedChange,
  standingChange,
  temperatureWords,
} from '../../../src/ui/words/change-words';
import {
  againstBandWords,
  beatWords,
  conditionWords,
  headlineWords,
  quickGroups,
  signWords,
  spreadWords,
} from '../../../src/ui/words/result-words';
import { resultSample, wholeLead } from '../../domain/rounds/result-sample';

const standings = { good: 0, playable: 0, out: 0, avoid: 0, unread: 0 };

describe('the words of a result', () => {
  it('begin with what stands in the way of playing the pan', () => {
    expect(headlineWords({ ...standings, good: 24, out: 3, avoid: 2 })).toEqual({
      big: '2 to avoid, 3 out',
      small: '29 heard',
    });
    expect(headlineWords({ ...standings, good: 20, playable: 9 }).big).toBe('playable');
    expect(headlineWords({ ...standings, good: 29 })).toEqual({
      big: 'good',
      small: 'all 29 notes',
    });
    expect(headlineWords({ ...standings, good: 5, unread: 24 }).small).toBe('5 of 29 heard');
    expect(headlineWords({ ...standings, unread: 29 }).big).toBe('not heard');
  });

  it('say the pan pitch against the band with its direction, and how far the notes spread', () => {
    const { panPitch, a4 } = resultSample(wholeLead((_, k) => ({ fundamental: 6 + (k % 3) - 1 })));
    if (!panPitch) throw new Error('no pan pitch');
    expect(againstBandWords(panPitch, a4).replaceAll('\u00a0', ' ')).toBe(
      '6 cents sharp of the band (A = 440 Hz)',
    );
    expect(spreadWords(panPitch)).toBe('Spread 1 cent.');
    const flat = resultSample(wholeLead(() => ({ fundamental: -1 }))).panPitch;
    if (!flat) throw new Error('no pan pitch');
    expect(againstBandWords(flat, a4)).toMatch(/^1 cent flat of the band/);
    const right = resultSample(wholeLead(() => ({ fundamental: 0.3 }))).panPitch;
    if (!right) throw new Error('no pan pitch');
    expect(againstBandWords(right, a4)).toMatch(/^right on the band/);
  });

  it('name both notes of ring partners, and how fast they beat', () => {
    // D4's octave 9 cents below D5: 587.33 Hz - 587.33 Hz * 2^(-9/1200) = 3.05 Hz.
    const { beats } = resultSample([
      { note: 74, fundamental: 0 },
      { note: 62, octave: -9 },
    ]);
    const [first] = beats;
    if (!first) throw new Error('no beats');
    expect(beatWords(first)).toEqual({
      who: 'D4 and D5',
      how: 'octave of D4 against D5',
      apart: '9 cents',
      beats: '3.0 beats a second',
    });
  });

  it('explain only the signs that are on the map', () => {
    expect(signWords(['−9', 'dead', ''])).toBe('Numbers: cents of the fundamental.');
    expect(signWords(['8ve −9', '15th +4'])).toBe(
      '8ve: of the octave. 15th: of the double octave.',
    );
    expect(signWords(['', 'dead'])).toBe('');
  });

  it('sort the notes of a quick round by what one strike could say, worst first', () => {
    const result = resultSample(
      [
        { note: 60, fundamental: -20, strikes: 1 },
        { note: 62, fundamental: 28, strikes: 1 },
        { note: 64, fundamental: 7, strikes: 1 },
        { note: 65, fundamental: 1, strikes: 1 },
      ],
      { way: 'quick' },
    );
    expect(
      quickGroups(result).map(({ kind, notes }) => [kind, ...notes.map((n) => n.note)]),
    ).toEqual([
      ['out', 62, 60],
      ['three-strikes', 64],
      ['fine', 65],
    ]);
  });

  it('say how the pan stood, and nothing where nobody knew', () => {
    expect(conditionWords({ standing: 'sun', temperature: -3.5 })).toBe(
      'The pan was in the sun or warm. Air −3.5 °C.',
    );
    expect(conditionWords({ standing: null, temperature: null })).toBe('');
  });
});

describe('the words of what changed', () => {
  const before = resultSample(
    wholeLead(() => ({ fundamental: 1, third: 0 })),
    {
      conditions: { temperature: 24 },
    },
  );
  const now = resultSample(
    wholeLead((note) => ({
      fundamental: 4 + (note === 62 ? -16 : 0),
      octave: note === 62 ? 5 : 0,
      third: note === 74 ? -20 : 0,
    })),
    { day: 30, conditions: { temperature: 31 } },
  );
  const changes = roundChanges(before, now);
  const of = (note: number) => changes.notes.find((each) => each.note === note);

  it('tell the whole pan from single notes', () => {
    expect(panShiftWords(changes)).toBe('The whole pan rose 3 cents, give or take 1.');
    expect(panShiftWords(roundChanges(before, before))).toBe('The pan as a whole has not changed.');
    expect(panShiftWords({ ...changes, panShift: null })).toMatch(/^Too few notes/);
    expect(temperatureWords(changes)).toBe('24 °C then, 31 °C now.');
  });

  it('name the partials that changed by themselves, most first, and the standings', () => {
    const d4 = of(62);
    if (!d4) throw new Error('no D4');
    expect(changeLine(changedPartials(d4, 'double-octave'))).toBe('fundamental −16, octave +5');
    expect(standingChange(d4)).toBe('good before, playable now');
    expect(changeNoteMark(d4, 'double-octave')).toEqual({
      text: '−16',
      shape: 'filled',
      tone: 'low',
    });
    expect(changeNoteMark(of(74), 'double-octave').text).toBe('15th −20');
  });

  it('say "no change" when a difference is smaller than it is uncertain', () => {
    expect(changeNoteMark(of(65), 'double-octave')).toEqual({
      text: '',
      shape: 'outline',
      tone: 'plain',
    });
    expect(changeLabel('F4', of(65), 'double-octave')).toBe('F4: no change');
    expect(changeLabel('F4', undefined, null)).toBe('F4: not heard in both rounds');
  });

  it('never show a sure change as nothing', () => {
    expect([0.42, -0.42, 0.6, -12.4].map(signedChange)).toEqual(['+0.4', '−0.4', '+1', '−12']);
  });
});
