// What a single strike can say about a note before rehearsal: surely fine, surely out, or worth three strikes.
import { type Limits, type ToleranceSet, usualTolerances } from '../tuning/tolerances';
import type { JudgedNote } from './judge-note';

export type QuickVerdict = 'fine' | 'out' | 'three-strikes';

/** How many standard errors count as sure: 99.7 % if errors are normal (chosen, no source). */
export const sureSigmas = 3;

/**
 * Fine: every partial surely within "good". Out: one of them surely beyond "playable". Else three strikes: the
 * values lie between, or too near to a limit for one strike. Of two lines at the octave one is the partner's, and
 * more strikes would not tell which: the nearer one counts, so only two bad ones are held against the note.
 */
export function quickVerdict(
  judged: JudgedNote,
  limits: ToleranceSet = usualTolerances,
): QuickVerdict {
  const { note, fundamental, octave, octaveRival, third } = judged;
  const parts = [rangeOf(fundamental.cents, fundamental.sigmaCents, 'main')];
  if (note <= limits.highestWithPartials) {
    if (octave) {
      const own = rangeOf(octave.centsFromOwn, octave.sigmaCents, 'main');
      const other =
        octaveRival && rangeOf(octaveRival.centsFromOwn, octaveRival.sigmaCents, 'main');
      parts.push(other ? nearer(own, other) : own);
    }
    if (third) parts.push(rangeOf(third.centsFromOwn, third.sigmaCents, 'third'));
  }
  if (parts.some(({ least, limit }) => isBeyond(least, limits.playable[limit]))) return 'out';
  const isFine = parts.every(({ most, limit }) => !isBeyond(most, limits.good[limit]));
  return isFine ? 'fine' : 'three-strikes';
}

interface Range {
  /** The distance from true surely lies between these, cents. */
  readonly least: number;
  readonly most: number;
  readonly limit: keyof Limits;
}

function rangeOf(value: number, sigmaCents: number, limit: keyof Limits): Range {
  const away = Math.abs(value);
  const unsure = sureSigmas * sigmaCents;
  return { least: Math.max(0, away - unsure), most: away + unsure, limit };
}

const nearer = (one: Range, other: Range): Range => ({
  least: Math.min(one.least, other.least),
  most: Math.min(one.most, other.most),
  limit: one.limit,
});

/** On whole cents, as everywhere. */
const isBeyond = (away: number, limit: number): boolean => Math.round(away) > limit;
