// The partials of a note as a real pan has them: pairs of lines, late octaves, glides that go with the stroke.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';
import type { StruckPartial } from '../../src/practice-pan/struck-note';

/**
 * How a struck note is drawn. Origin, unless said otherwise: fitted by `bench:ear -t reality` to 178 real strikes of
 * one lead, whose figures the table prints; only their distributions were used, by strength of the stroke.
 */
export const noteFigures = {
  /** Time constant times root of the frequency, √s: middle, and deviation of its logarithm; other pans reach 1.3 and 12. */
  ringRoot: { middle: 3.1, spread: 0.36, least: 1.3, most: 12 },
  /** Octave against fundamental where both are loudest, dB: at the softest stroke, its rise with the stroke up to `full`. */
  octaveDb: { soft: -34, rise: 29, full: 0.6, spread: 8.5, least: -40, most: 14 },
  octaveCents: { spread: 14, most: 25 },
  /** Time constant of the octave's rise, s: middle, deviation of its logarithm; a hard stroke brings it sooner. */
  bloom: { soft: 0.02, hard: 0.003, spread: 1.1, least: 0.001, most: 0.07 },
  /** Share of strikes with a second line, at the softest stroke and added up to the hardest. */
  pairAtFundamental: { soft: 0.25, added: 0.45 },
  pairAtUpper: { soft: 0.45, added: 0.2 },
  pairHz: [1.7, 8.5],
  pairDb: [-12, -0.5],
  /** Glide at the onset, cents: it goes with loudness; 70 to 95 were seen at hard strokes, for 0.1 s. */
  glide: { middle: 42, power: 2, spread: 0.7, most: 95, upShare: [0.5, 0.95] },
  glideSeconds: [0.05, 0.12],
  glidePower: [1, 2.5],
  third: { middleDb: -22, spread: 12, least: -55, most: 3, cents: 15 },
} as const;

/** One partial: its own line, and what lies beside it. */
export interface HardPartial {
  /** Settled frequency of its own line, Hz. */
  readonly hz: number;
  /** The own line first; then a second line of the same note. */
  readonly lines: readonly StruckPartial[];
}

export interface HardNote {
  readonly fundamental: HardPartial;
  readonly octave: HardPartial;
  readonly third: HardPartial | null;
  readonly thirdKind: 'twelfth' | 'double-octave';
  /** Of the fundamental, cents at the onset. */
  readonly glideCents: number;
}

const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const level = (db: number): number => 10 ** (db / 20);
const clamped = (value: number, least: number, most: number): number =>
  Math.min(most, Math.max(least, value));

/** `note` (MIDI) struck with `strength` 0…1, its fundamental at `hz`; the fundamental's amplitude is 1. */
export function hardNote(
  random: () => number,
  note: number,
  hz: number,
  strength: number,
): HardNote {
  const gaussian = gaussianFrom(random);
  const { ringRoot, octaveDb, octaveCents, glide, third } = noteFigures;
  const decay =
    clamped(
      ringRoot.middle * Math.exp(ringRoot.spread * gaussian()),
      ringRoot.least,
      ringRoot.most,
    ) / Math.sqrt(hz);
  const glideCents =
    (random() < glide.upShare[0] + (glide.upShare[1] - glide.upShare[0]) * strength ? 1 : -1) *
    Math.min(
      glide.most,
      glide.middle * strength ** glide.power * Math.exp(glide.spread * gaussian()),
    );
  const shape = {
    glideSeconds: between(random, ...noteFigures.glideSeconds),
    glidePower: between(random, ...noteFigures.glidePower),
  };
  const loud = Math.min(1, strength / octaveDb.full);
  const ofOctave = clamped(
    octaveDb.soft + octaveDb.rise * loud + octaveDb.spread * gaussian(),
    octaveDb.least,
    octaveDb.most,
  );
  const octaveHz = shifted(
    2 * hz,
    clamped(octaveCents.spread * gaussian(), -octaveCents.most, octaveCents.most),
  );
  const thirdKind = note < 67 && random() < 0.4 ? 'twelfth' : 'double-octave';
  const thirdHz = shifted((thirdKind === 'twelfth' ? 3 : 4) * hz, third.cents * gaussian());
  const make = (
    at: number,
    amplitude: number,
    decaySeconds: number,
    bloomSeconds: number,
    glides: number,
    pairShare: number,
  ): HardPartial => {
    const own = {
      ...lineOf(random, at, amplitude, decaySeconds, bloomSeconds),
      ...shape,
      glideCents: glides,
    };
    if (random() >= pairShare) return { hz: at, lines: [own] };
    const apart = (random() < 0.5 ? -1 : 1) * between(random, ...noteFigures.pairHz);
    const second = lineOf(
      random,
      at + apart,
      amplitude * level(between(random, ...noteFigures.pairDb)),
      decaySeconds * between(random, 0.7, 1.5),
      bloomSeconds + (random() < 0.5 ? 0 : between(random, 0, 0.05)),
    );
    return { hz: at, lines: [own, { ...second, ...shape, glideCents: glides }] };
  };
  const shareOf = ({ soft, added }: { soft: number; added: number }): number =>
    soft + added * strength;
  const upper = shareOf(noteFigures.pairAtUpper);
  const bloom = (): number => bloomOf(gaussian, strength);
  return {
    fundamental: make(hz, 1, decay, 0.001, glideCents, shareOf(noteFigures.pairAtFundamental)),
    octave: make(
      octaveHz,
      level(ofOctave),
      decay * between(random, 0.55, 1.1),
      bloom(),
      glideCents * between(random, 0.3, 1.1),
      upper,
    ),
    third:
      random() < 0.85
        ? make(
            thirdHz,
            level(
              clamped(
                third.middleDb + 12 * (loud - 0.5) + third.spread * gaussian(),
                third.least,
                third.most,
              ),
            ),
            decay * between(random, 0.4, 0.9),
            bloom(),
            glideCents * between(random, 0.2, 1),
            upper,
          )
        : null,
    thirdKind,
    glideCents,
  };
}

function bloomOf(gaussian: () => number, strength: number): number {
  const { soft, hard, spread, least, most } = noteFigures.bloom;
  const middle = soft * (hard / soft) ** strength;
  return clamped(middle * Math.exp(spread * gaussian()), least, most);
}

const lineOf = (
  random: () => number,
  hz: number,
  amplitude: number,
  decaySeconds: number,
  bloomSeconds: number,
): StruckPartial => ({
  hz,
  amplitude,
  decaySeconds,
  bloomSeconds,
  glideCents: 0,
  glideSeconds: 0.05,
  phase: 2 * Math.PI * random(),
  // Energy exchange as in the mild scenes.
  wobbleHz: between(random, 3, 15),
  wobbleDb: 10 * between(random, 0.1, 0.7),
  wobbleCents: between(random, 0, 0.3),
  wobblePhase: 2 * Math.PI * random(),
});
