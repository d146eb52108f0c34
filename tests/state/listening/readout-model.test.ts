import { describe, expect, it } from 'vitest';
import type { Heard, RingingLine } from '../../../src/domain/measurement/strike';
import { decibels, hertz, midiNote, seconds } from '../../../src/domain/tuning/units';
import { createReadoutModel } from '../../../src/state/listening/readout-model';
import { type StrikeSketch, strikeSample } from '../../domain/reading/strike-sample';

/** The line of the note an octave below the sample, 3 cents sharp of half its frequency. */
const below: RingingLine = {
  hz: hertz((587.33 / 2) * 2 ** (3 / 1200)),
  levelDb: decibels(-25),
  note: null,
  partial: null,
};

function listening(...heard: Heard[]) {
  const told: (number | null)[] = [];
  const model = createReadoutModel(() => told.push(model.expected.value));
  model.startAnew();
  for (const one of heard) model.hear(one);
  return { model, told };
}
const withLineBelow = (sketch: StrikeSketch = {}) => ({
  ...strikeSample(sketch),
  alsoRinging: [below],
});

describe('the octave put right by one tap', () => {
  it('shows the reading an octave higher at once, at the cents of its octave', () => {
    const { model, told } = listening(strikeSample({ fundamental: -9, octave: 4 }));
    model.correctOctave(1);
    expect(model.phase.value).toMatchObject({ kind: 'heard', reading: { note: 86 } });
    const { phase } = model;
    expect(phase.value.kind === 'heard' && phase.value.reading.fundamental.cents).toBeCloseTo(-5);
    expect(told).toEqual([86]);
  });

  it('keeps three agreeing strikes settled', () => {
    const { model } = listening(...[1, 2, 3].map((event) => strikeSample({ event })));
    model.correctOctave(1);
    expect(model.phase.value).toMatchObject({ kind: 'settled', reading: { note: 86 } });
  });

  it('goes on with the next strike of the note in its right octave', () => {
    const { model } = listening(strikeSample({ event: 1 }));
    model.correctOctave(1);
    model.hear(strikeSample({ event: 2, note: 86 }));
    expect(model.phase.value).toMatchObject({ reading: { note: 86, strikes: { length: 2 } } });
  });

  it('shows the reading an octave lower if a line was heard there', () => {
    const { model } = listening(withLineBelow());
    model.correctOctave(-1);
    expect(model.phase.value).toMatchObject({ kind: 'heard', reading: { note: 62 } });
    expect(model.expected.value).toBe(62);
  });

  it('does not hold that unsure first look against the strikes after it', () => {
    const { model } = listening(withLineBelow());
    model.correctOctave(-1);
    model.hear(strikeSample({ event: 2, note: 62, fundamental: -12 }));
    expect(model.phase.value).toMatchObject({
      kind: 'heard',
      reading: { note: 62, strikes: { length: 1 }, fundamental: { cents: -12 } },
    });
  });

  it('asks for a new strike if no line was heard there', () => {
    const { model } = listening(strikeSample());
    model.correctOctave(-1);
    expect(model.phase.value.kind).toBe('listening');
    expect(model.expected.value).toBe(midiNote(62));
  });

  it('can be taken back', () => {
    const { model } = listening(strikeSample({ octave: null }));
    model.correctOctave(1);
    expect(model.phase.value.kind).toBe('listening');
    model.correctOctave(-1);
    expect(model.expected.value).toBe(74);
  });

  it('stays when the ear comes late with the old octave of the same strike', () => {
    const { model } = listening(strikeSample({ event: 4, provisional: true }));
    model.correctOctave(1);
    model.hear(strikeSample({ event: 4, fundamental: 1 }));
    expect(model.phase.value).toMatchObject({ kind: 'heard', reading: { note: 86 } });
    model.hear({
      kind: 'refused',
      event: 4,
      at: seconds(4),
      reason: 'wrong-note',
      note: midiNote(74),
      candidates: [midiNote(74)],
    });
    expect(model.phase.value).toMatchObject({ kind: 'heard', reading: { note: 86 } });
  });

  it('stays when the ear asks late which note that strike was', () => {
    const { model } = listening(strikeSample({ event: 4, provisional: true }));
    model.correctOctave(1);
    model.hear({
      kind: 'refused',
      event: 4,
      at: seconds(4),
      reason: 'which-note',
      note: null,
      candidates: [midiNote(74), midiNote(86)],
    });
    expect(model.phase.value).toMatchObject({ kind: 'heard', reading: { note: 86 } });
  });

  it('still refuses the next strike of another note', () => {
    const { model } = listening(strikeSample({ event: 1 }));
    model.correctOctave(1);
    const wrong = { kind: 'refused', event: 2, at: seconds(2), reason: 'wrong-note' } as const;
    model.hear({ ...wrong, note: midiNote(74), candidates: [midiNote(74)] });
    expect(model.phase.value).toMatchObject({ reason: 'wrong-note', held: { note: 86 } });
  });
});
