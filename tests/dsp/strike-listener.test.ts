import { describe, expect, it } from 'vitest';
import { frequencyOf } from '../../src/domain/tuning/equal-temperament';
import { parseNote } from '../../src/domain/tuning/note-names';
import { hertz, type MidiNote } from '../../src/domain/tuning/units';
import {
  leadNote,
  placed,
  seeded,
  shifted,
  speechLikeNoise,
  struckSound,
  woodenKnock,
} from '../synthetic-sounds/sounds';
import { anyNote, everythingHeard, finallyHeard, onlyStrike } from './listen-to';

const note = (name: string): MidiNote => {
  const parsed = parseNote(name);
  if (parsed === null) throw new Error(`no note ${name}`);
  return parsed;
};
const target = (name: string): number => frequencyOf(note(name));
const alone = (samples: Float32Array, sampleRate: number, seconds = 2.2) =>
  placed([{ at: 0.3, samples }], { sampleRate, seconds });

const d5 = { target: target('D5'), fundamental: -9, octave: -5, third: 1, thirdTimes: 4 } as const;

describe('the ear', () => {
  for (const sampleRate of [44100, 48000, 96000]) {
    it(`measures each partial of a D5 by itself at ${sampleRate} Hz`, () => {
      const strike = onlyStrike(alone(leadNote(d5, sampleRate), sampleRate), sampleRate);
      expect(strike.note).toBe(note('D5'));
      expect(Math.abs(strike.fundamental.cents + 9)).toBeLessThan(0.2);
      expect(Math.abs((strike.octave?.centsFromOwn ?? 99) + 5)).toBeLessThan(0.2);
      expect(strike.third?.kind).toBe('double-octave');
      expect(Math.abs((strike.third?.centsFromOwn ?? 99) - 1)).toBeLessThan(0.5);
    });
  }

  it('gives a first verdict of the same event before the settled one', () => {
    const heard = everythingHeard(alone(leadNote(d5, 48000), 48000), 48000);
    expect(heard.map((each) => each.kind === 'strike' && each.provisional)).toEqual([true, false]);
    expect(new Set(heard.map((each) => each.event)).size).toBe(1);
    const [first] = heard;
    if (first?.kind !== 'strike') throw new Error('no strike');
    expect(Math.abs(first.fundamental.cents + 9)).toBeLessThan(1.5);
  });

  it('finds the twelfth where that is the third partial', () => {
    const truth = { ...d5, third: -12, thirdTimes: 3 } as const;
    const strike = onlyStrike(alone(leadNote(truth, 48000), 48000), 48000);
    expect(strike.third?.kind).toBe('twelfth');
    expect(Math.abs((strike.third?.centsFromOwn ?? 99) + 12)).toBeLessThan(0.5);
  });

  it('reports no third where there is none', () => {
    const partials = [
      { hz: 440, amplitude: 0.3, decay: 0.4, rise: 0.002 },
      { hz: 880, amplitude: 0.2, decay: 0.3, rise: 0.02 },
    ];
    const sound = struckSound(partials, { sampleRate: 48000, seconds: 1.5, glide: 0 });
    expect(onlyStrike(alone(sound, 48000), 48000).third).toBeNull();
  });

  it('is wrong by the strongest line and by the lowest line, and takes neither', () => {
    // A4 struck: its octave is 9 dB stronger and blooms late, A3 rings along from below.
    const partials = [
      { hz: 440, amplitude: 0.1, decay: 0.35, rise: 0.002 },
      { hz: 880, amplitude: 0.28, decay: 0.35, rise: 0.03 },
      { hz: 220, amplitude: 0.06, decay: 0.5, rise: 0.08 },
      { hz: 1760, amplitude: 0.05, decay: 0.2, rise: 0.01 },
    ];
    const sound = struckSound(partials, { sampleRate: 48000, seconds: 1.5, glide: 0 });
    const strike = onlyStrike(alone(sound, 48000), 48000);
    expect(strike.note).toBe(note('A4'));
    expect(strike.alsoRinging.map((line) => line.note)).toContain(note('A3'));
  });

  it('names all twelve outer notes of a lead without a hint', () => {
    for (let midi = 60; midi < 72; midi++) {
      const hz = frequencyOf(midi as MidiNote);
      const sound = leadNote(
        { target: hz, fundamental: 3, octave: -2, third: 4, thirdTimes: 4 },
        48000,
      );
      expect(onlyStrike(alone(sound, 48000), 48000).note).toBe(midi);
    }
  });

  it('refuses another note than the expected one by its name', () => {
    const [heard] = finallyHeard(alone(leadNote(d5, 48000), 48000), 48000, {
      ...anyNote,
      expected: note('G4'),
    });
    expect(heard).toMatchObject({ kind: 'refused', reason: 'wrong-note', note: note('D5') });
  });

  it('calls a wooden knock a knock', () => {
    const heard = finallyHeard(alone(woodenKnock(48000), 48000, 1.5), 48000);
    expect(heard.map((each) => each.kind)).toEqual(['knock']);
  });

  it('hears nothing in silence and no strike in speech', () => {
    expect(everythingHeard(new Float32Array(96000), 48000)).toEqual([]);
    const speech = placed([{ at: 0.2, samples: speechLikeNoise(48000, 6) }], {
      sampleRate: 48000,
      seconds: 7,
    });
    expect(everythingHeard(speech, 48000).filter((each) => each.kind === 'strike')).toEqual([]);
  });

  it('refuses a clipped strike as too loud', () => {
    const clipped = leadNote(d5, 48000).map((value) => Math.max(-1, Math.min(1, 5 * value)));
    expect(finallyHeard(alone(clipped, 48000), 48000)).toMatchObject([
      { kind: 'refused', reason: 'too-loud' },
    ]);
  });

  it('refuses a strike from which the phone lost ten milliseconds', () => {
    const sound = leadNote(d5, 44100);
    sound.fill(0, 13_000, 13_441);
    const whole = alone(sound, 44100);
    whole.fill(0, Math.round(0.3 * 44100) + 13_000, Math.round(0.3 * 44100) + 13_441);
    expect(finallyHeard(whole, 44100)).toMatchObject([{ kind: 'refused', reason: 'lost-audio' }]);
  });

  it('takes the end of a hole after a strike for no strike', () => {
    for (const after of [0.65, 0.8, 1.0, 1.2]) {
      const whole = alone(leadNote(d5, 44100), 44100, 3);
      const hole = Math.round((0.3 + after) * 44100);
      whole.fill(0, hole, hole + 441);
      expect(finallyHeard(whole, 44100).map((each) => each.kind)).toEqual(['strike']);
    }
  });

  it('hears a strike right after a hole in the quiet', () => {
    const whole = placed([{ at: 1, samples: leadNote(d5, 44100) }], {
      sampleRate: 44100,
      seconds: 3,
    });
    whole.fill(0, 44100 - 500, 44100 - 59);
    expect(finallyHeard(whole, 44100).map((each) => each.kind)).toEqual(['strike']);
  });

  it('hears every strike of a note struck again while it rings', () => {
    const sound = leadNote(d5, 48000);
    const whole = placed(
      [0.3, 1.2, 2.1].map((at) => ({ at, samples: sound })),
      { sampleRate: 48000, seconds: 4 },
    );
    const heard = finallyHeard(whole, 48000);
    expect(heard.map((each) => each.kind)).toEqual(['strike', 'strike', 'strike']);
  });

  it('calls a roll too fast', () => {
    // The stick itself makes a short noise, above the notes.
    const random = seeded(9);
    const stick = Float32Array.from(
      { length: 200 },
      (_, n) => 0.3 * (random() - 0.5) * Math.exp(-n / 60),
    );
    const sound = leadNote(d5, 48000);
    const whole = placed(
      [0.3, 0.46, 0.62, 0.78].flatMap((at) => [
        { at, samples: sound },
        { at, samples: stick },
      ]),
      { sampleRate: 48000, seconds: 3 },
    );
    const reasons = finallyHeard(whole, 48000).map((each) =>
      each.kind === 'refused' ? each.reason : each.kind,
    );
    expect(reasons.slice(0, 3)).toEqual(['too-fast', 'too-fast', 'too-fast']);
  });

  it('does not mind loudness, polarity, delay or the size of blocks', () => {
    const sound = alone(leadNote(d5, 48000), 48000);
    const reference = onlyStrike(sound, 48000).fundamental;
    const variants = [
      sound.map((value) => 0.2 * value),
      sound.map((value) => -value),
      placed([{ at: 0.7123, samples: leadNote(d5, 48000) }], { sampleRate: 48000, seconds: 2.6 }),
      sound.map((value) => value + 0.01),
    ];
    for (const variant of variants) {
      const { cents } = onlyStrike(variant, 48000).fundamental;
      expect(Math.abs(cents - reference.cents)).toBeLessThan(0.1);
    }
    const small = everythingHeard(sound, 48000, anyNote, 100);
    expect(small).toEqual(everythingHeard(sound, 48000, anyNote, 4096));
  });

  it('survives any samples', () => {
    const random = seeded(5);
    const odd: Float32Array[] = [
      new Float32Array(0),
      new Float32Array(1).fill(1),
      new Float32Array(60_000).fill(Number.NaN),
      new Float32Array(60_000).fill(Number.POSITIVE_INFINITY),
      Float32Array.from({ length: 60_000 }, (_, n) => (n % 100 < 50 ? 1 : -1)),
      Float32Array.from({ length: 60_000 }, () => 1e30 * (random() - 0.5)),
    ];
    for (const samples of odd) {
      expect(everythingHeard(samples, 48000).filter((each) => each.kind === 'strike')).toEqual([]);
    }
  });
});

describe('published notes played as synthetic sound', () => {
  it('gives the partials 1 : 1.98 : 2.97 of a published pan note as −17.4 and −17.4 cents', () => {
    // Hansen, Rossing, Mannette, George, MRS Bulletin 20(3), 44, 1995: ratios to three digits.
    const hz = 293.7;
    const partials = [
      { hz, amplitude: 0.3, decay: 0.35, rise: 0.002 },
      { hz: 1.98 * hz, amplitude: 0.2, decay: 0.3, rise: 0.02 },
      { hz: 2.97 * hz, amplitude: 0.1, decay: 0.25, rise: 0.01 },
    ];
    const sound = struckSound(partials, { sampleRate: 48000, seconds: 1.6, glide: 10 });
    const strike = onlyStrike(alone(sound, 48000), 48000);
    expect(Math.abs((strike.octave?.centsFromOwn ?? 99) + 17.4)).toBeLessThan(0.3);
    expect(strike.third?.kind).toBe('twelfth');
    expect(Math.abs((strike.third?.centsFromOwn ?? 99) + 17.4)).toBeLessThan(0.3);
  });

  it('gives the notes of a published list of a player’s pan within 0.3 cent', () => {
    // Piano technicians' mailing list, June 1996: octave and (fourth) partial against the own
    // fundamental, cents; the whole pan 21–27 cents sharp of A440.
    const list = [
      { name: 'C5', sharp: 21, octave: -2.1, fourth: -1.2 },
      { name: 'G5', sharp: 24, octave: 3.0, fourth: 2.0 },
      { name: 'C6', sharp: 27, octave: -4.6, fourth: -2.3 },
    ];
    for (const { name, sharp, octave, fourth } of list) {
      const own = shifted(target(name), sharp);
      const partials = [
        { hz: own, amplitude: 0.3, decay: 0.35, rise: 0.002 },
        { hz: shifted(2 * own, octave), amplitude: 0.2, decay: 0.3, rise: 0.02 },
        { hz: shifted(4 * own, fourth), amplitude: 0.1, decay: 0.2, rise: 0.01 },
      ];
      const sound = struckSound(partials, { sampleRate: 48000, seconds: 1.6, glide: 10 });
      const strike = onlyStrike(alone(sound, 48000), 48000);
      expect(strike.note).toBe(note(name));
      expect(Math.abs(strike.fundamental.cents - sharp)).toBeLessThan(0.3);
      expect(Math.abs((strike.octave?.centsFromOwn ?? 99) - octave)).toBeLessThan(0.3);
      expect(Math.abs((strike.third?.centsFromOwn ?? 99) - fourth)).toBeLessThan(0.3);
    }
  });

  it('moves all cents by −7.851 when the band tunes to 442 Hz', () => {
    // 1200·log2(442/440) = 7.851 cents (arithmetic; listed in many tuning tables).
    const sound = alone(leadNote(d5, 48000), 48000);
    const at440 = onlyStrike(sound, 48000).fundamental.cents;
    const at442 = onlyStrike(sound, 48000, { ...anyNote, a4: hertz(442) }).fundamental.cents;
    expect(at440 - at442).toBeCloseTo(7.851, 3);
  });
});
