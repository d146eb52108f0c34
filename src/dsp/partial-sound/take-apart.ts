// Takes one strike apart into its partials: what can be seen and heard of each by itself.
import type { CutSound } from '../../domain/measurement/cut-sound';
import type { MeasuredPartial, Strike } from '../../domain/measurement/strike';
import type {
  PartInside,
  PartName,
  StrikeInside,
  TakeApart,
} from '../../domain/measurement/strike-inside';
import {
  type Cents,
  centsBetween,
  decibels,
  hertz,
  seconds,
  shiftedBy,
} from '../../domain/tuning/units';
import { equallyLoud, targetTone, together } from './equal-loudness';
import { followLine, momentsOf } from './follow-line';
import type { LineTrack } from './line-track';
import { soundOfTrack } from './sound-of-track';

/** The picture shows one moment for this many points of the track: every 10 ms (chosen, no source). */
const momentEvery = 10;
/**
 * Lines nearer than this are heard as one that beats, and stay together, Hz (chosen: what the longest filter
 * separates).
 */
const oneSoundHz = 20;
/** Left out at the end of the sound, where the filter would reach beyond it, s (chosen, no source). */
const marginSeconds = 0.04;

interface Part extends Omit<PartInside, 'course' | 'targetHz' | 'beatHz'> {
  readonly order: number;
}

export const takeApart: TakeApart = (strike, sound, onset) => {
  const { samples, sampleRate } = sound;
  const length = Math.max(0, samples.length / sampleRate - onset - marginSeconds);
  const parts = partsOf(strike);
  const tracks = new Map<PartName, LineTrack>(
    parts.map((part) => [part.name, trackOf(part, parts, strike, sound, onset, length)]),
  );
  const moments = parts.map(({ name }) => {
    const track = tracks.get(name);
    return track ? momentsOf(track, momentEvery) : [];
  });
  const loudest = Math.max(1e-9, ...moments.flat().map(({ amplitude }) => amplitude));
  const inside = parts.map(({ order: _, ...part }, k): PartInside => {
    const targetHz = shiftedBy(part.measured.hz, -part.cents);
    return {
      ...part,
      targetHz,
      beatHz: hertz(Math.abs(part.measured.hz - targetHz)),
      course: (moments[k] ?? []).map(({ at, hz, amplitude }) => ({
        at: seconds(at),
        cents: centsBetween(targetHz, hz),
        levelDb: decibels(20 * Math.log10(Math.max(amplitude / loudest, 1e-6))),
      })),
    };
  });
  const soundOf: StrikeInside['soundOf'] = (name, which, slower) => {
    const part = inside.find((each) => each.name === name);
    const track = tracks.get(name);
    if (!part || !track) return { samples: new Float32Array(0), sampleRate };
    const { targetHz, measured } = part;
    const alone = (): Float32Array<ArrayBuffer> =>
      equallyLoud(soundOfTrack(track, sampleRate, slower), measured.hz);
    const target = (): Float32Array<ArrayBuffer> =>
      targetTone(targetHz, length * slower, measured.decaySeconds * slower, sampleRate);
    const made = { alone, target, both: () => together(alone(), target()) }[which]();
    return { samples: made, sampleRate };
  };
  return { parts: inside, seconds: seconds(length), soundOf };
};

function partsOf(strike: Strike): readonly Part[] {
  const { fundamental, fundamentalRival, octave, octaveRival, third, thirdRival } = strike;
  const rivalOf = <T extends MeasuredPartial>(line: T | null | undefined, cents?: Cents) =>
    line ? { measured: line, cents: cents ?? line.cents } : null;
  const parts: Part[] = [];
  if (!strike.isInferred) {
    parts.push({
      name: 'fundamental',
      order: 1,
      measured: fundamental,
      cents: fundamental.cents,
      rival: rivalOf(fundamentalRival),
    });
  }
  if (octave) {
    parts.push({
      name: 'octave',
      order: 2,
      measured: octave,
      cents: octave.centsFromOwn,
      rival: rivalOf(octaveRival, octaveRival?.centsFromOwn),
    });
  }
  if (third) {
    parts.push({
      name: 'third',
      order: third.kind === 'twelfth' ? 3 : 4,
      measured: third,
      cents: third.centsFromOwn,
      rival: rivalOf(thirdRival, thirdRival?.centsFromOwn),
    });
  }
  return parts;
}

function trackOf(
  part: Part,
  parts: readonly Part[],
  strike: Strike,
  { samples, sampleRate }: CutSound,
  onset: number,
  length: number,
): LineTrack {
  const { hz } = part.measured;
  const own = strike.fundamental.hz;
  const nearest = (lines: readonly number[], from: number): number =>
    Math.min(...lines.map((line) => Math.abs(line - hz)).filter((away) => away > from), Infinity);
  // Where a partial was not heard there may still be something: the next ones lie one fundamental away.
  const partialHz = Math.min(
    own,
    nearest(
      parts.map(({ measured }) => measured.hz),
      1,
    ),
  );
  const others = strike.alsoRinging.map((line) => line.hz as number);
  const otherHz = nearest(others, oneSoundHz);
  return followLine(
    samples,
    sampleRate,
    Math.round(onset * sampleRate),
    hz,
    length,
    partialHz,
    otherHz,
  );
}
