// From the sound of one onset to what was heard: a strike with its partials, a knock, or a refusal.

import type { Heard, ListeningContext, RefusalReason } from '../domain/measurement/strike';
import { dbOfAmplitude } from '../domain/numbers/decibel-levels';
import { frequencyOf } from '../domain/tuning/equal-temperament';
import {
  cents,
  centsBetween,
  decibels,
  hertz,
  type MidiNote,
  seconds,
} from '../domain/tuning/units';
import { isChokedNote } from './faults/choked-note';
import { hasClick } from './faults/click';
import { type EarScores, ownScores } from './faults/ear-scores';
import { loudnessOf } from './faults/loudness';
import { phaseJumps } from './faults/phase-jump';
import { endOfSound, hasLostAudio, isClipped, isFlatTopped } from './faults/sound-faults';
import { endOfStoppedSound } from './faults/stopped-sound';
import { strikeFeatures } from './faults/strike-features';
import type { MeasuredLine } from './line/measure-line';
import type { NoteChoice } from './note/bass-choices';
import { chooseNote } from './note/choose-note';
import { faintThirds } from './note/faint-thirds';
import { inferFundamental } from './note/infer-fundamental';
import { partialOf, upperPartials } from './note/measure-partials';
import { noteEvidence } from './note/note-evidence';
import { deafBelowHz } from './note/octave-question';
import { ownFirst, withBeat } from './note/own-and-rival';
import { ringingLines } from './note/ringing-lines';
import { isSteady, withDoubt } from './note/steady-fundamental';
import { peakOf } from './numbers/power-and-peak';
import { linesAtPartial } from './pair/lines-at-partial';
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

/** Sound that stops earlier than this is no ringing note, s (this and the next four: chosen, no source). */
const shortestSeconds = 0.15;
/** Measuring begins when the stick's own noise is gone and ends short of the segment's end, s. */
const measureFrom = 0.03;
const measureMargin = 0.012;
/** A strike whose peak is below this is too soft to judge (linear; −54 dB). */
const softestPeak = 0.002;
/** Flat tops are looked for up to this time, s: before the first verdict. */
const flatUntil = 0.25;
/**
 * Odds of a strike, nepers: from here up it is one; below `surelyKnock` it is a knock; in between nobody can tell. Of
 * 994 real strikes whose note was left out of the fit, 1 lay below −4 (`npm run fit:ear`).
 */
const struckOdds = 0;
/** … less for a bass note whose fundamental is not heard, a strike with its best part missing (set on scenes). */
const struckOddsOfHidden = -4;
const surelyKnock = -4;
/**
 * If the scores of two notes lie closer than this, the user is asked instead of the ear guessing (chosen, no source).
 */
const leastMargin = 0.5;
/** … and sooner for bass notes: little more than the order of two lines tells them from their octaves. */
const leastMarginOfBass = 2;
/** The expected note is inferred from less, but never against what is heard: about 1 neper of odds. */
const leastMarginToInfer = 1;

const decibel = (amplitude: number): number => dbOfAmplitude(amplitude, 1e-9);

/** Judges one sound. Times in seconds, levels in dB of full scale; never throws on any samples. */
export function analyseStrike(
  sound: StrikeSound,
  spectrum: StrikeSpectrum,
  context: ListeningContext,
  scores: EarScores = ownScores,
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
  const evidence = noteEvidence(spectrum, segment, count);
  const { timed } = evidence;
  const seen = evidence.main.lines;
  const lines = seen.slice(0, timed.length);
  const choices = chooseNote(evidence, context, scores);
  const [choice] = choices;
  const struck = choice && timed[choice.line];
  const firstLine = choice && lines[choice.line];
  if (!choice || !struck || !firstLine) return refused('unclear');
  // Of a note whose fundamental is not heard the octave is measured.
  const order = choice.fundamental === 'heard' ? 1 : 2;
  const isBass = firstLine.hz / order < deafBelowHz;
  const struckSound = { segment, onset, end: count, rate, peak };
  const features = strikeFeatures(struckSound, evidence)(struck, choice.features);
  const odds = scores.ofStrike(features);
  const surelyStruck = order === 1 ? struckOdds : struckOddsOfHidden;
  const mayBeChoked = context.mayBeChoked === true && choice.note === context.expected;
  if (odds < surelyKnock && !mayBeChoked) return knock;
  if (odds < surelyStruck && !mayBeChoked) return refused('short-ring', choice.note);
  const measurable = { spectrum, lines, window: { from: measureFrom, to: until - measureMargin } };
  const own = linesAtPartial(spectrum, firstLine, lines, measurable.window);
  if (!own || own.main.hz <= 0) return refused('unclear', choice.note);
  const measured = own.main;
  const isChoked = odds < surelyStruck && isChokedNote(timed, struck, measured.decaySeconds);
  if (odds < surelyStruck && !isChoked)
    return odds < surelyKnock ? knock : refused('short-ring', choice.note);
  const ownHz = measured.hz / order;
  if (isFlatTopped(segment, onset, sample(flatUntil))) return refused('too-loud');
  const target = frequencyOf(choice.note, context.a4);
  const fromLine = withDoubt(partialOf(measured, order * target), measured, firstLine.hz);
  const isHeard = order === 1 && (!isBass || isSteady(measured, fromLine, firstLine.hz));
  if (!isHeard && !isBass) return refused('unclear');
  if (context.expected !== null && choice.note !== context.expected) {
    return refused('wrong-note', choice.note);
  }
  const rivals = rivalsOf(choices, isBass ? leastMarginOfBass : leastMargin);
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
  // Two beating lines may turn over in their troughs; a jump means missing samples only where there are none.
  const fundamentalRival =
    isHeard && own.rival ? withBeat(partialOf(own.rival, target), fundamental.hz) : null;
  const thirdRival =
    third && !inferred && upper.thirdRival ? withBeat(upper.thirdRival, third.hz) : null;
  const isWhole =
    sound.provisional || octaveRival !== null || fundamentalRival !== null || thirdRival !== null;
  const isSeam = (time: number): boolean => hasClick(segment, sample(time), rate);
  if (!isWhole && phaseJumps(spectrum, lines, until - measureMargin).some(isSeam)) {
    return refused('lost-audio');
  }
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

/** Where a note's partials lie, seen or not: a high one may have faded before the lines are looked for. */
const partialsOf = (ownHz: number): readonly { readonly hz: number }[] =>
  [1, 2, 3, 4].map((order) => ({ hz: order * ownHz }));

/** Notes that could as well have been struck, the chosen one first. */
function rivalsOf(choices: readonly NoteChoice[], margin: number): readonly MidiNote[] {
  const best = choices[0]?.score ?? 0;
  return choices.filter((each) => best - each.score < margin).map((each) => each.note);
}

/** Glide at the strike, cents; the fit knows it only where there is one. */
function glideOf({ hz, glideHz }: MeasuredLine) {
  return hz + glideHz > 0 ? centsBetween(hertz(hz), hertz(hz + glideHz)) : cents(0);
}
