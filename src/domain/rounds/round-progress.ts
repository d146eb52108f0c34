// The course of a round: which notes are done, which one is next, and what each strike did.
import type { Strike } from '../measurement/strike';
import { addStrike, type Reading, strikesToSettle } from '../reading/reading';
import type { MarkKind, RoundWay } from '../records/rack-records';
import type { MidiNote } from '../tuning/units';

export interface RoundProgress {
  readonly way: RoundWay;
  /** The notes of the round, in the order a guided one asks for them. */
  readonly order: readonly MidiNote[];
  readonly notes: ReadonlyMap<MidiNote, NoteProgress>;
  /** A note the user picked, also one that is done: it is measured next, and anew. */
  readonly chosen: MidiNote | null;
  /** Strikes are numbered through the whole round, also when listening begins anew. */
  readonly eventsBefore: number;
  readonly lastEvent: number;
}

export interface NoteProgress {
  /** The strikes so far, of the reading being taken or, in a quick round, of the one that was kept. */
  readonly reading: Reading | null;
  /** A reading was taken. */
  readonly isLocked: boolean;
  readonly mark: MarkKind;
}

export type RoundEvent =
  /** A first look, a strike heard before, a note the round does not ask for, or one it does not know. */
  | { readonly kind: 'ignored'; readonly why: 'first-look' | 'heard-before' | 'other-note' }
  /** The strike counts; `isAgreeing` is false when it contradicts those before it. */
  | {
      readonly kind: 'counted';
      readonly note: MidiNote;
      readonly reading: Reading;
      readonly isAgreeing: boolean;
    }
  /** The note is done: keep `reading.heard`, then announce. */
  | { readonly kind: 'locked'; readonly note: MidiNote; readonly reading: Reading }
  /** Quick round: another strike on a note that is done; keep `reading.heard` as a newer reading. */
  | { readonly kind: 'refined'; readonly note: MidiNote; readonly reading: Reading }
  | { readonly kind: 'marked'; readonly note: MidiNote; readonly mark: MarkKind };

export interface RoundStep {
  readonly progress: RoundProgress;
  readonly event: RoundEvent;
  /** What to say once everything is kept; null: nothing new. */
  readonly announce: RoundNews | null;
}

export type RoundNews =
  /** In a guided round: the note to strike next. */
  | { readonly kind: 'next'; readonly note: MidiNote }
  /** In a free or quick round: this note is done, any other may follow. */
  | { readonly kind: 'taken'; readonly note: MidiNote }
  | { readonly kind: 'finished' };

/**
 * A note that has not settled after this many strikes is kept unsettled, so that one scattering note does not hold
 * up a round in which nobody has a hand free. A walking note is kept as soon as the walk is sure: a note that sinks
 * with every strike should not be struck any more (common practice, no source).
 */
export const patience = 7;

/** Distance from the first of three strikes to the last, cents (as in `walking`). */
const leastWalk = 1;

const untouched: NoteProgress = { reading: null, isLocked: false, mark: 'none' };

/** A round over these notes, none of them done. */
export const beginRound = (way: RoundWay, order: readonly MidiNote[]): RoundProgress => ({
  way,
  order,
  notes: new Map(order.map((note) => [note, untouched])),
  chosen: null,
  eventsBefore: 0,
  lastEvent: 0,
});

/** Listening began anew, so strikes are numbered from 1 again; nothing heard so far is lost. */
export const listeningBegan = (progress: RoundProgress): RoundProgress => ({
  ...progress,
  eventsBefore: progress.lastEvent,
});

/** Read, dead, buzzing, cracked or skipped. */
export const isDone = (progress: RoundProgress, note: MidiNote): boolean => {
  const state = progress.notes.get(note);
  return state !== undefined && (state.isLocked || state.mark !== 'none');
};

export const notesLeft = (progress: RoundProgress): readonly MidiNote[] =>
  progress.order.filter((note) => !isDone(progress, note));

export const isFinished = (progress: RoundProgress): boolean => notesLeft(progress).length === 0;

/**
 * A round ends when three agreeing strikes, or a mark, have finished the last of its notes. In a quick one a single
 * stray strike would be enough: it waits until it is told to end.
 */
export const endsByItself = ({ progress, event }: Pick<RoundStep, 'progress' | 'event'>): boolean =>
  isFinished(progress) && (progress.way !== 'quick' || event.kind === 'marked');

/** The note the user picked or, in a guided round, the first that is not done; null: any note, or none left. */
export const nextNote = (progress: RoundProgress): MidiNote | null =>
  progress.chosen ?? (progress.way === 'guided' ? (notesLeft(progress)[0] ?? null) : null);

/** What a settled strike does; first looks change nothing. */
export function strikeHeard(before: RoundProgress, strike: Strike): RoundStep {
  const ignored = (why: 'first-look' | 'heard-before' | 'other-note'): RoundStep => ({
    progress: before,
    event: { kind: 'ignored', why },
    announce: null,
  });
  if (strike.provisional) return ignored('first-look');
  const event = before.eventsBefore + strike.event;
  if (event <= before.lastEvent) return ignored('heard-before');
  const { note } = strike;
  const known = before.notes.get(note);
  const asked = nextNote(before);
  const isAsked = asked === null ? before.way !== 'guided' : asked === note;
  if (!known || !isAsked) return ignored('other-note');

  const { kind, reading } = addStrike(known.reading, { ...strike, event });
  const counting = { ...withNote(before, note, { ...known, reading }), lastEvent: event };
  if (before.way === 'quick') {
    const event: RoundEvent = { kind: known.isLocked ? 'refined' : 'locked', note, reading };
    const locked = { ...known, reading, isLocked: true };
    return done({ ...withNote(counting, note, locked), chosen: null }, event);
  }
  const isKnown = (reading.settled && !mayWalk(reading)) || reading.walking !== null;
  if (isKnown || reading.heard.length >= patience) {
    const locked = { ...known, reading: null, isLocked: true };
    const event: RoundEvent = { kind: 'locked', note, reading };
    return done({ ...withNote(counting, note, locked), chosen: null }, event);
  }
  return {
    progress: counting,
    event: { kind: 'counted', note, reading, isAgreeing: kind === 'taken' },
    announce: null,
  };
}

/** Only the fourth strike can tell a walk from chance: three that go one way over a cent wait for it. */
function mayWalk({ strikes }: Reading): boolean {
  const values = strikes.map((strike) => strike.fundamental.cents);
  const steps = values.slice(1).map((value, k) => value - (values[k] ?? value));
  const way = values.reduce((_, value) => value - (values[0] ?? value), 0);
  const goesOneWay = steps.every((step) => step * way > 0);
  return values.length === strikesToSettle && goesOneWay && Math.abs(way) >= leastWalk;
}

/** The user's mark on a note; it counts as done, until `none` takes the mark back. */
export function markNote(before: RoundProgress, note: MidiNote, mark: MarkKind): RoundStep {
  const known = before.notes.get(note);
  const event: RoundEvent = { kind: 'marked', note, mark };
  if (!known) return { progress: before, event, announce: null };
  const chosen = before.chosen === note ? null : before.chosen;
  const reading = before.way === 'quick' ? known.reading : null;
  return done({ ...withNote(before, note, { ...known, mark, reading }), chosen }, event);
}

/** The note to be measured next, anew if it is done already; null goes back to the order of the round. */
export function noteChosen(before: RoundProgress, note: MidiNote | null): RoundProgress {
  const known = note === null ? undefined : before.notes.get(note);
  if (note === null || !known) return { ...before, chosen: null };
  const reading = before.way === 'quick' ? known.reading : null;
  return { ...withNote(before, note, { ...known, reading }), chosen: note };
}

/** The round with another state of one note. */
export const withNote = (
  progress: RoundProgress,
  note: MidiNote,
  state: NoteProgress,
): RoundProgress => ({
  ...progress,
  notes: new Map(progress.notes).set(note, state),
});

function done(progress: RoundProgress, event: RoundEvent): RoundStep {
  return { progress, event, announce: newsAfter(progress, event) };
}

function newsAfter(progress: RoundProgress, event: RoundEvent): RoundNews | null {
  if (event.kind === 'refined') return null;
  if (event.kind === 'marked' && event.mark === 'none') return null;
  if (isFinished(progress)) return { kind: 'finished' };
  const next = nextNote(progress);
  if (next !== null) return { kind: 'next', note: next };
  return event.kind === 'locked' || event.kind === 'marked'
    ? { kind: 'taken', note: event.note }
    : null;
}
