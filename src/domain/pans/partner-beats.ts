// How ring partners beat against each other, from measured values.

import { frequencyOf } from '../tuning/equal-temperament';
import type { ThirdKind } from '../tuning/third-kind';
import type { MidiNote } from '../tuning/units';
import { type Cents, cents, centsBetween, type Hertz, hertz, shiftedBy } from '../tuning/units';
import { type NotePartial, type PartialKind, partialKinds, type RingPair } from './ring-partners';

interface Line {
  /** Partial k against k times the note's place in equal temperament. */
  readonly cents: Cents;
  readonly sigmaCents: Cents;
}

/** The measured partials of one note, as a reading gives them. */
export interface NoteLines {
  readonly fundamental: Line;
  readonly octave: Line | null;
  /** The other of two lines at the octave while it is open which is the note's own. */
  readonly octaveRival?: Line | null;
  readonly third: (Line & { readonly kind: ThirdKind }) | null;
}

export interface PartnerBeat {
  readonly pair: RingPair;
  /** From the lower note's line to the higher note's; one standard error beside it. */
  readonly cents: Cents;
  readonly sigmaCents: Cents;
  /** Beats per second, the difference of the two frequencies. */
  readonly beatHz: Hertz;
  /** Where they beat: the mean of the two frequencies. */
  readonly hz: Hertz;
}

/** Slower beats are longer than the notes ring (time constants of pans, 0.4–2 s to fall by 60 dB), per second. */
export const slowestHeard: Hertz = hertz(1);

/**
 * The beats of all pairs both of whose lines were measured, the widest interval first: that is the way to go,
 * whatever the register. `a4` is the one the cents are against.
 */
export function partnerBeats(
  pairs: readonly RingPair[],
  measured: ReadonlyMap<MidiNote, NoteLines>,
  a4: Hertz,
): readonly PartnerBeat[] {
  const beats = pairs.flatMap((pair) => {
    const high = lineOf(measured.get(pair.high.note), pair.high.partial, null);
    if (!high) return [];
    const highHz = hertzOf(pair.high, high, a4);
    // In cents from the lower note's partial, to tell which of two lines is the partner's.
    const expected = centsBetween(
      hertzOf(pair.low, { cents: cents(0), sigmaCents: cents(0) }, a4),
      highHz,
    );
    const isPartner = pair.high.partial === 'fundamental';
    const low = lineOf(measured.get(pair.low.note), pair.low.partial, isPartner ? expected : null);
    if (!low) return [];
    const lowHz = hertzOf(pair.low, low, a4);
    return [
      {
        pair,
        cents: centsBetween(lowHz, highHz),
        sigmaCents: cents(Math.hypot(low.sigmaCents, high.sigmaCents)),
        beatHz: hertz(Math.abs(highHz - lowHz)),
        hz: hertz((highHz + lowHz) / 2),
      },
    ];
  });
  return beats.sort((one, other) => Math.abs(other.cents) - Math.abs(one.cents));
}

/**
 * Those that can be heard as beats and are certain: more than two standard errors apart (common practice, no source).
 */
export const heardBeats = (beats: readonly PartnerBeat[]): readonly PartnerBeat[] =>
  beats.filter(
    ({ cents: apart, sigmaCents, beatHz }) =>
      beatHz >= slowestHeard && Math.abs(apart) > 2 * sigmaCents,
  );

/**
 * One partial's line. Of two lines at the octave the one farther from `partner` (the partner's own fundamental,
 * measured by itself) is the note's; without a partner to tell them apart there is no answer.
 */
function lineOf(
  lines: NoteLines | undefined,
  partial: PartialKind,
  partner: Cents | null,
): Line | null {
  if (!lines) return null;
  switch (partial) {
    case 'fundamental':
      return lines.fundamental;
    case 'octave': {
      const { octave, octaveRival = null } = lines;
      if (!octave || !octaveRival) return octave;
      if (partner === null) return null;
      const isFarther = Math.abs(octave.cents - partner) > Math.abs(octaveRival.cents - partner);
      return isFarther ? octave : octaveRival;
    }
    case 'twelfth':
    case 'double-octave':
      return lines.third?.kind === partial ? lines.third : null;
  }
}

const hertzOf = ({ note, partial }: NotePartial, line: Line, a4: Hertz): Hertz =>
  shiftedBy(partialKinds[partial].times * frequencyOf(note, a4), line.cents);
