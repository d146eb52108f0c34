// What the weights of the ear are fitted on: real strikes at many pitches and in many rooms, scenes, and what is no strike.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import {
  highPassed,
  keptBelowFull,
  loudPart,
  noisy,
  resampled,
  reverberated,
  withOtherRinging,
} from '../benchmarks/strikes/garage';
import { inSilence, type Sound } from '../benchmarks/strikes/hear-take';
import type { RealTake } from '../benchmarks/strikes/real-takes';
import { basses, bassScene } from '../ear-scenes/low-notes';
import { blowRecordings } from '../sounds/blow-recordings';
import type { DrumSound } from '../sounds/drum-kits';
import { hardScene, studio } from '../sounds/hard-scene';
import { nonStrikes } from '../sounds/non-strikes';
import { recordedKnocks } from '../sounds/recorded-knocks';
import { type Scene, strikeScene } from '../sounds/scene';
import { sentence, spoken } from '../sounds/spoken-sentences';
import { type RealStrike, realStrikes } from '../synthetic-sounds/real-strike';

/** A sound with one strike in it at `at` s, whose fundamental is `hz`; or with none. */
export interface Example {
  readonly sound: Sound;
  readonly strike: { readonly hz: number; readonly at: number } | null;
  /** Onsets near these times (s) are neither: strikes beside what is no strike. */
  readonly leftOut?: readonly number[];
  /** What is left out together: a note or a strength of the recordings, a kind of scene, a drum, a voice. */
  readonly note: string;
  readonly strength: string;
  readonly kind:
    | 'real'
    | 'varied'
    | 'bank'
    | 'scene'
    | 'hard'
    | 'bass'
    | 'blow'
    | 'drum'
    | 'speech';
}

/** Silence before a strike, and how much of it is heard, s. */
const lead = 0.35;
const heard = 0.75;

const beginning = ({ samples, sampleRate }: Sound): Sound => ({
  samples: samples.slice(0, Math.round(heard * sampleRate)),
  sampleRate,
});
const before = (sound: Sound): Sound => inSilence(beginning(sound), lead, 0.05);
const firstPart = ({ samples, sampleRate }: Sound, seconds: number): Sound => ({
  samples: samples.slice(0, Math.round(seconds * sampleRate)),
  sampleRate,
});
const inSemitones = (steps: number): number => 2 ** (steps / 12);

/** One of several rooms and microphones by chance. */
function changed(
  sound: Sound,
  onset: number,
  others: readonly Sound[],
  random: () => number,
): Sound {
  let now = sound;
  if (random() < 0.3) now = highPassed(now, between(random, 60, 220));
  if (random() < 0.3) {
    const other = others[Math.floor(random() * others.length)];
    if (other) now = withOtherRinging(now, other, onset, between(random, -26, -10));
  }
  if (random() < 0.4) {
    const ring = between(random, 0.2, 1.2);
    now = reverberated(
      now,
      ring,
      between(random, 0, 10) + 6 * Math.max(0, ring - 0.5),
      Math.floor(random() * 1e6),
    );
  }
  now = noisy(
    now,
    random() < 0.5 ? between(random, 8, 25) : between(random, 25, 60),
    Math.floor(random() * 1e6),
  );
  return now;
}

const louder = ({ samples, sampleRate }: Sound, gainDb: number): Sound =>
  keptBelowFull({ samples: samples.map((value) => value * 10 ** (gainDb / 20)), sampleRate });

/** Every recording as it is and `times` times changed. */
export function* realExamples(takes: readonly RealTake[], times: number): Generator<Example> {
  const others = takes.filter(({ dynamic, midi }) => dynamic === '3' && midi < 70);
  for (const [index, take] of takes.entries()) {
    const random = seededRandom(31 + index);
    const hz = take.f1?.hzHann ?? 440 * inSemitones(take.midi - 69);
    const of = { note: take.note, strength: take.dynamic, kind: 'real' as const };
    const strike = { hz, at: lead + 0.005 };
    yield { ...of, sound: before(take), strike };
    const unlike = takes.filter(({ note }) => note !== take.note);
    for (let n = 0; n < times; n++) {
      // Twice at its own pitch, else up to two octaves lower and a sixth higher.
      const steps =
        n < 2 ? 0 : between(random, Math.max(-24, 40 - take.midi), Math.min(9, 88 - take.midi));
      const factor = inSemitones(steps);
      const played = steps === 0 ? take : resampled(take, factor);
      const onset = lead + 0.005 / factor;
      let sound = before(played);
      if (random() < 0.5) sound = tilted(sound, 1.4 * hz * factor, between(random, -0.85, 2.5));
      if (random() < 0.5) {
        const other = unlike[Math.floor(random() * unlike.length)];
        if (other) sound = withPartner(sound, onset, hz * factor, other, random);
      }
      if (random() < 0.65) sound = changed(sound, onset, ringers(others, take), random);
      if (random() < 0.2) {
        const end = Math.round((lead + between(random, 0.35, 0.7)) * sound.sampleRate);
        sound = { samples: sound.samples.slice(0, end), sampleRate: sound.sampleRate };
      }
      yield {
        ...of,
        sound: louder(sound, between(random, -25, 3)),
        strike: { hz: hz * factor, at: onset },
      };
    }
  }
}

/** How far the balance of a note's partials differs from pan to pan and from note to note, dB (standard deviation). */
const balanceDb = 8;
/** Partials whose levels are changed, each by a peak as wide as this (quality factor). */
const balanced = [1, 2, 3, 4, 6];
const widthOfPeak = 2.5;
/** Levels of partners that ring along, dB: at soft strokes of inner notes they are as loud as the note. */
const softPartners = { from: -22, to: 10 };
const hardPartners = { from: -22, to: -2 };

/**
 * Notes that were not recorded: the recordings at other pitches, with another balance of their partials and with
 * partners of their own. They are fitted on and never judged.
 */
export function* variedExamples(takes: readonly RealTake[], times: number): Generator<Example> {
  const others = takes.filter(({ dynamic, midi }) => dynamic === '3' && midi < 70);
  for (const [index, take] of takes.entries()) {
    const random = seededRandom(50_031 + index);
    const hz = take.f1?.hzHann ?? 440 * inSemitones(take.midi - 69);
    const unlike = takes.filter(({ note }) => note !== take.note);
    const isSoft = take.dynamic === '1' || take.dynamic === '2';
    for (let n = 0; n < times; n++) {
      const steps = between(random, Math.max(-24, 40 - take.midi), Math.min(12, 92 - take.midi));
      const factor = inSemitones(steps);
      const onset = lead + 0.005 / factor;
      let sound = before(resampled(firstPart(take, 1.2 * heard * factor), factor));
      sound = rebalanced(sound, hz * factor, random);
      if (random() < 0.6) {
        const other = unlike[Math.floor(random() * unlike.length)];
        const levels = isSoft ? softPartners : hardPartners;
        if (other) sound = withPartner(sound, onset, hz * factor, other, random, levels);
      }
      if (random() < 0.3) {
        const other = unlike[Math.floor(random() * unlike.length)];
        if (other) sound = withPartner(sound, onset, hz * factor, other, random, hardPartners);
      }
      if (random() < 0.65) sound = changed(sound, onset, ringers(others, take), random);
      yield {
        note: take.note,
        strength: take.dynamic,
        kind: 'varied',
        sound: louder(sound, between(random, -25, 3)),
        strike: { hz: hz * factor, at: onset },
      };
    }
  }
}

/** The partials of a note louder or softer by chance, each by a peaking filter (R. Bristow-Johnson, Audio EQ Cookbook). */
function rebalanced({ samples, sampleRate }: Sound, hz: number, random: () => number): Sound {
  let now = samples;
  for (const order of balanced) {
    const gainDb = balanceDb * (random() + random() + random() + random() - 2) * Math.sqrt(3);
    if (order * hz < 0.45 * sampleRate) now = peaked(now, (order * hz) / sampleRate, gainDb);
  }
  return { samples: now, sampleRate };
}

function peaked(samples: Float32Array, cycles: number, gainDb: number): Float32Array<ArrayBuffer> {
  const turn = 2 * Math.PI * cycles;
  const alpha = Math.sin(turn) / (2 * widthOfPeak);
  const amplitude = 10 ** (gainDb / 40);
  const scale = 1 + alpha / amplitude;
  const [b0, b2] = [(1 + alpha * amplitude) / scale, (1 - alpha * amplitude) / scale];
  const b1 = (-2 * Math.cos(turn)) / scale;
  const a2 = (1 - alpha / amplitude) / scale;
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  return Float32Array.from(samples, (x) => {
    const y = b0 * x + b1 * x1 + b2 * x2 - b1 * y1 - a2 * y2;
    x2 = x1;
    x1 = x;
    y2 = y1;
    y1 = y;
    return y;
  });
}

const ringers = (others: readonly RealTake[], take: RealTake): readonly Sound[] =>
  others.filter(({ note }) => note !== take.note);

/** The lows, below about `hz`, weaker or stronger: another pan, stick or microphone (first order). */
function tilted({ samples, sampleRate }: Sound, hz: number, gain: number): Sound {
  const keep = Math.exp((-2 * Math.PI * hz) / sampleRate);
  let low = 0;
  return {
    samples: samples.map((value) => {
      low = keep * low + (1 - keep) * value;
      return value + gain * low;
    }),
    sampleRate,
  };
}

/** Steps from a note to those that ring along: mostly the octave below, then fifths, twelfths and fourths. */
const partnerSteps = [-12, -12, -12, -12, -19, -24, -7, -5, 7, 5, 12, 3, -3];
const nearPartners = [-12, -12, -12, -12, -5, -5, -7, -7, -19, -24, 7, 5, 12, -4, 4, 3, -3];

/** With a partner that rings along from the strike on, a recorded one that has lost its own attack. */
function withPartner(
  sound: Sound,
  onset: number,
  hz: number,
  other: RealTake,
  random: () => number,
  levels: { readonly from: number; readonly to: number } | null = null,
): Sound {
  const { samples, sampleRate } = sound;
  const stepsOf = levels ? nearPartners : partnerSteps;
  const { from, to } = levels ?? hardPartners;
  const steps =
    (stepsOf[Math.floor(random() * stepsOf.length)] ?? -12) + between(random, -0.12, 0.12);
  const own = other.f1?.hzHann ?? 440 * inSemitones(other.midi - 69);
  const factor = (hz * inSemitones(steps)) / own;
  if (factor < 0.2 || factor > 4) return sound;
  const partner = resampled(beginning(other), factor);
  const bloom = 0.002 * 30 ** random();
  const gain =
    (loudPart(samples, sampleRate) / Math.max(1e-9, loudPart(partner.samples, sampleRate))) *
    10 ** (between(random, from, to) / 20);
  const first = Math.round(onset * sampleRate);
  return {
    samples: samples.map((value, n) => {
      if (n < first) return value;
      const rise = 1 - Math.exp(-(n - first) / (bloom * sampleRate));
      return value + gain * rise * (partner.samples[n - first] ?? 0);
    }),
    sampleRate,
  };
}

/** Fundamentals of the bank's four recordings, by a plain spectrum, Hz. */
const bankHz = [367.4, 519.6, 734.6, 1039.1];

export function* bankExamples(strikes: readonly RealStrike[], times: number): Generator<Example> {
  for (const [index, strike] of strikes.entries()) {
    const random = seededRandom(977 + index);
    const others = strikes.filter((each) => each !== strike);
    for (let n = 0; n < times; n++) {
      const steps = n < 3 ? 0 : between(random, -16, 6);
      const factor = inSemitones(steps);
      const whole = before(resampled(strike, factor));
      const ringing = others.map((each) =>
        resampled(
          each,
          strike.sampleRate === each.sampleRate ? 1 : each.sampleRate / strike.sampleRate,
        ),
      );
      const sound = n === 0 ? whole : changed(whole, lead, ringing, random);
      yield {
        sound: louder(sound, between(random, -25, 0)),
        strike: { hz: (bankHz[index] ?? 440) * factor, at: lead },
        note: `bank ${index}`,
        strength: 'bank',
        kind: 'bank',
      };
    }
  }
}

const ofScene = (scene: Scene, kind: 'scene' | 'hard' | 'bass', seed: number): Example => ({
  sound: scene,
  strike: { hz: scene.truth.fundamental.hz, at: scene.truth.at },
  note: `${kind} ${seed % 12}`,
  strength: `${kind} ${seed % 5}`,
  kind,
});

/** Scenes of other seeds than the benchmark's. */
export function* sceneExamples(count: number): Generator<Example> {
  for (let n = 0; n < count; n++) {
    const seed = 810_001 + n;
    yield ofScene(
      strikeScene(seed, { pair: n % 4 === 0, snrDb: n % 3 === 0 ? 35 : 20 }),
      'scene',
      seed,
    );
  }
}

/** Scenes as hard as real pans: soft and hard strokes, partners that sound at once, rooms. */
export function* hardExamples(count: number): Generator<Example> {
  for (let n = 0; n < count; n++) {
    const seed = 830_001 + n;
    const options = { seconds: 1.1, lowest: n % 4 === 0 ? 45 : 60, ...(n % 2 === 0 ? studio : {}) };
    yield ofScene(hardScene(seed, options), 'hard', seed);
  }
}

export function* bassExamples(count: number): Generator<Example> {
  for (const [index, bass] of basses.entries()) {
    for (let n = 0; n < count; n++)
      yield ofScene(bassScene(bass, 820_001 + 1000 * index + n), 'bass', n);
  }
}

/** Every drum as it is, and `times` times in another room and at another pitch. */
export function* drumExamples(drums: readonly DrumSound[], times: number): Generator<Example> {
  for (const [index, drum] of drums.entries()) {
    const random = seededRandom(5011 + index);
    for (let n = 0; n <= times; n++) {
      const played = n === 0 ? drum : resampled(drum, inSemitones(between(random, -7, 7)));
      const whole = inSilence(played, lead, 0.1);
      const sound =
        n === 0
          ? keptBelowFull(whole)
          : louder(changed(whole, lead, [], random), between(random, -20, 3));
      const name = drum.name.replace(/ \d+$/, '');
      yield { sound, strike: null, note: name, strength: `drum ${index % 5}`, kind: 'drum' };
    }
  }
}

/** Voices for the fit; the benchmark has others. */
export const fittedVoices = [
  'en-us+m3',
  'en-us+f2',
  'en-gb+m7',
  'de+f4',
  'fr+m1',
  'es+f1',
  'it+m4',
  'en-029+f5',
];

export function* speechExamples(count: number): Generator<Example> {
  for (let n = 0; n < count; n++) {
    const random = seededRandom(7013 + n);
    const voice = fittedVoices[n % fittedVoices.length] ?? 'en-us';
    const whole = inSilence(spoken(sentence(n), voice), 0.2);
    const sound =
      n % 2 === 0
        ? keptBelowFull(whole)
        : louder(changed(whole, 0.2, [], random), between(random, -15, 0));
    yield { sound, strike: null, note: voice, strength: `speech ${n % 5}`, kind: 'speech' };
  }
}

/** The project's own blows, voices and rooms, of other seeds than the benchmarks'. */
export async function blowExamples(count: number): Promise<readonly Example[]> {
  const all = await nonStrikes(count, 77);
  return all.map((sound, n) => ({
    sound,
    strike: null,
    note: sound.name.split(/ \d/)[0] ?? '',
    strength: `blow ${n % 5}`,
    kind: 'blow' as const,
  }));
}

/** Hammer blows while the note that is worked on still rings, of other seeds than the tests'. */
export async function hammeredExamples(count: number): Promise<readonly Example[]> {
  const bank = { strikes: await realStrikes(), knocks: await recordedKnocks() };
  return blowRecordings(count, bank, 41).map(({ samples, sampleRate, name, strikes }, n) => ({
    sound: { samples, sampleRate },
    strike: null,
    leftOut: strikes,
    note: name.replace(/ \d+$/, ''),
    strength: `blow ${n % 5}`,
    kind: 'blow' as const,
  }));
}
