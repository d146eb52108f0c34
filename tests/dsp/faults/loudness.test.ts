import { describe, expect, it } from 'vitest';
import {
  loudnessOf,
  loudPeakDb,
  softOverRoomDb,
  softPeakDb,
} from '../../../src/dsp/faults/loudness';

const sampleRate = 48000;
const onset = 4800;
const level = (db: number): number => 10 ** (db / 20);

/** A fading tone that starts at `onset`, its first crest at `peakDb`. */
function toneAt(peakDb: number): Float32Array {
  return Float32Array.from({ length: 28_800 }, (_, n) => {
    const time = (n - onset) / sampleRate;
    return time < 0
      ? 0
      : level(peakDb) * Math.cos(2 * Math.PI * 500 * time) * Math.exp(-time / 0.25);
  });
}

const grade = (peakDb: number, roomDb: number) =>
  loudnessOf(toneAt(peakDb), onset, 28_800, sampleRate, roomDb);

describe('the loudness of a strike', () => {
  it('is good in the device’s range, well over the room', () => {
    for (const peakDb of [-6, -20, -35]) expect(grade(peakDb, peakDb - 40)).toBe('good');
  });

  it('is loud from the limit on, in any room', () => {
    expect(grade(loudPeakDb + 0.2, -90)).toBe('loud');
    expect(grade(loudPeakDb + 0.2, -10)).toBe('loud');
    expect(grade(loudPeakDb - 0.2, -90)).toBe('good');
  });

  it('is soft below the quietest peak, even in silence', () => {
    expect(grade(softPeakDb - 0.2, -110)).toBe('soft');
    expect(grade(softPeakDb + 0.2, -110)).toBe('good');
  });

  it('is soft where it hardly stands over the room', () => {
    // The loudest 20 ms of this tone lie 3.0 dB (sine) and 0.3 dB (decay) below its first crest.
    const own = -20 - 3.35;
    expect(grade(-20, own - softOverRoomDb - 0.3)).toBe('good');
    expect(grade(-20, own - softOverRoomDb + 0.3)).toBe('soft');
  });

  it('does not look past the end of the sound', () => {
    const sound = toneAt(-20);
    sound.fill(1, onset + 2400);
    expect(loudnessOf(sound, onset, onset + 2400, sampleRate, -80)).toBe('good');
  });
});
