// From the sound of one onset to what was heard: a strike with its partials, a knock, or a refusal.
import type {
  Heard,
  ListeningContext,
  MeasuredPartial,
  OctaveRival,
  RefusalReason,
  SecondLine,
  UpperPartial,
} from '../domain/measurement/strike';
import { frequencyOf } from '../domain/tuning/equal-temperament';
import {
  cents,
  centsBetween,
  decibels,
  hertz,
  type MidiNote,
  midiNote,
  seconds,
} from '../domain/tuning/units';
import { isAsLoudAsItsOnset, isChokedNote, isStruckNote } from './faults/blow-sound';
import { loudnessOf } from './faults/loudness';
import { hasPhaseJump } from './faults/phase-jump';
import { endOfSound, hasLostAudio, isClipped, isFlatTopped, peakOf } from './faults/sound-faults';
import { endOfStoppedSound } from './faults/stopped-sound';
import { fallsAway, swellDb } from './faults/struck-envelope';
import { isVoiced } from './faults/voiced-sound';
import { bandHalfWidth, type MeasuredLine } from './line/measure-line';
import type { NoteChoice } from './note/bass-choices';
import { chooseNote, partialNear } from './note/choose-note';
import { faintThirds } from './note/faint-thirds';
import { inferFundamental } from './note/infer-fundamental';
import { partialOf, upperPartials } from './note/measure-partials';
import { deafBelowHz } from './note/octave-question';
import { isSecondOwn } from './note/own-octave-line';
import { ringingLines } from './note/ringing-lines';
import { sharpOnset } from './onsets/sharp-onset';
import { linesAtPartial } from './pair/lines-at-partial';
import type { Window } from './spectrum/band-window';
import { timedLine } from './spectrum/line-course';
import { leadSeconds, type StrikeSpectrum } from './spectrum/strike-spectrum';

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
/** Fainter lines are looked at only where the note's own third partial may be. */
const faintLimit = 30;
/** Sound that stops earlier than this is no ringing note, s. */
const shortestSeconds = 0.15;
/** Lines are looked for between these times, before short notes fade, s. */
const firstLook: Window = { from: 0.06, to: 0.32 };
/** Measuring begins when the stick's own noise is gone and ends short of the segment's end, s. */
const measureFrom = 0.03;
const measureMargin = 0.012;
/** Peak below which a strike is too soft to judge (linear; −54 dB). */
const softestPeak = 0.002;
/** Flat tops are looked for until then, s: before the first verdict. */
const flatUntil = 0.25;
/** A struck note still sounds when a knock is long gone: level in the window against the peak, dB. */
const ringingOverPeakDb = -34.5;
/**
 * A fundamental may swell by this much against its own decay, dB. An energy exchange is up to 10 dB deep; 500 seeded
 * scenes reach 11.9, voices that pass all else begin at 16.3.
 */
const largestSwellDb = 14;
/** … of a bass note by more: its band is too narrow for the first moments, dB. */
const largestSwellOfBassDb = 17;
/** Largest part of the fundamental's energy that may be no steady line, and its largest standard error, cents. */
const largestUnexplained = 0.4;
const largestSigmaCents = 2.2;
/** A bass note's fundamental near the noise is still worth more than one inferred from its partials, cents. */
const largestSigmaOfBass = 5;
/** Without any partial over it a fundamental must be this clear to count as a note, cents. */
const largestSigmaAlone = 1;
/** A settled frequency this far from its first line was no steady line, cents. */
const largestWander = 30;
/** Shortest and longest believable time constant, s (T60 about 2 s is 0.29 s; bass notes ring longer). */
const shortestDecay = 0.03;
const longestDecay = 4;
/** The same where the note that is expected may be choked, s. */
const shortestDecayOfChoked = 0.012;
/** Notes whose scores lie closer than this are asked for, not guessed. */
const leastMargin = 1.5;
/** The expected note is inferred with less, but never against what is heard: about 1 neper of odds. */
const leastMarginToInfer = 0.75;

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
  const count = endOfStoppedSound(segment, onset, endOfSound(segment, onset, sound.count), rate);
  const until = (count - onset) / rate;
  const event = { event: sound.event, at: seconds(sound.at) };
  const refused = (reason: RefusalReason, ...candidates: readonly MidiNote[]): Heard => {
    const note = reason === 'which-note' ? null : (candidates[0] ?? null);
    return { kind: 'refused', ...event, reason, note, candidates };
  };
  const knock: Heard = { kind: 'knock', ...event };
  const peak = peakOf(segment, onset, count);
  if (isClipped(segment, onset, count)) return refused('too-loud');
  if (hasLostAudio(segment, onset, count)) return refused('lost-audio');
  if (peak < softestPeak) return refused('too-soft');
  if (until < shortestSeconds) return knock;

  const sample = (time: number): number => Math.min(count, onset + Math.round(time * rate));
  const lookUntil = Math.min(until - 0.008, firstLook.to);
  const seen = spectrum.lines(segment, sample(firstLook.from), sample(lookUntil), faintLimit);
  const lines = seen.slice(0, lineLimit);
  if (decibel((lines[0]?.amplitude ?? 0) / peak) < ringingOverPeakDb) return knock;

  const touched = sharpOnset(segment, onset, rate);
  const timed = lines.map((line) => timedLine(segment, rate, onset, touched, line));
  const choices = chooseNote(timed, context);
  const [choice] = choices;
  const struck = choice && timed[choice.line];
  const firstLine = choice && lines[choice.line];
  if (!choice || !struck || !firstLine) return refused('unclear');
  // Of a note whose fundamental is not heard the octave is measured.
  const order = choice.fundamental === 'heard' ? 1 : 2;
  const isBass = firstLine.hz / order < deafBelowHz;
  if (!fallsAway(segment, onset, count, rate, sound.roomDb, isBass)) return refused('unclear');
  spectrum.load(segment, count);
  const measurable = { spectrum, lines, window: { from: measureFrom, to: until - measureMargin } };
  const own = linesAtPartial(spectrum, firstLine, lines, measurable.window);
  if (!own || own.main.hz <= 0) return refused('unclear');
  const measured = own.main;
  const mayBeChoked = context.mayBeChoked === true && choice.note === context.expected;
  if (measured.decaySeconds < (mayBeChoked ? shortestDecayOfChoked : shortestDecay)) return knock;
  if (isVoiced(frequenciesOf(lines), measured.hz)) return refused('unclear');
  const ownHz = measured.hz / order;
  // In the noise of a bass note's fundamental its course does not show, but that of the octave.
  const courses = [struck, ...(isBass && order === 1 ? [partialNear(timed, struck, 2)] : [])];
  const isNote = courses.some(
    (course) =>
      course && isStruckNote(timed, { ...course, hz: struck.hz / order }, measured.decaySeconds),
  );
  const isSound = isNote && isAsLoudAsItsOnset(timed, ownHz, measured.decaySeconds, peak);
  const isChoked = mayBeChoked && !isSound && isChokedNote(timed, struck, measured.decaySeconds);
  if (!isSound && !isChoked) return knock;
  const ownBand = spectrum.band(measured.hz, bandHalfWidth(measured.hz));
  const largestSwell = isBass ? largestSwellOfBassDb : largestSwellDb;
  if (swellDb(ownBand, measured.decaySeconds) > largestSwell) return refused('unclear');
  if (isFlatTopped(segment, onset, sample(flatUntil))) return refused('too-loud');
  const target = frequencyOf(choice.note, context.a4);
  const fromLine = partialOf(measured, order * target);
  const isHeard = order === 1 && isSteady(measured, fromLine, firstLine.hz, isBass || isChoked);
  if (!isHeard && !isBass) return refused('unclear');
  if (context.expected !== null && choice.note !== context.expected) {
    return refused('wrong-note', choice.note);
  }
  const rivals = rivalsOf(choices, leastMargin);
  if (context.expected === null && rivals.length > 1) return refused('which-note', ...rivals);
  if (order !== 1 && rivalsOf(choices, leastMarginToInfer).length > 1) return refused('unclear');
  const upper = upperPartials(measurable, order === 1 ? firstLine : null, ownHz, target);
  const inferred =
    isHeard || choice.fundamental === 'unproven' || !upper.octave || !upper.third
      ? null
      : inferFundamental(upper.octave, upper.third, target, decibel(struck.early));
  if (!isHeard && !inferred) return refused('unclear');
  const { fundamental, third } = inferred ?? { ...upper, fundamental: fromLine };
  const { octave, octaveRival } = ownFirst(
    inferred?.octave ?? upper.octave,
    upper.octaveRival,
    choice.note,
    context,
  );
  // Two beating lines turn over in their troughs; only without them a jump means missing samples.
  const fundamentalRival =
    isHeard && own.rival ? withBeat(partialOf(own.rival, target), fundamental.hz) : null;
  const thirdRival =
    third && !inferred && upper.thirdRival ? withBeat(upper.thirdRival, third.hz) : null;
  const isWhole =
    sound.provisional || octaveRival !== null || fundamentalRival !== null || thirdRival !== null;
  if (!isWhole && hasPhaseJump(spectrum, lines, until - measureMargin))
    return refused('lost-audio');
  const isUnsure = !octave && !third && fundamental.sigmaCents > largestSigmaAlone;
  if (isUnsure && !isChoked) return refused('unclear');
  const ringing = ringingLines(lines, upper.taken, ownHz, context);
  const buzzDb = sound.provisional ? null : spectrum.buzzDb([...lines, ...partialsOf(ownHz)]);
  return {
    kind: 'strike',
    ...event,
    provisional: sound.provisional,
    note: choice.note,
    fundamental,
    fundamentalRival,
    isInferred: inferred !== null,
    octave,
    octaveRival,
    third,
    thirdRival,
    glideCents: inferred ? cents(0) : glideOf(measured),
    peakDb: decibels(decibel(peak)),
    loudness: loudnessOf(segment, onset, count, rate, sound.roomDb),
    ...(buzzDb === null ? {} : { buzzDb: decibels(buzzDb) }),
    alsoRinging: third ? ringing : [...ringing, ...faintThirds(seen, ringing, ownHz, choice.note)],
  };
}

/** A second line with how often it beats against the one at `hz`. */
const withBeat = <T extends MeasuredPartial>(rival: T, hz: number): T & SecondLine => ({
  ...rival,
  beatHz: hertz(Math.abs(rival.hz - hz)),
});

const frequenciesOf = (lines: readonly { readonly hz: number }[]): readonly number[] =>
  lines.map((line) => line.hz);

function isSteady(
  measured: MeasuredLine,
  { sigmaCents, decaySeconds }: MeasuredPartial,
  seenHz: number,
  isBass: boolean,
): boolean {
  return (
    measured.unexplained <= largestUnexplained &&
    decaySeconds <= longestDecay &&
    sigmaCents <= (isBass ? largestSigmaOfBass : largestSigmaCents) &&
    Math.abs(centsBetween(hertz(seenHz), hertz(measured.hz))) <= largestWander
  );
}

/** Where a note's partials lie, seen or not: a high one may have faded before the lines are looked for. */
const partialsOf = (ownHz: number): readonly { readonly hz: number }[] =>
  [1, 2, 3, 4].map((order) => ({ hz: order * ownHz }));

/** Notes that could as well have been struck, the chosen one first. */
function rivalsOf(choices: readonly NoteChoice[], margin: number): readonly MidiNote[] {
  const best = choices[0]?.score ?? 0;
  return choices.filter((each) => best - each.score < margin).map((each) => each.note);
}

/** Glide at the strike, cents; the fit knows it only where it is there. */
function glideOf({ hz, glideHz }: MeasuredLine) {
  return hz + glideHz > 0 ? centsBetween(hertz(hz), hertz(hz + glideHz)) : cents(0);
}

/** The own octave and its rival, in the likelier order; the rival is most likely the pan's note an octave up. */
function ownFirst(
  octave: UpperPartial | null,
  rival: UpperPartial | null,
  struck: MidiNote,
  context: ListeningContext,
): { readonly octave: UpperPartial | null; readonly octaveRival: OctaveRival | null } {
  if (!octave || !rival) return { octave, octaveRival: null };
  const isSecond = isSecondOwn(octave.hz, rival.hz, struck, context) === true;
  const partner = midiNote(struck + 12);
  return {
    octave: isSecond ? rival : octave,
    octaveRival: {
      ...(isSecond ? octave : rival),
      note: context.notes === null || context.notes.includes(partner) ? partner : null,
      beatHz: hertz(Math.abs(rival.hz - octave.hz)),
    },
  };
}
