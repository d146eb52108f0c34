// The app beside general-purpose detectors, on the scenes and on one stretched note.

import { frequencyOf } from '../../src/domain/tuning/equal-temperament';
import { hertz, midiNote } from '../../src/domain/tuning/units';
import { addStruckNote, type StruckPartial } from '../../src/practice-pan/struck-note';
import { anyNote, finallyHeard } from '../dsp/listen-to';
import type { Scene } from '../sounds/scene';
import { foldedError, type GeneralDetector } from './general-detectors';

/** The steady part that detectors are given, seconds after the strike. */
const steadyFrom = 0.13;
const steadyTo = 0.5;

export interface DetectorErrors {
  readonly name: string;
  /** Cents, folded to the nearest octave, one for each scene in which a pitch was found. */
  readonly errors: readonly number[];
  readonly missing: number;
}

export function detectorErrors(
  detector: GeneralDetector,
  scenes: readonly Scene[],
): DetectorErrors {
  const errors = scenes.flatMap(({ samples, sampleRate, truth }) => {
    const steady = steadyPart(samples, sampleRate, truth.at);
    const hz = detector.pitch(steady, sampleRate);
    return hz === null ? [] : [foldedError(truth.fundamental.hz, hz)];
  });
  return { name: detector.name, errors, missing: scenes.length - errors.length };
}

const steadyPart = (samples: Float32Array, sampleRate: number, at: number): Float32Array =>
  samples.subarray(
    Math.round((at + steadyFrom) * sampleRate),
    Math.round((at + steadyTo) * sampleRate),
  );

export interface StretchedNotes {
  /** Octave and twelfth against 2 and 3 times the fundamental, cents. */
  readonly octave: number;
  readonly twelfth: number;
}

/** Mean absolute error of the fundamental over the notes C4 to B4, cents; octaves folded away. */
export function errorsOnStretchedNotes(
  stretch: StretchedNotes,
  detectors: readonly GeneralDetector[],
): { readonly detectors: readonly number[]; readonly app: number } {
  const sampleRate = 48000;
  const strikes = Array.from({ length: 12 }, (_, n) => {
    const hz = frequencyOf(midiNote(60 + n));
    return { hz, samples: stretchedNote(hz, stretch, sampleRate) };
  });
  const meanOf = (pitch: (samples: Float32Array) => number | null): number =>
    strikes.reduce((sum, { hz, samples }) => {
      const found = pitch(samples);
      return sum + (found === null ? Number.NaN : Math.abs(foldedError(hz, found)));
    }, 0) / strikes.length;
  return {
    detectors: detectors.map(({ pitch }) =>
      meanOf((samples) => pitch(steadyPart(samples, sampleRate, strikeAt), sampleRate)),
    ),
    app: meanOf((samples) => {
      const heard = finallyHeard(samples, sampleRate, { ...anyNote, a4: hertz(440) });
      const strike = heard.find((each) => each.kind === 'strike');
      return strike?.kind === 'strike' ? strike.fundamental.hz : null;
    }),
  };
}

const strikeAt = 0.3;

/** An octave 6 dB over its fundamental (9 dB were seen) and a twelfth as loud as that; no noise, no glide. */
function stretchedNote(
  hz: number,
  { octave, twelfth }: StretchedNotes,
  sampleRate: number,
): Float32Array<ArrayBuffer> {
  const partial = (times: number, cents: number, amplitude: number): StruckPartial => ({
    hz: times * hz * 2 ** (cents / 1200),
    amplitude,
    decaySeconds: 0.4,
    bloomSeconds: 0,
    glideCents: 0,
    glideSeconds: 0,
    phase: times,
  });
  const samples = new Float32Array(1.4 * sampleRate);
  const partials = [partial(1, 0, 0.15), partial(2, octave, 0.3), partial(3, twelfth, 0.15)];
  addStruckNote(samples, sampleRate, strikeAt, { partials, onset: 0.002 }, 1);
  return samples;
}
