// Features of all cut sounds, as the ear computes them.

import { endOfSound } from '../../src/dsp/faults/sound-faults';
import { endOfStoppedSound } from '../../src/dsp/faults/stopped-sound';
import { strikeFeatures } from '../../src/dsp/faults/strike-features';
import { noteCandidates } from '../../src/dsp/note/note-candidates';
import { noteEvidence } from '../../src/dsp/note/note-evidence';
import { type NoteEvidence, noteFeatures } from '../../src/dsp/note/note-features';
import { deafBelowHz } from '../../src/dsp/note/octave-question';
import { peakOf } from '../../src/dsp/numbers/power-and-peak';
import { leadSeconds, StrikeSpectrum } from '../../src/dsp/spectrum/strike-spectrum';
import { anyNote } from '../dsp/listen-to';
import { type CutExample, eachSegment } from './cut-examples';

export interface SeenExample extends CutExample {
  readonly provisional: boolean;
  readonly candidates: readonly {
    readonly note: number;
    readonly hz: number;
    readonly settled: number;
    readonly features: Float64Array;
    /** The features of the sound if this is the note. */
    readonly asStrike: Float64Array;
  }[];
  /** The candidate that is right, the strongest of those on the struck fundamental; −1 for none. */
  readonly right: number;
  /** The fundamental of a bass note is not among the lines, but its octave is: that one is then right. */
  readonly isHidden: boolean;
}

/** A line this near to the fundamental is it, cents: hard strokes glide. */
const reach = 60;
const shortest = 0.15;
const provisionalSeconds = 0.22;

export function seenExamples(name: string, cuts: readonly CutExample[]): readonly SeenExample[] {
  const seen: SeenExample[] = [];
  const spectra = new Map<number, StrikeSpectrum>();
  let turn = 0;
  eachSegment(name, cuts, (cut, segment) => {
    // The first verdict of every third is enough.
    turn++;
    const rate = cut.sampleRate;
    const spectrum = spectra.get(rate) ?? new StrikeSpectrum(rate);
    spectra.set(rate, spectrum);
    const first = Math.round((leadSeconds + provisionalSeconds) * rate);
    for (const provisional of turn % 3 === 0 ? [false, true] : [false]) {
      const all = provisional ? Math.min(first, cut.count) : cut.count;
      const example = see(spectrum, cut, segment, all, provisional);
      if (example) seen.push(example);
    }
  });
  return seen;
}

function see(
  spectrum: StrikeSpectrum,
  cut: CutExample,
  segment: Float32Array,
  all: number,
  provisional: boolean,
): SeenExample | null {
  const rate = cut.sampleRate;
  const onset = Math.round(leadSeconds * rate);
  const end = endOfStoppedSound(segment, onset, endOfSound(segment, onset, all), rate);
  if ((end - onset) / rate < shortest) return null;
  const evidence: NoteEvidence = noteEvidence(spectrum, segment, end);
  const sound = { segment, onset, end, rate, peak: peakOf(segment, onset, end) };
  const asStrikeOn = strikeFeatures(sound, evidence);
  const candidates = noteCandidates(evidence.timed, anyNote).flatMap(({ note, line, offGrid }) => {
    const timed = evidence.timed[line];
    if (!timed) return [];
    const features = noteFeatures(evidence, timed, offGrid);
    return [
      {
        note,
        hz: timed.hz,
        settled: timed.settled,
        features: Float64Array.from(features),
        asStrike: Float64Array.from(asStrikeOn(timed, features)),
      },
    ];
  });
  const strongestAt = (hz: number | null): number => {
    let found = -1;
    candidates.forEach((each, n) => {
      if (hz === null || Math.abs(1200 * Math.log2(each.hz / hz)) > reach) return;
      if (found < 0 || each.settled > (candidates[found]?.settled ?? 0)) found = n;
    });
    return found;
  };
  const heard = strongestAt(cut.hz);
  const hidden =
    heard < 0 && cut.hz !== null && cut.hz < deafBelowHz ? strongestAt(2 * cut.hz) : -1;
  const isHidden = hidden >= 0;
  return { ...cut, provisional, candidates, right: isHidden ? hidden : heard, isHidden };
}
