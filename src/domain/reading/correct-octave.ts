// What was heard, read again an octave higher or lower: the lines stay, only their roles in the note change.
import type { RingingLine, Strike } from '../measurement/strike';
import { cents, centsBetween, midiNote, shiftedBy } from '../tuning/units';
import { addStrike, type Reading } from './reading';

export type OctaveDirection = 1 | -1;

/**
 * How far a line may lie from half the frequency and still be the lower note's fundamental, cents (chosen, no source).
 */
const reach = 70;
/** Standard error of a line that was only seen in a spectrum, not fitted, cents (chosen, no source). */
const unfittedSigma = cents(2);

/** The reading an octave higher (+1) or lower (−1), or null if no strike holds the lines for it. */
export function readingAtOctave(reading: Reading, direction: OctaveDirection): Reading | null {
  const strikes = reading.strikes.flatMap((strike) => strikeAtOctave(strike, direction) ?? []);
  // An octave down all are unsure first looks, of which the newest is as good as several.
  return (direction === 1 ? strikes : strikes.slice(-1)).reduce<Reading | null>(
    (sum, strike) => addStrike(sum, strike).reading,
    null,
  );
}

/** The strike an octave higher (+1) or lower (−1), or null if it does not hold the line for it. */
export const strikeAtOctave = (strike: Strike, direction: OctaveDirection): Strike | null =>
  direction === 1 ? octaveHigher(strike) : octaveLower(strike);

/**
 * Partial 2 becomes the fundamental, partial 4 the octave. Cents against the target stay: twice the
 * old target is the new one. What is left of the old note rings along.
 */
function octaveHigher(strike: Strike): Strike | null {
  const { note, fundamental, isInferred, octave, third } = strike;
  if (!octave) return null;
  const { centsFromOwn, ...newFundamental } = octave;
  const rest: RingingLine[] = rivalLine(strike);
  if (!isInferred)
    rest.push({ hz: fundamental.hz, levelDb: fundamental.levelDb, note, partial: 1 });
  if (third?.kind === 'twelfth') {
    rest.push({ hz: third.hz, levelDb: third.levelDb, note, partial: 3 });
  }
  return {
    ...strike,
    note: midiNote(note + 12),
    fundamental: newFundamental,
    isInferred: false,
    fundamentalRival: null,
    octaveRival: null,
    octave: third?.kind === 'double-octave' ? withoutKind(third, centsFromOwn) : null,
    third: null,
    thirdRival: null,
    alsoRinging: [...rest, ...strike.alsoRinging],
  };
}

/**
 * A line at half the frequency becomes the fundamental, the old fundamental its octave and the old
 * octave its double octave. Only a first look: the next strike is measured properly.
 */
function octaveLower(strike: Strike): Strike | null {
  const { fundamental, octave } = strike;
  const line = strike.alsoRinging.find(
    ({ hz }) => Math.abs(centsBetween(fundamental.hz / 2, hz)) <= reach,
  );
  if (!line) return null;
  const target = shiftedBy(fundamental.hz / 2, -fundamental.cents);
  return {
    ...strike,
    provisional: true,
    note: midiNote(strike.note - 12),
    fundamental: {
      hz: line.hz,
      cents: centsBetween(target, line.hz),
      sigmaCents: unfittedSigma,
      // It was not measured either; the octave's is the nearest one known.
      decaySeconds: fundamental.decaySeconds,
      levelDb: line.levelDb,
    },
    fundamentalRival: null,
    isInferred: false,
    octave: { ...fundamental, centsFromOwn: centsBetween(2 * line.hz, fundamental.hz) },
    octaveRival: null,
    third: octave && {
      kind: 'double-octave',
      ...octave,
      centsFromOwn: centsBetween(4 * line.hz, octave.hz),
    },
    thirdRival: null,
    alsoRinging: [...rivalLine(strike), ...strike.alsoRinging.filter((other) => other !== line)],
  };
}

/** In another octave the line that rivals the octave is one that rings along. */
function rivalLine({ octaveRival }: Strike): RingingLine[] {
  if (!octaveRival) return [];
  const { hz, levelDb, note } = octaveRival;
  return [{ hz, levelDb, note, partial: note === null ? null : 1 }];
}

function withoutKind(
  { kind: _, ...partial }: NonNullable<Strike['third']>,
  octaveFromOwn: number,
): NonNullable<Strike['octave']> {
  // Against twice the old octave instead of four times the old fundamental.
  return { ...partial, centsFromOwn: cents(partial.centsFromOwn - octaveFromOwn) };
}
