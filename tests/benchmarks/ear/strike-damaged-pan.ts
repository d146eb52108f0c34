// Strikes the notes of a damaged pan as the knock check has them struck, and says what was heard.
import type { RefusalReason, Strike } from '../../../src/domain/measurement/strike';
import { type MidiNote, midiNote } from '../../../src/domain/tuning/units';
import { addStrike, type Reading } from '../../../src/domain/work/reading';
import { finallyHeard } from '../../dsp/listen-to';
import type { DamagedNote } from '../../sounds/damaged-note';
import type { DamagedPan } from '../../sounds/damaged-pan';
import { struckAt } from '../../sounds/damaged-strike';
import { guidedTo } from './hear-scene';

export interface StruckDamagedNote {
  readonly truth: DamagedNote;
  readonly note: MidiNote;
  readonly strikes: readonly Strike[];
  /** Blows heard as a knock. */
  readonly knocks: number;
  /** Why the other blows were refused. */
  readonly refusals: readonly RefusalReason[];
  /** Empty where there is no record. */
  readonly before: readonly Strike[];
}

/** A note is struck until its reading settles, walks or has had so many strikes; a person gives up after so many blows. */
const mostStrikes = 5;
const mostBlows = 7;
const strikesBefore = 2;

export const strikeDamagedPan = (pan: DamagedPan): readonly StruckDamagedNote[] =>
  pan.notes.map((truth) => {
    const now = strikeUntilKnown(truth, pan.sampleRate);
    const before = pan.hasBefore
      ? Array.from({ length: strikesBefore }, (_, n) => hear(truth, n, 'before', pan.sampleRate))
      : [];
    return { truth, note: midiNote(truth.note), ...now, before: before.filter(isStrike) };
  });

type HeardBlow = Strike | 'knock' | RefusalReason;
const isStrike = (heard: HeardBlow): heard is Strike => typeof heard === 'object';

function hear(
  truth: DamagedNote,
  n: number,
  when: 'now' | 'before',
  sampleRate: number,
): HeardBlow {
  const all = finallyHeard(truth.strike(n, when), sampleRate, {
    ...guidedTo(truth.note),
    mayBeChoked: true,
  });
  const near = all.filter(({ at }) => Math.abs(at - struckAt) < 0.1);
  const strike = near.find((heard) => heard.kind === 'strike');
  if (strike?.kind === 'strike') return { ...strike, event: n + 1 };
  const refused = near.find((heard) => heard.kind === 'refused');
  return refused?.kind === 'refused' ? refused.reason : 'knock';
}

function strikeUntilKnown(truth: DamagedNote, sampleRate: number) {
  const strikes: Strike[] = [];
  let reading: Reading | null = null;
  let knocks = 0;
  const refusals: RefusalReason[] = [];
  for (let n = 0; n < mostBlows && strikes.length < mostStrikes; n++) {
    const heard = hear(truth, n, 'now', sampleRate);
    if (!isStrike(heard)) {
      if (heard === 'knock') knocks++;
      else refusals.push(heard);
      continue;
    }
    strikes.push(heard);
    reading = addStrike(reading, heard).reading;
    if (reading.settled || reading.walking) break;
  }
  return { strikes, knocks, refusals };
}
