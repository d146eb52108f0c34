// The practice pan: a simulated low-C lead with hidden detunings, invented and seeded.

import { amplitudeOfDb } from '../domain/numbers/decibel-levels';
import { notesOf, type PanLayout } from '../domain/pans/layout';
import { lowCLead } from '../domain/pans/layouts/low-c-lead';
import type { PracticeLevel } from '../domain/ports/practice-port';
import type { BlowFirmness, BlowWhere } from '../domain/records/blow-places';
import { frequencyOf, standardA4 } from '../domain/tuning/equal-temperament';
import type { ThirdKind } from '../domain/tuning/third-kind';
import { cents, type Hertz, type MidiNote, shiftedBy } from '../domain/tuning/units';
import { drawFundamental, drawOctave, notesOut, type PracticeTruth, pick } from './practice-levels';
import { createPracticeMetal } from './practice-metal';
import { between, seededRandom } from './seeded-random';
import { addStruckNote, type StruckPartial } from './struck-note';

export interface PracticePan {
  readonly layout: PanLayout;
  /** What is hidden in a note now; null for a note that the pan does not have. */
  truth(note: MidiNote): PracticeTruth | null;
  /** The sound of one strike, −1…1; loudness 0…1. Silence for a note that the pan does not have. */
  strike(note: MidiNote, loudness: number, sampleRate: number): Float32Array<ArrayBuffer>;
  /** This many blows at one place: the note's partials move, and those of its neighbours a little. Makes no sound. */
  hammer(note: MidiNote, where: BlowWhere, firmness: BlowFirmness, count: number): void;
}

export interface PracticeStart {
  readonly level?: PracticeLevel;
  /** The A4 the pan is tuned to; 440 Hz by default. */
  readonly a4?: Hertz;
  /** How these notes are tuned, instead of by chance. */
  readonly planted?: ReadonlyMap<MidiNote, PracticeTruth>;
}

/** What a note sounds like, and how it is tuned at first. */
interface Voice extends PracticeTruth {
  readonly decaySeconds: number;
  readonly octaveLevel: number;
  readonly thirdLevel: number;
  readonly glideCents: number;
  readonly partners: readonly { readonly note: MidiNote; readonly level: number }[];
}

/** Length of a strike, its fade at the end, its glide and its attack, s. */
const strikeSeconds = 1.4;
const fadeSeconds = 0.25;
const glideSeconds = 0.045;
const attackSeconds = 0.002;
/** Keeps the sum of all partials below 0.6 of full scale at full loudness (this and the times above: invented). */
const loudest = 0.28;

/** A pan whose hidden detunings and response follow from the seed; strikes differ a little, frequencies do not. */
export function createPracticePan(seed: number, start: PracticeStart = {}): PracticePan {
  const random = seededRandom(seed);
  const layout = lowCLead;
  const notes = notesOf(layout);
  const { level = 'some-out', a4 = standardA4, planted } = start;
  const out = notesOut(level, notes, random);
  const voices = new Map(
    notes.map((note) => [note, voiceOf(random, note, notes, { level, isOut: out.has(note) })]),
  );
  const truths = new Map(
    [...voices].map(([note, voice]) => [note, planted?.get(note) ?? truthOf(voice)]),
  );
  const metal = createPracticeMetal(seed, layout, truths);
  let strikes = 0;
  return {
    layout,
    truth: metal.truth,
    hammer: metal.hammer,
    strike(note, loudness, sampleRate) {
      strikes++;
      const sound = new Float32Array(Math.round(strikeSeconds * sampleRate));
      const voice = voices.get(note);
      const truth = metal.truth(note);
      if (!voice || !truth) return sound;
      const chance = seededRandom(seed * 7919 + strikes);
      const force = Math.min(1, Math.max(0.05, loudness)) * (0.9 + 0.2 * chance());
      addAttack(sound, sampleRate, force, chance);
      const partials = partialsOf(
        { ...voice, ...truth, decaySeconds: voice.decaySeconds * metal.decayFactor(note) },
        fundamentalHz(note, truth, a4),
        force,
        chance,
      );
      addStruckNote(sound, sampleRate, 0, { partials, onset: attackSeconds }, loudest * force);
      for (const { note: other, level } of voice.partners) {
        const tuned = metal.truth(other);
        if (!tuned) continue;
        const hz = fundamentalHz(other, tuned, a4);
        const partial = plainPartial(hz, level, 1.2 * voice.decaySeconds, 0.08, chance);
        const ringing = { partials: [partial], onset: attackSeconds };
        addStruckNote(sound, sampleRate, 0, ringing, loudest * force);
      }
      fadeOut(sound, sampleRate);
      return sound;
    },
  };
}

const fundamentalHz = (note: MidiNote, { fundamentalCents }: PracticeTruth, a4: Hertz): number =>
  shiftedBy(frequencyOf(note, a4), fundamentalCents);

const truthOf = ({ fundamentalCents, octaveCents, third }: Voice): PracticeTruth => ({
  fundamentalCents,
  octaveCents,
  third,
});

function voiceOf(
  random: () => number,
  note: MidiNote,
  notes: readonly MidiNote[],
  { level: out, isOut }: { readonly level: PracticeLevel; readonly isOut: boolean },
): Voice {
  const fundamentalCents = drawFundamental(out, isOut, random);
  const kind: ThirdKind = note < 67 && random() < 0.5 ? 'twelfth' : 'double-octave';
  const octaves = [-12, 12].map((step) => (note + step) as MidiNote);
  const others = Array.from({ length: 3 }, () => pick(random, notes)).filter(
    (other) => other !== note && !octaves.includes(other),
  );
  return {
    fundamentalCents,
    octaveCents: drawOctave(out, isOut, random),
    third: { kind, cents: cents(between(random, -8, 8)) },
    decaySeconds: between(random, 0.9, 1.1) * (0.3 - 0.15 * ((note - 60) / 28)),
    octaveLevel: amplitudeOfDb(between(random, -9, 0)),
    thirdLevel: amplitudeOfDb(between(random, -22, -12)),
    glideCents: (random() < 0.75 ? 1 : -1) * between(random, 3, 25),
    partners: [...octaves.slice(0, 1), ...others]
      .filter((other) => notes.includes(other))
      .map((other) => ({ note: other, level: amplitudeOfDb(between(random, -34, -22)) })),
  };
}

function partialsOf(
  voice: Voice,
  hz: number,
  force: number,
  chance: () => number,
): readonly StruckPartial[] {
  const { decaySeconds, glideCents, third } = voice;
  const times = third.kind === 'twelfth' ? 3 : 4;
  const glide = glideCents * force;
  return [
    { ...plainPartial(hz, 1, decaySeconds, 0.0015, chance), glideCents: glide },
    {
      ...plainPartial(
        shiftedBy(2 * hz, voice.octaveCents),
        voice.octaveLevel,
        0.8 * decaySeconds,
        0.025,
        chance,
      ),
      glideCents: 0.5 * glide,
    },
    plainPartial(
      shiftedBy(times * hz, third.cents),
      voice.thirdLevel,
      0.65 * decaySeconds,
      0.012,
      chance,
    ),
  ];
}

const plainPartial = (
  hz: number,
  amplitude: number,
  decaySeconds: number,
  bloomSeconds: number,
  chance: () => number,
): StruckPartial => ({
  hz,
  amplitude,
  decaySeconds,
  bloomSeconds,
  glideCents: 0,
  glideSeconds,
  phase: 2 * Math.PI * chance(),
});

/** A sound cut off while it rings would click like a strike. */
function fadeOut(sound: Float32Array, sampleRate: number): void {
  const length = Math.round(fadeSeconds * sampleRate);
  for (let n = 0; n < length; n++) {
    const at = sound.length - 1 - n;
    sound[at] = (sound[at] ?? 0) * (0.5 - 0.5 * Math.cos((Math.PI * n) / length));
  }
}

/** The stick's own short noise, and a faint room, so that the sound is never exact zeros. */
function addAttack(
  sound: Float32Array,
  sampleRate: number,
  force: number,
  chance: () => number,
): void {
  for (let n = 0; n < sound.length; n++) {
    const stick = 0.14 * force * Math.exp(-n / sampleRate / 0.0015);
    sound[n] = (sound[n] ?? 0) + (2 * chance() - 1) * (stick + 1e-4);
  }
}
