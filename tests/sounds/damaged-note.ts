// One note of a pan after a knock: what it was, what has become of it, and the sound of each strike.
import { between, seededRandom } from '../../src/practice-pan/seeded-random';
import type { StruckPartial } from '../../src/practice-pan/struck-note';
import { type Body, type Room, strikeSound } from './damaged-strike';
import { rattleOf } from './rattle';
import { partialMaker, ringingNotes, ringTime } from './scene';

/** What can be wrong with a note; `rattling` is a loose hanger, `buzzing` a loose bead or plate. */
export const damages = [
  'choked',
  'walking',
  'buzzing',
  'rattling',
  'new-doublet',
  'no-octave',
  'no-third',
] as const;
export type Damage = (typeof damages)[number];

export interface DamagedNote {
  readonly note: number;
  readonly damage: Damage | null;
  /** The third partial it is meant to have and has when nothing is wrong; null for none. */
  readonly third: 'twelfth' | 'double-octave' | null;
  /** The pan's note an octave up as it rings today, Hz; null where it rings along and nobody has struck it, or there is none. */
  readonly partnerHz: number | null;
  /** Distance of the two lines of a doublet, cents; 0 without one. */
  readonly apart: number;
  /** The sound of its strike number `n` (from 0): today, or when it was last measured. */
  readonly strike: (n: number, when: 'now' | 'before') => Float32Array<ArrayBuffer>;
}

/** Notes of a lead. */
export const lowest = 60;
export const highest = 88;

const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const equal = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
const level = (db: number): number => 10 ** (db / 20);

/** A note of a pan in `room`; the lines of a new doublet are `apart` cents apart. */
export function damagedNote(
  random: () => number,
  note: number,
  damage: Damage | null,
  room: Room,
  apart: readonly [number, number],
): DamagedNote {
  const maker = partialMaker(random, { wobbleDb: 10, wobbleCents: 0.3 });
  const fundamentalHz = shifted(equal(note), between(random, -25, 25));
  const decay = between(random, 0.85, 1.15) * ringTime(note);
  const glide = (random() < 0.75 ? 1 : -1) * between(random, 3, 39);
  const octaveHz = shifted(2 * fundamentalHz, between(random, -15, 15));
  const octaveLevel = level(between(random, -15, 9));
  const thirdKind = note < 67 && random() < 0.4 ? 'twelfth' : 'double-octave';
  const hasThird = damage === 'no-third' || random() < 0.85;
  const thirdHz = (thirdKind === 'twelfth' ? 3 : 4) * fundamentalHz;
  // A third that is hardly there cannot be missed.
  const faintestThird = damage === 'no-third' ? -20 : -30;
  const hasPartner = note + 12 <= highest && random() < 0.4;
  const partnerHz = shifted(octaveHz, (random() < 0.5 ? -1 : 1) * between(random, 9, 18));
  const body: Body = {
    fundamental: maker(fundamentalHz, 1, decay, 0.001, glide),
    octave: maker(octaveHz, octaveLevel, 0.8 * decay, 0.025, 0.6 * glide),
    third: hasThird
      ? maker(
          shifted(thirdHz, between(random, -20, 20)),
          level(between(random, faintestThird, 3)),
          0.6 * decay,
          0.012,
          0.4 * glide,
        )
      : null,
    second: null,
    along: ringingNotes(random, note, { count: room.sympathetic, lowest, highest }).map((other) =>
      maker(
        shifted(equal(other), between(random, -20, 20)),
        level(other === note - 12 ? between(random, -30, -2) : between(random, -36, -15)),
        1.3 * decay,
        0.05,
        0,
      ),
    ),
  };
  const partner =
    hasPartner && damage === null
      ? maker(partnerHz, octaveLevel * level(between(random, -9, 3)), decay, 0.04, 0)
      : null;
  const doubletApart = between(random, ...apart);
  const away = (random() < 0.5 ? -1 : 1) * doubletApart;
  const withPartner = partner ? { ...body, along: [partner, ...body.along] } : body;
  const hurt = damagedBody(random, withPartner, damage, maker, away);
  const knocked = damage === null && random() < 0.2 ? between(random, -35, 10) : 0;
  const walk = damage === 'walking' ? between(random, -8, -3) : 0;
  const rattle =
    damage === 'buzzing' || damage === 'rattling'
      ? rattleOf(random, damage, { hz: fundamentalHz, decaySeconds: decay })
      : null;
  const tickDb = between(random, -26, -14);
  // Somebody held a hand on the partner when the last record was taken.
  const earlier = random() < 0.5 ? body : withPartner;
  const own = Math.floor(2 ** 31 * random());
  return {
    note,
    damage,
    third: body.third && thirdKind,
    partnerHz: partner && shifted(partnerHz, room.sunCents + between(random, -0.5, 0.5)),
    apart: damage === 'new-doublet' ? doubletApart : 0,
    strike: (n, when) => {
      const chance = seededRandom(own + 2 * n + (when === 'now' ? 0 : 1));
      const isNow = when === 'now';
      const panCents = isNow ? room.sunCents + n * room.driftCents : 0;
      const moved = isNow ? knocked + n * walk * between(chance, 0.8, 1.2) : 0;
      return strikeSound(chance, isNow ? hurt : earlier, {
        ...room,
        panCents,
        ownCents: panCents + moved + between(chance, -0.15, 0.15),
        rattle: isNow ? rattle : null,
        tickDb,
      });
    },
  };
}

function damagedBody(
  random: () => number,
  body: Body,
  damage: Damage | null,
  maker: ReturnType<typeof partialMaker>,
  apart: number,
): Body {
  switch (damage) {
    case 'choked': {
      const part = between(random, 0.2, 0.4);
      const shorter = (line: StruckPartial, gain: number): StruckPartial => ({
        ...line,
        amplitude: gain * line.amplitude,
        decaySeconds: part * line.decaySeconds,
        bloomSeconds: Math.min(line.bloomSeconds, part * line.decaySeconds),
      });
      return {
        ...body,
        fundamental: shorter(body.fundamental, 1),
        octave: shorter(body.octave, random() < 0.5 ? 0 : between(random, 0.03, 0.3)),
        third: body.third && shorter(body.third, between(random, 0.1, 1)),
      };
    }
    case 'new-doublet': {
      const { octave } = body;
      const second = maker(
        shifted(octave.hz, apart),
        octave.amplitude * level(between(random, -9, 3)),
        octave.decaySeconds,
        octave.bloomSeconds,
        octave.glideCents,
      );
      return { ...body, second };
    }
    case 'no-octave':
      return {
        ...body,
        octave: {
          ...body.octave,
          amplitude: random() < 0.5 ? 0 : level(between(random, -60, -40)),
        },
      };
    case 'no-third':
      return { ...body, third: null };
    case 'walking':
    case 'buzzing':
    case 'rattling':
    case null:
      return body;
  }
}
