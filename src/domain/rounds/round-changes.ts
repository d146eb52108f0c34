// What changed from one round to another: the pan as a whole, and each note's partials by themselves.

import type { NoteStanding } from '../reading/note-standing';
import { type PanPitch, panPitchOf } from '../tuning/pan-pitch';
import { type Cents, cents, centsBetween, type Instant, type MidiNote } from '../tuning/units';
import type { NoteResult } from './judged-pan';
import type { RoundResult } from './round-result';

export interface Change {
  /** Later minus earlier: above zero it rose. */
  readonly cents: Cents;
  /** A change smaller than this is none: three standard errors of the difference. */
  readonly uncertainCents: Cents;
  readonly hasChanged: boolean;
}

export interface NoteChange {
  readonly note: MidiNote;
  /** Against equal temperament, the pan's own shift included. */
  readonly fundamental: Change;
  /** The part of it that the pan as a whole did not do. */
  readonly beyondPan: Change;
  /** Against the own fundamental. */
  readonly octave: Change | null;
  /** Null also where another third partial was found than before. */
  readonly third: Change | null;
  /** Whether the note changed apart from the pan: `beyondPan`, octave or third. */
  readonly hasChanged: boolean;
  readonly standings: { readonly before: NoteStanding; readonly now: NoteStanding };
}

export interface RoundChanges {
  readonly from: Instant;
  readonly to: Instant;
  /** What most notes did together; null with fewer than three notes in both rounds. */
  readonly panShift: Change | null;
  /** The notes read in both rounds; those that changed by themselves first, most first. */
  readonly notes: readonly NoteChange[];
  /** Mean of the notes' absolute changes beyond the pan's, or null with no note in both rounds. */
  readonly meanChange: Cents | null;
  /** Degrees Celsius, null where unknown. */
  readonly temperatures: { readonly before: number | null; readonly now: number | null };
  /** One of the two was taken on a pan that had not settled. */
  readonly isProvisional: boolean;
}

/** Three standard errors: with 29 notes of three partials, two would call four of them changed by chance. */
const sureSigmas = 3;

/** What changed between two rounds of one pan; the A4 they are judged against may differ. */
export function roundChanges(before: RoundResult, now: RoundResult): RoundChanges {
  const earlier = new Map(before.notes.map((result) => [result.note, result]));
  // Both against the same A4.
  const a4Shift = centsBetween(before.a4, now.a4);
  const pairs = now.notes.flatMap((result) => pairOf(earlier.get(result.note), result, a4Shift));
  const shift = panPitchOf(
    pairs.map(({ note, moved }) => ({ note, ...moved })),
    now.a4,
  );
  const notes = pairs.map((pair) => noteChange(pair, shift));
  const sum = notes.reduce((total, { beyondPan }) => total + Math.abs(beyondPan.cents), 0);
  return {
    from: before.at,
    to: now.at,
    panShift: shift && changeOf(shift),
    notes: notes.sort(
      (one, other) =>
        Number(other.hasChanged) - Number(one.hasChanged) ||
        largest(other) - largest(one) ||
        one.note - other.note,
    ),
    meanChange: notes.length === 0 ? null : cents(sum / notes.length),
    temperatures: {
      before: before.conditions.temperature,
      now: now.conditions.temperature,
    },
    isProvisional: before.isProvisional || now.isProvisional,
  };
}

interface Unsure {
  readonly cents: Cents;
  readonly sigmaCents: Cents;
}

interface Pair {
  readonly note: MidiNote;
  readonly moved: Unsure;
  readonly octave: Unsure | null;
  readonly third: Unsure | null;
  readonly standings: NoteChange['standings'];
}

const changeOf = ({ cents: by, sigmaCents }: Unsure): Change => {
  const uncertainCents = cents(sureSigmas * sigmaCents);
  return { cents: by, uncertainCents, hasChanged: Math.abs(by) > uncertainCents };
};

function pairOf(before: NoteResult | undefined, now: NoteResult, a4Shift: Cents): readonly Pair[] {
  const [old, fresh] = [before?.reading, now.reading];
  if (!before || !old || !fresh) return [];
  const moved = difference(old.fundamental, fresh.fundamental);
  const isSameThird = old.third?.kind === fresh.third?.kind;
  return [
    {
      note: now.note,
      moved: { ...moved, cents: cents(moved.cents + a4Shift) },
      // While it is open which line is the note's own, nothing is said about its octave.
      octave: old.octaveRival || fresh.octaveRival ? null : ownDifference(old.octave, fresh.octave),
      third: isSameThird ? ownDifference(old.third, fresh.third) : null,
      standings: { before: before.standing, now: now.standing },
    },
  ];
}

const difference = (before: Unsure, now: Unsure): Unsure => ({
  cents: cents(now.cents - before.cents),
  sigmaCents: cents(Math.hypot(now.sigmaCents, before.sigmaCents)),
});

interface OwnLine {
  readonly centsFromOwn: Cents;
  readonly sigmaCents: Cents;
}

const ownDifference = (before: OwnLine | null, now: OwnLine | null): Unsure | null =>
  before && now
    ? difference(
        { cents: before.centsFromOwn, sigmaCents: before.sigmaCents },
        { cents: now.centsFromOwn, sigmaCents: now.sigmaCents },
      )
    : null;

function noteChange(
  { note, moved, octave, third, standings }: Pair,
  shift: PanPitch | null,
): NoteChange {
  const beyond = {
    cents: cents(moved.cents - (shift?.cents ?? 0)),
    sigmaCents: cents(Math.hypot(moved.sigmaCents, shift?.sigmaCents ?? 0)),
  };
  const changes = {
    fundamental: changeOf(moved),
    beyondPan: changeOf(beyond),
    octave: octave && changeOf(octave),
    third: third && changeOf(third),
  };
  const { beyondPan } = changes;
  const hasChanged = [beyondPan, changes.octave, changes.third].some((each) => each?.hasChanged);
  return { note, ...changes, hasChanged, standings };
}

const largest = ({ beyondPan, octave, third }: NoteChange): number =>
  Math.max(...[beyondPan, octave, third].map((change) => Math.abs(change?.cents ?? 0)));
