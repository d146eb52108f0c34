// All that is looked at before a note is chosen: two spectra, the course of each line, and how the sound repeats itself.

import { sharpOnset } from '../onsets/sharp-onset';
import { timedLine } from '../spectrum/line-course';
import { periodMatch } from '../spectrum/period-match';
import { leadSeconds, type StrikeSpectrum } from '../spectrum/strike-spectrum';
import type { NoteEvidence } from './note-features';

/** Times after the onset, s (chosen, no source): the first moments, and the time before short notes fade. */
const firstMoments = { from: -0.005, to: 0.055 };
const ringing = { from: 0.06, to: 0.32 };
/** When the glide of a hard stroke is over; the first verdict takes what it has of it. */
const lateRinging = { from: 0.14, to: 0.42 };
const shortestLate = 0.1;
const margin = 0.008;
/** Where it is checked whether the sound repeats itself, s after the onset: McLeod's window is a few periods long. */
const repeatsFrom = 0.012;
const repeatsTo = 0.075;
const repeatsLateFrom = 0.1;
const repeatsLateTo = 0.2;

/**
 * How many lines are looked at closely; fainter ones only where the note's own third partial may be (chosen, no
 * source).
 */
const lineLimit = 14;
const faintLimit = 30;

/** Evidence from `segment` (onset at `leadSeconds`, sound up to sample `count`); the segment stays loaded in `spectrum`. */
export function noteEvidence(
  spectrum: StrikeSpectrum,
  segment: Float32Array,
  count: number,
): NoteEvidence {
  const rate = spectrum.sampleRate;
  const onset = Math.round(leadSeconds * rate);
  const sample = (time: number): number => Math.min(count, onset + Math.round(time * rate));
  const until = Math.min((count - onset) / rate - margin, ringing.to);
  const early = spectrum.look(
    spectrum.early,
    segment,
    sample(firstMoments.from),
    sample(firstMoments.to),
    lineLimit,
  );
  const main = spectrum.look(
    spectrum.main,
    segment,
    sample(ringing.from),
    sample(until),
    faintLimit,
  );
  const lateFrom = Math.min(lateRinging.from, until - shortestLate);
  const late = spectrum.look(
    spectrum.late,
    segment,
    sample(lateFrom),
    sample(Math.min((count - onset) / rate - margin, lateRinging.to)),
    lineLimit,
  );
  const touched = sharpOnset(segment, onset, rate);
  const timed = main.lines
    .slice(0, lineLimit)
    .map((line) => timedLine(segment, rate, onset, touched, line));
  spectrum.load(segment, count);
  const repeatsIn =
    (from: number, to: number) =>
    (seconds: number): number =>
      periodMatch(spectrum.thinned, leadSeconds + from, leadSeconds + to, seconds);
  return {
    early,
    main,
    late,
    timed,
    repeats: repeatsIn(repeatsFrom, repeatsTo),
    repeatsLate: repeatsIn(repeatsLateFrom, repeatsLateTo),
  };
}
