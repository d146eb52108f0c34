import { describe, expect, it } from 'vitest';
import { type FromNotes, needNow, tunerNeed } from '../../../src/domain/rack/tuner-need';
import type { PanPitch } from '../../../src/domain/tuning/pan-pitch';
import { cents, instant } from '../../../src/domain/tuning/units';
import { type ResultSketch, resultSample, wholeLead } from '../rounds/result-sample';
import { day } from '../rounds/round-sample';

const from29 = (value: number): FromNotes => ({ cents: cents(value), from: 29 });
const pitchOf = (pitch: PanPitch | null): FromNotes | null =>
  pitch && { cents: pitch.cents, from: pitch.notes.length };

const needOf = (
  fundamentals: Readonly<Record<number, number>>,
  marks: ResultSketch['marks'] = {},
  drift: FromNotes | null = null,
) => {
  const result = resultSample(
    wholeLead((note) => ({ fundamental: fundamentals[note] ?? 0, octave: 0 })),
    { marks },
  );
  return tunerNeed({ notes: result.notes, panPitch: pitchOf(result.panPitch), drift });
};
const kinds = ({ reasons }: { readonly reasons: readonly { readonly kind: string }[] }) =>
  reasons.map(({ kind }) => kind);

describe('the need of the tuner', () => {
  it('is nothing for a pan in tune', () => {
    expect(needOf({})).toEqual({ need: 0, reasons: [] });
  });

  it('names the notes, the heaviest reason first', () => {
    const need = needOf({ 60: -14, 62: 15, 64: 40 }, { 65: 'cracked', 67: 'buzzing' });
    expect(kinds(need)).toEqual(['cracked', 'avoid', 'out', 'buzzing']);
    expect(need.reasons[0]).toEqual({ kind: 'cracked', notes: [65] });
    expect(need.reasons[2]).toEqual({ kind: 'out', notes: [60, 62] });
    // By the table of weights: 40 + 10 + 2 · 4 + 3.
    expect(need.need).toBeCloseTo(61, 9);
  });

  it('does not count a dead note twice', () => {
    expect(kinds(needOf({ 60: 60 }, { 60: 'dead' }))).toEqual(['dead']);
  });

  it('grows with a pan that has moved as a whole, and with the drift since the round before', () => {
    const flat = tunerNeed({ notes: [], panPitch: from29(-17), drift: from29(3.5) });
    expect(flat.reasons).toEqual([
      { kind: 'pan-pitch', cents: -17, from: 29 },
      { kind: 'drift', cents: 3.5, from: 29 },
    ]);
    expect(flat.need).toBeCloseTo(12 + 2.5, 9);
    // Less than 3 cents is not told, "notes moved 1 cent" helps nobody.
    expect(tunerNeed({ notes: [], panPitch: from29(4), drift: from29(2.9) })).toEqual({
      need: 0,
      reasons: [],
    });
    expect(tunerNeed({ notes: [], panPitch: from29(90), drift: null }).need).toBe(20);
  });

  it('ranks pans as a tuner would: a crack, then dead notes, then many notes out, then few', () => {
    // Common practice, no source.
    const pans = [
      needOf({}, { 60: 'cracked' }),
      needOf({}, { 60: 'dead' }),
      needOf({ 60: 14, 62: 14, 64: -14, 65: -14 }),
      needOf({ 60: 14 }),
      needOf({}, { 60: 'buzzing' }),
      needOf({ 60: 8 }),
    ].map(({ need }) => need);
    expect([...pans].sort((one, other) => other - one)).toEqual(pans);
    expect(new Set(pans).size).toBe(pans.length);
  });

  it('grows with the time since the last round, from half a year on', () => {
    const now = instant(1000 * day);
    const card = (daysAgo: number | null) => ({
      need: 4,
      reasons: [],
      lastRoundAt: daysAgo === null ? null : instant(now - daysAgo * day),
    });
    expect(needNow(card(100), now)).toEqual({ need: 4, reasons: [] });
    expect(needNow(card(240), now).need).toBeCloseTo(6, 9);
    expect(kinds(needNow(card(240), now))).toEqual(['old-round']);
    expect(needNow(card(5000), now).need).toBeCloseTo(10, 9);
    expect(kinds(needNow(card(null), now))).toEqual(['never-read']);
  });
});
