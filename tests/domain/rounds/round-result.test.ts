import { describe, expect, it } from 'vitest';
import { lowCLead } from '../../../src/domain/pans/layouts/low-c-lead';
import { roundResult } from '../../../src/domain/rounds/round-result';
import { usualTolerances } from '../../../src/domain/tuning/tolerances';
import { cents, hertz, midiNote } from '../../../src/domain/tuning/units';
import { gaussianFrom, seededRandom } from '../../../src/practice-pan/seeded-random';
import { leadNotes, resultSample, wholeLead } from './result-sample';
import { readingSample, startSample } from './round-sample';

const noteOf = (result: ReturnType<typeof resultSample>, note: number) => {
  const found = result.notes.find((each) => each.note === note);
  if (!found) throw new Error(`no note ${note}`);
  return found;
};

describe('the result of a round', () => {
  it('finds what was planted in every note, and the pan pitch, from noisy strikes', () => {
    const gaussian = gaussianFrom(seededRandom(20));
    const planted = 9;
    const truth = new Map(leadNotes.map((note) => [note, planted + 1.2 * gaussian()]));
    const moved = new Map([
      [62, -31],
      [70, -22],
      [79, 24],
    ]);
    const of = (note: number) => (truth.get(note) ?? 0) + (moved.get(note) ?? 0);
    const noise = () => [0, 1, 2].map(() => 0.25 * gaussian());
    const result = resultSample(
      wholeLead((note) => ({ fundamental: of(note), strikes: noise(), octave: null })),
    );
    for (const { note, againstBand } of result.notes) {
      expect(Math.abs((againstBand ?? Number.NaN) - of(note)), `${note}`).toBeLessThan(1);
    }
    const error = Math.abs((result.panPitch?.cents ?? Number.NaN) - planted);
    expect(error, `pan pitch off by ${error}`).toBeLessThan(0.5);
    expect(result.panPitch?.a4).toBeCloseTo(440 * 2 ** ((result.panPitch?.cents ?? 0) / 1200), 6);
    expect(result.worst.slice(0, 1).map(({ note }) => note)).toEqual([79]);
  });

  it('judges against the band, or against the pan where that is wanted', () => {
    const notes = wholeLead((note) => ({ fundamental: note === 64 ? 10 : 20, octave: 0 }));
    const band = resultSample(notes);
    expect(band.panPitch?.cents).toBeCloseTo(20, 3);
    expect(noteOf(band, 65)).toMatchObject({ standing: 'out', reason: { kind: 'off' } });
    expect(noteOf(band, 65).againstPan).toBeCloseTo(0, 3);
    const pan = resultSample(notes, { reference: 'pan' });
    expect(noteOf(pan, 65).standing).toBe('good');
    expect(noteOf(pan, 64).standing).toBe('playable');
    expect(pan.worst.map(({ note }) => note)).toEqual([64]);
  });

  it('judges against the band as long as too few notes are read for a pan pitch', () => {
    const result = resultSample([{ note: 60, fundamental: 20 }], { reference: 'pan' });
    expect(result).toMatchObject({ reference: 'band', panPitch: null });
    expect(noteOf(result, 60)).toMatchObject({ standing: 'out', againstPan: null });
  });

  it('counts notes, names the worst first, and leaves unread ones out of it', () => {
    const result = resultSample(
      [
        { note: 60, fundamental: 0 },
        { note: 62, fundamental: -14 },
        { note: 64, fundamental: 7 },
        { note: 65, octave: 20 },
        { note: 67, fundamental: 50 },
      ],
      { marks: { 69: 'dead', 71: 'skipped' } },
    );
    expect(result.standings).toEqual({ good: 1, playable: 1, out: 2, avoid: 2, unread: 23 });
    expect(result.worst.map(({ note }) => note)).toEqual([67, 69, 65, 62, 64]);
    expect(noteOf(result, 69)).toMatchObject({ reason: { kind: 'mark', mark: 'dead' } });
  });

  it('takes the newest of several readings of a note', () => {
    const start = startSample();
    const readings = [
      readingSample(start, { note: 60, fundamental: -8 }, 30),
      readingSample(start, { note: 60, fundamental: 20 }, 2),
    ];
    const { notes } = roundResult(
      { start, readings, marks: new Map(), layout: lowCLead, a4: hertz(440) },
      { limits: usualTolerances, reference: 'band' },
    );
    expect(notes[0]?.againstBand).toBeCloseTo(-8, 6);
  });

  it('follows the pan’s own A4 and its layout: offsets, thirds that are not wanted, notes taken off', () => {
    const sharper = 1200 * Math.log2(442 / 440);
    const [drum] = lowCLead.drums;
    if (!drum) throw new Error('no drum');
    const notes = drum.notes
      .filter((place) => place.note !== 61)
      .map((place) =>
        place.note === 60 ? { ...place, offset: cents(-6), third: 'none' as const } : place,
      );
    const layout = { ...lowCLead, drums: [{ ...drum, notes }] };
    const result = resultSample(
      [
        { note: 60, fundamental: sharper - 6, third: 60 },
        { note: 61, fundamental: 99 },
        { note: 62, fundamental: sharper },
        { note: 64, fundamental: sharper },
      ],
      { layout, a4: 442 },
    );
    expect(noteOf(result, 60)).toMatchObject({ standing: 'good' });
    expect(noteOf(result, 60).againstBand).toBeCloseTo(0, 6);
    expect(result.notes).toHaveLength(28);
    expect(result.panPitch?.cents).toBeCloseTo(0, 6);
  });

  it('lists ring partners that beat: 10 cents at C4 and C5 are 3.03 a second', () => {
    // Cents to beats at the octave partial of C4: 2 · 261.626 Hz · (2^(10/1200) − 1), by arithmetic.
    const result = resultSample([
      { note: 60, fundamental: 0, octave: 0 },
      { note: 72, fundamental: 10, octave: 1 },
      { note: 84, fundamental: 11, octave: null },
    ]);
    expect(result.beats).toHaveLength(1);
    expect(result.beats[0]?.beatHz).toBeCloseTo(3.03, 2);
    expect(result.beats[0]?.pair).toMatchObject({ low: { note: 60 }, high: { note: 72 } });
  });

  it('tells the note’s own octave from its partner’s, once that was measured by itself', () => {
    const lower = { note: 60, octave: 12, rival: 1 };
    const open = noteOf(resultSample([lower]), 60);
    expect(open).toMatchObject({ standing: 'good', reason: { kind: 'octave-open' } });
    const told = noteOf(resultSample([lower, { note: 72, fundamental: 11.5 }]), 60);
    expect(told.reason).toEqual({ kind: 'aligned' });
    expect(told.judged?.octave?.centsFromOwn).toBeCloseTo(1, 6);
    const other = noteOf(resultSample([lower, { note: 72, fundamental: 0.4 }]), 60);
    expect(other).toMatchObject({
      standing: 'playable',
      reason: { fault: { kind: 'octave-sharp' } },
    });
    const neither = noteOf(resultSample([lower, { note: 72, fundamental: 6.5 }]), 60);
    expect(neither.reason).toEqual({ kind: 'octave-open' });
  });

  it('is provisional on a pan that is known not to have settled', () => {
    const isProvisional = (standing: 'settled' | 'unloaded' | 'sun' | null) =>
      resultSample([], { conditions: { standing } }).isProvisional;
    expect(isProvisional('unloaded')).toBe(true);
    expect(isProvisional('sun')).toBe(true);
    expect(isProvisional('settled')).toBe(false);
    expect(isProvisional(null)).toBe(false);
  });

  it('keeps a walking note out of the pan pitch, and says that it walks', () => {
    const notes = wholeLead((note) =>
      note === 60 ? { strikes: [0, -1, -2, -3, -4] } : { fundamental: 5 },
    );
    const result = resultSample(notes);
    expect(noteOf(result, 60)).toMatchObject({ standing: 'avoid', reason: { kind: 'walking' } });
    expect(result.panPitch?.notes).toHaveLength(28);
  });

  it('of a quick round sorts the notes by what one strike can say', () => {
    const result = resultSample(
      wholeLead((note) => ({
        strikes: 1,
        octave: 0,
        fundamental: note === 62 ? -20 : note === 64 ? 8 : 1,
      })),
      { way: 'quick' },
    );
    const said = (verdict: string) =>
      result.notes.filter(({ quick }) => quick === verdict).map(({ note }) => note);
    expect(said('out')).toEqual([62]);
    expect(said('three-strikes')).toEqual([64]);
    expect(said('fine')).toHaveLength(27);
    expect(noteOf(resultSample([{ note: 60 }]), 60).quick).toBeNull();
  });

  it('of a round without readings has every note unread', () => {
    const result = resultSample([]);
    expect(result.standings.unread).toBe(29);
    expect(result).toMatchObject({ worst: [], beats: [], panPitch: null });
  });

  it('skips an octave partner that the pan does not have', () => {
    expect(noteOf(resultSample([{ note: 88, octave: 9, rival: 20 }]), midiNote(88)).standing).toBe(
      'good',
    );
  });
});
