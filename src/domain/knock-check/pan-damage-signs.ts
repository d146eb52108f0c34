// The signs of damage of every note of a pan, each note compared with the notes around it.
import type { Strike } from '../measurement/strike';
import { median } from '../numbers/averages';
import { notesOf, type PanLayout } from '../pans/layout';
import { neighboursOn } from '../pans/neighbours';
import type { RefusedBlows } from '../records/rack-records';
import { usualTolerances } from '../tuning/tolerances';
import { type Hertz, hertz, type MidiNote, midiNote } from '../tuning/units';
import type { DamageSign } from './damage-evidence';
import { damageLimits } from './damage-limits';
import { damageSigns } from './damage-signs';

export interface PanEvidence {
  readonly layout: PanLayout;
  /** Settled strikes of this round by note, oldest first. */
  readonly strikes: ReadonlyMap<MidiNote, readonly Strike[]>;
  /** Blows of this round that became no strike where a note was asked for. */
  readonly refused?: ReadonlyMap<MidiNote, RefusedBlows>;
  /** Strikes of the last record before the knock, where there is one. */
  readonly before?: ReadonlyMap<MidiNote, readonly Strike[]>;
  readonly highestWithPartials?: MidiNote;
}

/** For each note the ones that show how it should ring: they share a border with it or lie near it in pitch. */
export function comparisonNotes(layout: PanLayout): ReadonlyMap<MidiNote, readonly MidiNote[]> {
  const notes = [...new Set(notesOf(layout))];
  const drums = layout.drums.map((drum) => neighboursOn(drum.notes));
  return new Map(
    notes.map((note) => {
      const adjoining = drums.flatMap((drum) => drum.get(note) ?? []).map((each) => each.note);
      const isNear = (other: MidiNote): boolean =>
        adjoining.includes(other) || Math.abs(other - note) <= damageLimits.comparisonReach;
      return [note, notes.filter((other) => other !== note && isNear(other))] as const;
    }),
  );
}

/** The notes that show a sign, with their signs, lowest note first; notes without any are left out. */
export function panDamageSigns({
  layout,
  strikes,
  refused,
  before,
  highestWithPartials = usualTolerances.highestWithPartials,
}: PanEvidence): ReadonlyMap<MidiNote, readonly DamageSign[]> {
  const wishes = new Map(
    layout.drums.flatMap((drum) => drum.notes.map((place) => [place.note, place.third] as const)),
  );
  const found = new Map<MidiNote, readonly DamageSign[]>();
  for (const [note, others] of comparisonNotes(layout)) {
    const signs = damageSigns({
      note,
      strikes: strikes.get(note) ?? [],
      knocks: refused?.get(note)?.knocks ?? 0,
      heardAsSeveral: refused?.get(note)?.heardAsSeveral ?? 0,
      neighbours: others.map((other) => strikes.get(other) ?? []),
      before: before?.get(note) ?? null,
      partnerHz: fundamentalOf(strikes.get(midiNote(note + 12)) ?? []),
      third: wishes.get(note) ?? null,
      highestWithPartials,
    });
    if (signs.length > 0) found.set(note, signs);
  }
  return found;
}

function fundamentalOf(strikes: readonly Strike[]): Hertz | null {
  const middle = median(strikes.map((strike) => strike.fundamental.hz));
  return middle === null ? null : hertz(middle);
}
