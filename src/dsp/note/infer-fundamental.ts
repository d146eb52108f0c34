// The fundamental of a bass note that the phone cannot hear, from the partials that it does hear.
import type { MeasuredPartial, ThirdPartial, UpperPartial } from '../../domain/measurement/strike';
import { cents, centsBetween, decibels, hertz } from '../../domain/tuning/units';

/**
 * How far the octave of a pan note lies off twice its fundamental, one standard deviation, cents: the root mean
 * square of what is published for single notes (−17.4, Hansen et al., MRS Bulletin 20(3), 44, 1995; −2.1, +3.0,
 * −4.6, piano technicians' mailing list, June 1996; +11.2 in openly published recordings) is 9.6. The double octaves
 * of the same notes lie off by nearly as much and to the same side: they confirm the octave but do not add to it.
 */
const alignmentCents = 10;
/** A tuner takes more care over the octave than over the third partial (chosen, no source). */
const octaveShare = 2 / 3;

const timesOf = { twelfth: 3, 'double-octave': 4 } as const;

export interface Inferred {
  readonly fundamental: MeasuredPartial;
  readonly octave: UpperPartial;
  readonly third: ThirdPartial;
}

/**
 * Where the fundamental must be, with the alignment's uncertainty in its standard error. The octave's and the third's
 * `centsFromOwn` then only say how far the two disagree. `levelDb`: the level where the fundamental would be.
 */
export function inferFundamental(
  octave: UpperPartial,
  third: ThirdPartial,
  targetHz: number,
  levelDb: number,
): Inferred {
  const fromOctave = octave.hz / 2;
  const apart = centsBetween(fromOctave, third.hz / timesOf[third.kind]);
  const hz = fromOctave * 2 ** (((1 - octaveShare) * apart) / 1200);
  return {
    fundamental: {
      hz: hertz(hz),
      cents: centsBetween(targetHz, hz),
      sigmaCents: cents(Math.hypot(octave.sigmaCents, alignmentCents)),
      decaySeconds: octave.decaySeconds,
      levelDb: decibels(levelDb),
    },
    octave: { ...octave, centsFromOwn: centsBetween(2 * hz, octave.hz) },
    third: { ...third, centsFromOwn: centsBetween(timesOf[third.kind] * hz, third.hz) },
  };
}
