// What a set of strikes of one note says together: the values of a reading and how sure they are.
import type { Loudness, Strike } from '../measurement/strike';
import type { ThirdKind } from '../tuning/third-kind';
import { type Cents, cents, type MidiNote } from '../tuning/units';
import { combine, type Weighed } from './combine';
import { newestRival, type RivalLine } from './matched-lines';

export interface ReadingPartial {
  readonly cents: Cents;
  readonly centsFromOwn: Cents;
  /** One standard error of `centsFromOwn`: that of the fundamental is in it. */
  readonly sigmaCents: Cents;
}

export interface ReadingValues {
  /** `sigmaCents`: one standard error, with the scatter from strike to strike in it. */
  readonly fundamental: { readonly cents: Cents; readonly sigmaCents: Cents };
  /**
   * The fundamental follows from the octave and the third partial in at least one of the strikes. Where it does in
   * all of them, more strikes make it no surer, because its octave is off by the same amount in each.
   */
  readonly isInferred: boolean;
  /** The note's own octave; the likelier of two lines while `octaveRival` is there. */
  readonly octave: ReadingPartial | null;
  /** The other of two lines at the octave while nobody knows which is the note's own; never averaged with it. */
  readonly octaveRival: (ReadingPartial & { readonly note: MidiNote | null }) | null;
  readonly third: (ReadingPartial & { readonly kind: ThirdKind }) | null;
  /**
   * A second line at the fundamental or at the third partial, as last heard, if there was one; never averaged with the
   * first.
   */
  readonly fundamentalRival?: RivalLine | null;
  readonly thirdRival?: RivalLine | null;
  readonly glideCents: Cents;
  /** Largest distance between two fundamentals of the strikes. */
  readonly spread: Cents;
}

/** Soft strikes give little to measure, and loud ones bend the pitch (shares chosen, no source). */
const shares: Readonly<Record<Loudness, number>> = { soft: 0.5, good: 1, loud: 0.5 };

/** The values of at least one strike, its lines matched (`matchedLines`) and its octaves told apart (`ownOctaves`), or that open. */
export function summarise(strikes: readonly Strike[], isOctaveOpen: boolean): ReadingValues {
  const third = commonThird(strikes);
  const rivalNote = strikes.findLast((strike) => strike.octaveRival?.note)?.octaveRival?.note;
  const rival = isOctaveOpen ? partialOf(strikes, (strike) => strike.octaveRival) : null;
  const thirdValues = partialOf(strikes, (strike) =>
    strike.third?.kind === third ? strike.third : null,
  );
  const measured = strikes.map((strike) => strike.fundamental.cents);
  return {
    fundamental: fundamentalOf(strikes),
    isInferred: strikes.some((strike) => strike.isInferred),
    octave: partialOf(strikes, (strike) => strike.octave),
    octaveRival: rival && { ...rival, note: rivalNote ?? null },
    third: third && thirdValues && { kind: third, ...thirdValues },
    fundamentalRival: newestRival(strikes, (strike) => strike.fundamentalRival),
    thirdRival: newestRival(strikes, (strike) =>
      strike.third?.kind === third ? strike.thirdRival : null,
    ),
    glideCents: cents(strikes.reduce((sum, each) => sum + each.glideCents, 0) / strikes.length),
    spread: cents(Math.max(...measured) - Math.min(...measured)),
  };
}

interface Line {
  readonly cents: Cents;
  readonly centsFromOwn: Cents;
  readonly sigmaCents: Cents;
}

const weighed = (strike: Strike, value: Pick<Line, 'cents' | 'sigmaCents'>): Weighed => ({
  cents: value.cents,
  sigmaCents: value.sigmaCents,
  share: shares[strike.loudness],
});

function fundamentalOf(strikes: readonly Strike[]): ReadingValues['fundamental'] {
  const combined = combine(strikes.map((strike) => weighed(strike, strike.fundamental)));
  return { ...combined, sigmaCents: surest(strikes, combined.sigmaCents) };
}

/** `sigmaCents`, or the smallest error of an inferred fundamental where all are inferred. */
const surest = (strikes: readonly Strike[], sigmaCents: Cents): Cents =>
  strikes.every((strike) => strike.isInferred)
    ? cents(Math.max(sigmaCents, Math.min(...strikes.map((each) => each.fundamental.sigmaCents))))
    : sigmaCents;

function partialOf(
  strikes: readonly Strike[],
  of: (strike: Strike) => Line | null,
): ReadingPartial | null {
  const heard = strikes.flatMap((strike) => {
    const line = of(strike);
    if (!line) return [];
    const sigmaCents = cents(Math.hypot(line.sigmaCents, strike.fundamental.sigmaCents));
    return [
      {
        against: weighed(strike, line),
        own: weighed(strike, { cents: line.centsFromOwn, sigmaCents }),
      },
    ];
  });
  if (heard.length === 0) return null;
  const own = combine(heard.map((each) => each.own));
  return {
    cents: combine(heard.map((each) => each.against)).cents,
    centsFromOwn: own.cents,
    sigmaCents: surest(strikes, own.sigmaCents),
  };
}

function commonThird(strikes: readonly Strike[]): ThirdKind | null {
  let balance = 0;
  for (const { third } of strikes) {
    if (third) balance += third.kind === 'twelfth' ? 1 : -1;
  }
  if (balance !== 0) return balance > 0 ? 'twelfth' : 'double-octave';
  return strikes.findLast((strike) => strike.third)?.third?.kind ?? null;
}
