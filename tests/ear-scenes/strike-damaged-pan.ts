// Strikes the notes of a damaged pan as the knock check has them struck, and says what was heard.
import type { Heard, Strike } from '../../src/domain/measurement/strike';
import type { RefusedBlows } from '../../src/domain/records/rack-records';
import { noBlowsSoFar, refusedBlowsOf, withBlowHeard } from '../../src/domain/rounds/refused-blows';
import { beginRound, strikeHeard } from '../../src/domain/rounds/round-progress';
import { type MidiNote, midiNote, seconds } from '../../src/domain/tuning/units';
import { finallyHeard } from '../dsp/listen-to';
import type { DamagedNote } from '../sounds/damaged-note';
import type { DamagedPan } from '../sounds/damaged-pan';
import { guidedTo } from './hear-scene';

export interface StruckDamagedNote {
  readonly truth: DamagedNote;
  readonly note: MidiNote;
  /** Those of the reading that is kept; none where the note is given up. */
  readonly strikes: readonly Strike[];
  /** Blows that became no strike, counted as the round of the app counts them. */
  readonly refused: RefusedBlows | null;
  /** Empty where there is no record. */
  readonly before: readonly Strike[];
}

/** A note is struck until the guided round has its reading; a person gives up after so many blows that were no strike. */
const mostMisses = 7;
/** From one blow to the next, s. */
const pause = 2;
const strikesBefore = 2;

export const strikeDamagedPan = (pan: DamagedPan): readonly StruckDamagedNote[] =>
  pan.notes.map((truth) => {
    const now = strikeUntilKnown(truth, pan.sampleRate);
    const before = pan.hasBefore
      ? Array.from({ length: strikesBefore }, (_, n) =>
          hear(truth, n, 'before', pan.sampleRate).filter(isStrike).slice(0, 1),
        )
      : [];
    return { truth, note: midiNote(truth.note), ...now, before: before.flat() };
  });

const isStrike = (heard: Heard): heard is Strike => heard.kind === 'strike';

/** Everything that is said about blow number `n`, by the clock of one listening. */
function hear(
  truth: DamagedNote,
  n: number,
  when: 'now' | 'before',
  sampleRate: number,
): readonly Heard[] {
  const all = finallyHeard(truth.strike(n, when), sampleRate, {
    ...guidedTo(truth.note),
    mayBeChoked: true,
  });
  return all.map((heard, k) => ({
    ...heard,
    event: 100 * n + k + 1,
    at: seconds(pause * n + heard.at),
  }));
}

/** As the round of the knock check takes it: its guided course, and its count of refused blows. */
function strikeUntilKnown(
  truth: DamagedNote,
  sampleRate: number,
): Pick<StruckDamagedNote, 'strikes' | 'refused'> {
  const note = midiNote(truth.note);
  let progress = beginRound('guided', [note]);
  let blows = noBlowsSoFar;
  for (let n = 0, misses = 0; misses < mostMisses; n++) {
    let isMiss = true;
    for (const heard of hear(truth, n, 'now', sampleRate)) {
      blows = withBlowHeard(blows, heard, note);
      if (heard.kind !== 'strike') continue;
      isMiss = false;
      const { progress: next, event } = strikeHeard(progress, heard);
      progress = next;
      if (event.kind !== 'locked') continue;
      return { strikes: event.reading.heard, refused: refusedBlowsOf(blows, note) };
    }
    if (isMiss) misses++;
  }
  // The note is marked instead: what was heard of it so far is not kept, but how many blows were refused is.
  return { strikes: [], refused: refusedBlowsOf(blows, note) };
}
