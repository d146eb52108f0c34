// From the sound of one onset to what was heard: a strike with its partials, a knock, or a refusal.
import type {
  Heard,
  ListeningContext,
  MeasuredPartial,
  RefusalReason,
  RingingLine,
  ThirdPartial,
  UpperPartial,
} from '../domain/measurement/strike';
import { frequencyOf } from '../domain/tuning/equal-temperament';
import {
  cents,
  centsBetween,
  decibels,
  hertz,
  type MidiNote,
  seconds,
} from '../domain/tuning/units';
import { isStruckNote } from './blow-sound';
import { chooseNote, reachOfPartial, type TimedLine } from './choose-note';
import { loudnessOf } from './loudness';
import { frequencyDuring, type MeasuredLine, measureLine, type Window } from './measure-line';
import { ringingLines } from './ringing-lines';
import { endOfSound, hasLostAudio, isClipped, peakOf } from './sound-faults';
import { leadSeconds, type SpectralLine, type StrikeSpectrum } from './strike-spectrum';
import { isStruckEnvelope, swellDb } from './struck-envelope';
import { isVoiced } from './voiced-sound';

export interface StrikeSound {
  /** Samples; the onset lies at `leadSeconds`. */
  readonly segment: Float32Array;
  readonly count: number;
  readonly event: number;
  /** Onset, from the start of listening, s. */
  readonly at: number;
  readonly provisional: boolean;
  /** Level of the room's noise before the onset, dB of full scale (root mean square). */
  readonly roomDb: number;
}

const lineLimit = 14;
/** Sound that stops earlier than this is no ringing note, s. */
const shortestSeconds = 0.15;
/** Lines are looked for early, before short notes fade, s. */
const firstLookEnd = 0.32;
/** Peak below which a strike is too soft to judge (linear; −54 dB). */
const softestPeak = 0.002;
/** A struck note still sounds when a knock is long gone: level in the window against the peak, dB. */
const ringingOverPeakDb = -34.5;
/** A struck note may swell by this much against its own decay (its octave blooms; seen: 12.8), dB. */
const largestSwellDb = 13.5;
/** Largest part of the fundamental's band that may be no steady line. */
const largestUnexplained = 0.4;
const largestSigmaCents = { provisional: 2.2, settled: 2.2 };
/** Without any partial over it a fundamental must be this clear to count as a note, cents. */
const largestSigmaAlone = 1;
/** A settled frequency this far from its first line was no steady line, cents. */
const largestWander = 30;
/** Longest believable time constant, s (T60 about 2 s is 0.29 s; bass notes ring longer). */
const longestDecay = 4;
const decibel = (ratio: number): number => 20 * Math.log10(Math.max(ratio, 1e-9));

/** Judges one sound. Times in seconds, levels in dB of full scale; never throws on any samples. */
export function analyseStrike(
  sound: StrikeSound,
  spectrum: StrikeSpectrum,
  context: ListeningContext,
): Heard {
  const { segment } = sound;
  const rate = spectrum.sampleRate;
  const onset = Math.round(leadSeconds * rate);
  const count = endOfSound(segment, onset, sound.count);
  const until = (count - onset) / rate;
  const refused = (reason: RefusalReason, note: MidiNote | null = null): Heard => ({
    kind: 'refused',
    event: sound.event,
    at: seconds(sound.at),
    reason,
    note,
    candidates: note === null ? [] : [note],
  });
  const knock: Heard = { kind: 'knock', event: sound.event, at: seconds(sound.at) };
  const peak = peakOf(segment, onset, count);
  if (isClipped(segment, onset, count)) return refused('too-loud');
  if (hasLostAudio(segment, onset, count)) return refused('lost-audio');
  if (peak < softestPeak) return refused('too-soft');
  if (until < shortestSeconds) return knock;

  const sample = (time: number): number => Math.min(count, onset + Math.round(time * rate));
  const first: Window = { from: 0.06, to: Math.min(until - 0.008, firstLookEnd) };
  const spectral = spectrum.lines(segment, sample(first.from), sample(first.to), lineLimit);
  if (spectral.length === 0) return knock;
  const loudest = spectral[0]?.amplitude ?? 0;
  if (decibel(loudest / peak) < ringingOverPeakDb) return knock;

  if (!isStruckEnvelope(segment, onset, count, rate, sound.roomDb)) return refused('unclear');

  spectrum.load(segment, count);
  const timed = spectral.map((line) => timedLine(segment, rate, onset, line));
  const choice = chooseNote(timed, context)[0];
  if (!choice) return refused('unclear');
  const fundamentalLine = spectral[choice.line];
  const rough = fundamentalLine && measureLine(spectrum, fundamentalLine, spectral, first);
  if (!fundamentalLine || !rough || rough.hz <= 0) return refused('unclear');
  if (rough.decaySeconds < 0.03) return knock;
  const window = sound.provisional ? first : settledWindow(rough.decaySeconds, until);
  const measured = sound.provisional
    ? rough
    : (measureLine(spectrum, fundamentalLine, spectral, window) ?? rough);

  if (
    isVoiced(
      spectral.map((line) => line.hz),
      measured.hz,
    )
  )
    return refused('unclear');
  const struck = timed[choice.line];
  if (!struck || !isStruckNote(timed, struck, measured.decaySeconds)) return knock;
  if (swellDb(segment, onset, rate, measured.decaySeconds) > largestSwellDb) {
    return refused('unclear');
  }
  const target = frequencyOf(choice.note, context.a4);
  const fundamental = partialOf(measured, target);
  if (measured.unexplained > largestUnexplained || measured.decaySeconds > longestDecay) {
    return refused('unclear');
  }
  const sigmaLimit = largestSigmaCents[sound.provisional ? 'provisional' : 'settled'];
  if (fundamental.sigmaCents > sigmaLimit) return refused('unclear');
  if (Math.abs(centsBetween(fundamentalLine.hz, measured.hz)) > largestWander) {
    return refused('unclear');
  }
  if (context.expected !== null && choice.note !== context.expected) {
    return refused('wrong-note', choice.note);
  }
  const upper = (order: 2 | 3 | 4): { line: SpectralLine; partial: UpperPartial } | null => {
    const line = strongestNear(spectral, order * measured.hz);
    if (!line || line === fundamentalLine) return null;
    const found = measureLine(spectrum, line, spectral, window);
    if (!found || found.hz <= 0 || found.unexplained > 0.6) return null;
    const partial = partialOf(found, order * target);
    if (partial.sigmaCents > 2 * sigmaLimit) return null;
    const centsFromOwn = centsBetween(order * measured.hz, found.hz);
    return Math.abs(centsFromOwn) > reachOfPartial
      ? null
      : { line, partial: { ...partial, centsFromOwn } };
  };
  const octave = upper(2);
  const twelfth = upper(3);
  const doubleOctave = upper(4);
  const third = strongerThird(twelfth?.partial ?? null, doubleOctave?.partial ?? null);
  if (!octave && !third && fundamental.sigmaCents > largestSigmaAlone) return refused('unclear');
  const early = frequencyDuring(spectrum, measured.hz, { from: 0.012, to: 0.05 });
  const taken = [fundamentalLine, octave?.line, twelfth?.line, doubleOctave?.line];
  const ringing: readonly RingingLine[] = ringingLines(
    spectral.filter((line) => !taken.includes(line)),
    measured.hz,
    context,
  );
  return {
    kind: 'strike',
    event: sound.event,
    provisional: sound.provisional,
    at: seconds(sound.at),
    note: choice.note,
    fundamental,
    isInferred: false,
    octave: octave?.partial ?? null,
    octaveRival: null,
    third,
    glideCents: early !== null && early > 0 ? centsBetween(measured.hz, early) : cents(0),
    peakDb: decibels(decibel(peak)),
    loudness: loudnessOf(segment, onset, count, rate, sound.roomDb),
    alsoRinging: ringing,
  };
}

/** After the glide, and only as long as the line stands out: about four time constants. */
function settledWindow(decaySeconds: number, until: number): Window {
  const from = Math.min(0.13, until * 0.4);
  return { from, to: Math.min(until - 0.012, from + Math.max(0.16, 4 * decaySeconds)) };
}

function strongerThird(
  twelfth: UpperPartial | null,
  doubleOctave: UpperPartial | null,
): ThirdPartial | null {
  if (twelfth && (!doubleOctave || twelfth.levelDb > doubleOctave.levelDb)) {
    return { kind: 'twelfth', ...twelfth };
  }
  return doubleOctave ? { kind: 'double-octave', ...doubleOctave } : null;
}

function partialOf(line: MeasuredLine, targetHz: number): MeasuredPartial {
  return {
    hz: hertz(line.hz),
    cents: centsBetween(targetHz, line.hz),
    sigmaCents: cents((1200 / Math.LN2) * (line.sigmaHz / line.hz)),
    decaySeconds: seconds(line.decaySeconds),
    levelDb: decibels(decibel(line.amplitude)),
  };
}

function strongestNear(lines: readonly SpectralLine[], hz: number): SpectralLine | null {
  return lines.find((line) => Math.abs(centsBetween(hz, line.hz)) <= reachOfPartial) ?? null;
}

/** The course of a line: amplitudes just before, just after the onset, and in the window. */
function timedLine(
  segment: Float32Array,
  rate: number,
  onset: number,
  line: SpectralLine,
): TimedLine {
  const length = Math.round(Math.max(0.028, 7 / line.hz) * rate);
  return {
    hz: line.hz,
    settled: line.amplitude,
    early: hannAmplitude(segment, onset - Math.round(0.004 * rate), length, line.hz / rate),
    before: hannAmplitude(
      segment,
      Math.max(0, onset - Math.round(0.006 * rate) - length),
      length,
      line.hz / rate,
    ),
  };
}

/** Amplitude of one frequency (cycles per sample) under a Hann window. */
function hannAmplitude(
  samples: Float32Array,
  from: number,
  length: number,
  cyclesPerSample: number,
): number {
  let re = 0;
  let im = 0;
  for (let n = 0; n < length; n++) {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * (n + 0.5)) / length);
    const value = window * (samples[from + n] ?? 0);
    const angle = 2 * Math.PI * cyclesPerSample * n;
    re += value * Math.cos(angle);
    im -= value * Math.sin(angle);
  }
  return (4 * Math.hypot(re, im)) / length;
}
