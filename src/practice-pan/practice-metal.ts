// The metal of a simulated pan: where each note's partials are now, and how blows move them and their neighbours.
import type { PanLayout } from '../domain/pans/layout';
import { neighboursOn } from '../domain/pans/neighbours';
import { ringPairs, ringPartnersOf } from '../domain/pans/ring-partners';
import type { BlowFirmness, BlowWhere } from '../domain/records/blow-places';
import { cents, type MidiNote } from '../domain/tuning/units';
import { createHiddenResponse, type Movement } from './hidden-response';
import type { PracticeTruth } from './practice-levels';
import { between, seededRandom } from './seeded-random';

/** All invented. What other notes take from a note's movement is a part of it. */
const coupling = {
  neighbour: [0.02, 0.08],
  /** Across a border of this length, as a part of the rim's radius, all of it arrives; across a shorter one less. */
  wholeBorder: 0.4,
  partner: [0, 0.02],
} as const;
/** Counted in sets of three light blows: after this many a note answers half as much … */
const hardness = [10, 30] as const;
/** … and after this many it has been stretched too far: every blow loosens it, and its sound chokes. */
const stretch = [15, 40] as const;
const loosening = { cents: -0.6, decay: 0.97 };

export interface PracticeMetal {
  truth(note: MidiNote): PracticeTruth | null;
  /** 1 at first, less once the note was stretched too far. */
  decayFactor(note: MidiNote): number;
  hammer(note: MidiNote, where: BlowWhere, firmness: BlowFirmness, count: number): void;
}

/** `truths`: how every note of the layout is tuned at first. Blows differ from each other, all by the seed. */
export function createPracticeMetal(
  seed: number,
  layout: PanLayout,
  truths: ReadonlyMap<MidiNote, PracticeTruth>,
): PracticeMetal {
  const response = createHiddenResponse(seed);
  const chance = seededRandom(seed * 52_361 + 17);
  const now = new Map(truths);
  const worked = new Map<MidiNote, number>();
  const decay = new Map<MidiNote, number>();
  const limitOf = (note: MidiNote) => {
    const random = seededRandom(seed * 941 + note * 373 + 29);
    return { hardness: between(random, ...hardness), stretch: between(random, ...stretch) };
  };

  function move(note: MidiNote, [fundamental, octave, third]: Movement): void {
    const truth = now.get(note);
    if (!truth) return;
    now.set(note, {
      fundamentalCents: cents(truth.fundamentalCents + fundamental),
      octaveCents: cents(truth.octaveCents + octave - fundamental),
      third: { ...truth.third, cents: cents(truth.third.cents + third - fundamental) },
    });
  }

  function oneBlow(note: MidiNote, where: BlowWhere, firmness: BlowFirmness): void {
    const before = worked.get(note) ?? 0;
    const limit = limitOf(note);
    worked.set(note, before + (firmness === 'firm' ? 2 : 1) / 3);
    const tired = 1 / (1 + before / limit.hardness);
    const isOverstretched = before > limit.stretch;
    const [fundamental, octave, third] = response.oneBlow(note, where, firmness, chance);
    const loose = isOverstretched ? loosening.cents : 0;
    const movement: Movement = [
      tired * fundamental + loose,
      tired * octave + loose,
      tired * third + loose,
    ];
    move(note, movement);
    if (isOverstretched) decay.set(note, (decay.get(note) ?? 1) * loosening.decay);
    for (const { note: other, part } of coupledTo(note)) {
      move(other, [part * movement[0], part * movement[1], part * movement[2]]);
    }
  }

  /** The notes that move along, by a part of the movement that is fixed for the pair. */
  function coupledTo(note: MidiNote): readonly { note: MidiNote; part: number }[] {
    return relationsOf(layout, note).map(({ note: other, border }) => {
      const random = seededRandom(seed * 31 + note * 1009 + other * 9176 + 3);
      const sign = random() < 0.5 ? -1 : 1;
      const [least, most] = border === null ? coupling.partner : coupling.neighbour;
      const share = border === null ? 1 : Math.min(1, border / coupling.wholeBorder);
      return { note: other, part: sign * share * between(random, least, most) };
    });
  }

  return {
    truth: (note) => now.get(note) ?? null,
    decayFactor: (note) => decay.get(note) ?? 1,
    hammer(note, where, firmness, count) {
      if (!now.has(note)) return;
      for (let n = 0; n < count; n++) oneBlow(note, where, firmness);
    },
  };
}

interface Relation {
  readonly note: MidiNote;
  /** Of a neighbour; null for a ring partner that shares no border. */
  readonly border: number | null;
}

/** Finding out which notes share borders takes a grid, so it is done once for each layout. */
const known = new WeakMap<PanLayout, Map<MidiNote, readonly Relation[]>>();

function relationsOf(layout: PanLayout, note: MidiNote): readonly Relation[] {
  const ofLayout = known.get(layout) ?? relationsIn(layout);
  known.set(layout, ofLayout);
  return ofLayout.get(note) ?? [];
}

function relationsIn(layout: PanLayout): Map<MidiNote, readonly Relation[]> {
  const pairs = ringPairs(layout);
  return new Map(
    layout.drums.flatMap(({ notes }) => {
      const beside = neighboursOn(notes);
      return notes.map(({ note }) => {
        const neighbours = beside.get(note) ?? [];
        const partners = new Set(ringPartnersOf(note, pairs).map(({ other }) => other.note));
        for (const neighbour of neighbours) partners.delete(neighbour.note);
        const alone = [...partners].map((partner) => ({ note: partner, border: null }));
        return [note, [...neighbours, ...alone]] as const;
      });
    }),
  );
}
