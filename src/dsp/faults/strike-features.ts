// What speaks for a sound being a struck note and no knock, voice or drum, in numbers; weighed by a fitted score.
// Ranges and places are chosen, no source; what each feature is worth was fitted (`ear-weights`).
import { centsBetween } from '../../domain/tuning/units';
import { type NoteEvidence, noteFeatureNames } from '../note/note-features';
import { meanPower } from '../numbers/power-and-peak';
import { hannSum } from '../spectrum/hann-sum';
import type { TimedLine } from '../spectrum/line-course';
import type { SpectralLine } from '../spectrum/strike-spectrum';

/** Features of the chosen note that count here too. */
const ofNote = [
  ...['at2', 'at3', 'at4', 'first1', 'first2', 'half', 'threeHalves', 'share', 'firstShare'],
  ...['unshared', 'firstUnshared', 'stray', 'firstStray', 'beside', 'firstBeside'],
  ...['below', 'firstBelow', 'prompt', 'wasThere', 'notAdded', 'octaveAway', 'fourthAway'],
  ...['noOctave', 'noThird', 'repeats', 'repeatsLate', 'high', 'low'],
] as const;
const placesInNote = ofNote.map((name) => noteFeatureNames.indexOf(name as never));

const ofSound = [
  ...['rise', 'attack', 'fallFirst', 'fallLater', 'fallRate', 'swell', 'swellLate'],
  ...['tonal', 'firstTonal', 'overNoise', 'ringing', 'harmonics', 'harmonicShare'],
  ...['centre', 'firstCentre', 'wander', 'wanderAbs', 'lines', 'thump', 'hiss', 'softHarmonics'],
] as const;
export const strikeFeatureNames: readonly string[] = [
  ...ofNote.map((name) => `note ${name}`),
  ...ofSound,
];

const within = (value: number, low: number, high: number): number =>
  Math.max(low, Math.min(high, value));
/** Powers as levels in 10 dB. */
const bel = (ratio: number, low: number, high: number): number =>
  within(Math.log10(Math.max(ratio, 1e-12)), low, high);

/** Block in which the envelope is taken, s. */
const block = 0.002;
/** A voice's harmonics, fifth to twelfth, lie this near to their places, cents; tuned partials do not reach so high. */
const exactCents = 16;

export interface StruckSound {
  readonly segment: Float32Array;
  /** Onset and end, samples of the segment. */
  readonly onset: number;
  readonly end: number;
  readonly rate: number;
  /** Largest sample after the onset, linear. */
  readonly peak: number;
}

/** The features of a sound, to be asked for each note that may be its own: fundamental `line`, features `chosen`. */
export type AsStrikeOn = (line: TimedLine, chosen: readonly number[]) => readonly number[];

/** What does not depend on the note is computed once; the features come in the order of the names. */
export function strikeFeatures(sound: StruckSound, { main, early }: NoteEvidence): AsStrikeOn {
  const { segment, onset, end, rate, peak } = sound;
  const power = (from: number, to: number): number =>
    meanPower(
      segment,
      onset + Math.round(from * rate),
      Math.min(end, onset + Math.round(to * rate)),
    );
  const before = meanPower(
    segment,
    Math.max(0, onset - Math.round(0.06 * rate)),
    onset - Math.round(0.01 * rate),
  );
  const over = (from: number, to: number): number => Math.max(power(from, to) - before, 1e-12);
  const last = Math.min((end - onset) / rate, 0.5);
  const rise = Math.log10(riseSeconds(segment, onset, rate) / 0.004);
  const fallRate = 10 * Math.log10(over(0.06, 0.12) / over(last - 0.06, last));
  const allEarly = Math.max(early.energy(30, 6000), 1e-15);
  const envelope = [
    rise,
    bel(over(0, 0.01) / over(0.01, 0.04), -2, 2),
    bel(over(0, 0.04) / over(0.06, 0.1), -2, 3),
    bel(over(0.06, 0.1) / over(0.16, 0.205), -2, 3),
    within(fallRate / Math.max(0.05, last - 0.12) / 50, -1, 3),
    bel(over(0.06, 0.1) / over(0.005, 0.025), -2, 2),
    bel(over(last - 0.06, last) / over(0.005, 0.03), -4, 1),
    tonality(main.lines, main.energy(30, 6000), 2 / 0.26, main.binHz),
    tonality(early.lines, allEarly, 2 / 0.06, early.binHz),
    within((main.lines[0]?.overNoiseDb ?? 0) / 20, 0, 3),
    bel((main.loudest / Math.max(peak, 1e-9)) ** 2, -5, 1),
  ];
  const centre = centreOf(main.lines);
  const firstCentre = centreOf(early.lines);
  const count = main.lines.filter((each) => each.amplitude > 0.05 * main.loudest).length / 10;
  const hiss = bel(early.energy(4000, 6400) / allEarly, -5, 0);
  return (line, chosen) => {
    const exact = harmonicsOf(main.lines, line.hz);
    const wander = wanderCents(segment, onset, rate, line.hz);
    return [
      ...placesInNote.map((place) => chosen[place] ?? 0),
      ...envelope,
      exact.count / 4,
      bel(exact.share, -4, 0),
      within(Math.log2(centre / line.hz), -2, 4),
      within(Math.log2(firstCentre / line.hz), -2, 4),
      within(wander / 30, -2, 2),
      Math.log10(1 + Math.min(Math.abs(wander), 100)),
      count,
      bel(early.energy(30, 0.75 * line.hz) / allEarly, -4, 0),
      hiss,
      (exact.count / 4) * Math.max(0, rise),
    ];
  };
}

/** Time from a tenth to nine tenths of the largest level of the first 80 ms, s. */
function riseSeconds(segment: Float32Array, onset: number, rate: number): number {
  const size = Math.max(1, Math.round(block * rate));
  const first = onset - Math.round(0.012 * rate);
  const blocks = Math.round(0.092 / block);
  let largest = 0;
  for (let k = 0; k < blocks; k++) {
    largest = Math.max(largest, meanPower(segment, first + k * size, first + (k + 1) * size));
  }
  let begun = -1;
  for (let k = 0; k < blocks; k++) {
    const level = Math.sqrt(
      meanPower(segment, first + k * size, first + (k + 1) * size) / Math.max(largest, 1e-20),
    );
    if (begun < 0 && level >= 0.1) begun = k;
    if (level >= 0.8) return block * Math.max(1, k - begun + 1);
  }
  return 0.08;
}

/** Exact harmonics from the fifth to the twelfth; a half and a third of `hz` are tried as a voice's pitch as well. */
function harmonicsOf(
  lines: readonly SpectralLine[],
  hz: number,
): { readonly count: number; readonly share: number } {
  let most = 0;
  let all = 1e-20;
  for (const line of lines) all += line.amplitude ** 2;
  let share = 0;
  for (const divisor of [1, 2, 3]) {
    const base = hz / divisor;
    let count = 0;
    let energy = 0;
    for (let order = 1; order <= 16; order++) {
      const isTuned = [1, 2, 3, 4].some((own) => order === own * divisor);
      if (isTuned || (divisor === 1 && order < 5)) continue;
      for (const line of lines) {
        if (Math.abs(centsBetween(order * base, line.hz)) >= exactCents) continue;
        count++;
        energy += line.amplitude ** 2;
        break;
      }
    }
    if (count > most) {
      most = count;
      share = energy / all;
    }
  }
  return { count: most, share: Math.max(share, 1e-4) };
}

/** Share of `all` energy within `lobe` Hz of the lines. */
function tonality(
  lines: readonly SpectralLine[],
  all: number,
  lobe: number,
  binHz: number,
): number {
  // A Hann line's energy in bins: its amplitude squared times 3/8 of its main lobe's four bins of its own length.
  let sum = 0;
  for (const line of lines) sum += line.amplitude ** 2;
  const bins = (0.75 * lobe) / binHz;
  return bel((sum * bins) / Math.max(all, 1e-15), -3, 0.3);
}

function centreOf(lines: readonly SpectralLine[]): number {
  let sum = 1e-20;
  let moment = 0;
  for (const { hz, amplitude } of lines) {
    sum += amplitude;
    moment += amplitude * Math.log2(hz);
  }
  return 2 ** (moment / sum);
}

/** How far the pitch of the line at `hz` goes from 0.05–0.1 s to 0.14–0.19 s, cents: voices and skins slide. */
function wanderCents(segment: Float32Array, onset: number, rate: number, hz: number): number {
  const apart = 0.012;
  const pitch = (from: number): number => {
    const [a, b] = [from, from + apart].map((time) =>
      lineSum(segment, onset + Math.round(time * rate), Math.round(0.04 * rate), hz / rate),
    );
    if (!a || !b) return hz;
    const turn = Math.atan2(b.im * a.re - b.re * a.im, b.re * a.re + b.im * a.im);
    return hz + turn / (2 * Math.PI * apart);
  };
  const [first, later] = [pitch(0.04), pitch(0.13)];
  return first > 0 && later > 0 ? centsBetween(first, later) : 0;
}

/** Sum over one frequency (cycles a sample) under a Hann window, its phase counted from sample 0. */
const lineSum = (samples: Float32Array, from: number, length: number, cycles: number) =>
  hannSum(samples, from, length, cycles, { window: 0, cycles: (from * cycles) % 1 });
