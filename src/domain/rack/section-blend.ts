// How far the pans of one section agree: their pan pitches, and the notes of two pans that beat against each other.

import type { PanFamily } from '../pans/pan-family';
import { slowestHeard } from '../pans/partner-beats';
import type { JudgedPan } from '../rounds/judged-pan';
import { frequencyOf } from '../tuning/equal-temperament';
import {
  type Cents,
  cents,
  centsBetween,
  type Hertz,
  hertz,
  type MidiNote,
  shiftedBy,
} from '../tuning/units';
import type { PanCard } from './pan-card';

export interface Section {
  readonly family: PanFamily;
  /** Pans whose pan pitch is known, the highest first; two or more. */
  readonly pans: readonly PitchedPan[];
  /** Between the highest and the lowest pan pitch. */
  readonly apart: Cents;
}

export interface PitchedPan {
  readonly card: PanCard;
  /** Against the band's pitch, whatever the pan itself is to be tuned to. */
  readonly panPitch: Cents;
}

/** The sections of a rack with two or more pans to compare, the widest apart first. */
export function sectionsOf(cards: readonly PanCard[], bandA4: Hertz): readonly Section[] {
  const byFamily = new Map<PanFamily, PitchedPan[]>();
  for (const card of cards) {
    const { family, a4, isRemoved } = card;
    if (isRemoved || card.panPitch === null) continue;
    const panPitch = cents(card.panPitch + centsBetween(bandA4, a4));
    byFamily.set(family, [...(byFamily.get(family) ?? []), { card, panPitch }]);
  }
  return [...byFamily]
    .flatMap(([family, found]): readonly Section[] => {
      const pans = found.sort((one, other) => other.panPitch - one.panPitch);
      const [highest] = pans;
      const lowest = pans.at(-1);
      if (!highest || !lowest || pans.length < 2) return [];
      return [{ family, pans, apart: cents(highest.panPitch - lowest.panPitch) }];
    })
    .sort((one, other) => other.apart - one.apart);
}

export interface NoteBlend {
  readonly note: MidiNote;
  /** From the first pan's fundamental to the second's; one standard error beside it. */
  readonly cents: Cents;
  readonly sigmaCents: Cents;
  /** Beats per second when both are struck together. */
  readonly beatHz: Hertz;
}

/** A pan as it stands, judged with whatever A4 it has. */
type Played = Pick<JudgedPan, 'a4' | 'notes'>;

/**
 * The notes that both pans have and that are heard to beat: at least once a second, and more than two standard errors
 * apart; the fastest beats first. Beats per second are the difference of the two fundamentals in hertz.
 */
export function blendOf(first: Played, second: Played): readonly NoteBlend[] {
  const others = new Map(second.notes.map((each) => [each.note, each.reading]));
  return first.notes
    .flatMap(({ note, reading }): readonly NoteBlend[] => {
      const other = others.get(note);
      if (!reading || !other) return [];
      const one = shiftedBy(frequencyOf(note, first.a4), reading.fundamental.cents);
      const two = shiftedBy(frequencyOf(note, second.a4), other.fundamental.cents);
      return [
        {
          note,
          cents: cents(1200 * Math.log2(two / one)),
          sigmaCents: cents(
            Math.hypot(reading.fundamental.sigmaCents, other.fundamental.sigmaCents),
          ),
          beatHz: hertz(Math.abs(two - one)),
        },
      ];
    })
    .filter(
      ({ cents: apart, sigmaCents, beatHz }) =>
        beatHz >= slowestHeard && Math.abs(apart) > 2 * sigmaCents,
    )
    .sort((one, other) => other.beatHz - one.beatHz);
}
