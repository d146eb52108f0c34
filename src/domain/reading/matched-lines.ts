// Two lines at the fundamental or the third partial, of which now one and now the other is the stronger: strikes are
// compared line by line, and nothing is ever averaged across the two.
import type { MeasuredPartial, SecondLine, Strike } from '../measurement/strike';
import { type Cents, cents } from '../tuning/units';

/** Lines of two strikes this near to each other are the same line, cents: as near as strikes must lie to agree. */
const sameLine = 2.5;

/**
 * The strikes of one note, each with the line as its fundamental, and as its third partial, that most of them have; of
 * lines equally common, the one that is more often the stronger, then the newest. A strike in which it was not heard
 * stays as it is.
 */
export function matchedLines(strikes: readonly Strike[]): readonly Strike[] {
  const first = commonLine(
    strikes.map(({ fundamental, fundamentalRival }) => [fundamental, fundamentalRival ?? null]),
  );
  const matched =
    first === null ? strikes : strikes.map((each) => withFundamentalNear(each, first));
  const third = commonLine(matched.map((each) => [each.third, each.thirdRival ?? null]));
  return third === null ? matched : matched.map((each) => withThirdNear(each, third));
}

type Two = readonly [stronger: MeasuredPartial | null, rival: MeasuredPartial | null];

/** Where the line lies that most of the strikes have; null where no strike has two. */
function commonLine(strikes: readonly Two[]): Cents | null {
  if (strikes.every(([, rival]) => rival === null)) return null;
  const isNear = (line: MeasuredPartial | null, at: number): boolean =>
    line !== null && Math.abs(line.cents - at) <= sameLine;
  let best: { readonly at: Cents; readonly count: number } | null = null;
  for (const two of strikes) {
    for (const line of two) {
      if (!line) continue;
      const { cents: at } = line;
      const heard = strikes.filter((each) => each.some((other) => isNear(other, at))).length;
      const stronger = strikes.filter(([other]) => isNear(other, at)).length;
      const count = heard + stronger / (strikes.length + 1);
      // Of two lines of one strike the stronger comes first, of two strikes the newer one last.
      const isBetter = !best || count > best.count || (count === best.count && line === two[0]);
      if (isBetter) best = { at, count };
    }
  }
  return best?.at ?? null;
}

const isNearer = (rival: MeasuredPartial, own: MeasuredPartial, at: Cents): boolean =>
  Math.abs(rival.cents - at) <= sameLine && Math.abs(rival.cents - at) < Math.abs(own.cents - at);

function withFundamentalNear(strike: Strike, at: Cents): Strike {
  const { fundamental, fundamentalRival, octave, octaveRival, third, thirdRival } = strike;
  if (!fundamentalRival || !isNearer(fundamentalRival, fundamental, at)) return strike;
  const { beatHz, ...own } = fundamentalRival;
  // All upper partials are measured against the fundamental.
  const moved = <T extends { readonly centsFromOwn: Cents }>(line: T): T => ({
    ...line,
    centsFromOwn: cents(line.centsFromOwn + fundamental.cents - own.cents),
  });
  return {
    ...strike,
    fundamental: own,
    fundamentalRival: { ...fundamental, beatHz },
    octave: octave && moved(octave),
    octaveRival: octaveRival && moved(octaveRival),
    third: third && moved(third),
    ...(thirdRival ? { thirdRival: moved(thirdRival) } : {}),
  };
}

function withThirdNear(strike: Strike, at: Cents): Strike {
  const { third, thirdRival } = strike;
  if (!third || !thirdRival || !isNearer(thirdRival, third, at)) return strike;
  const { kind, ...weaker } = third;
  const { beatHz, ...own } = thirdRival;
  return { ...strike, third: { kind, ...own }, thirdRival: { ...weaker, beatHz } };
}

/** What is said about a second line. */
export type RivalLine = Pick<SecondLine, 'cents' | 'sigmaCents' | 'beatHz'>;

/** The newest of the strikes' second lines; null if none has one. */
export function newestRival(
  strikes: readonly Strike[],
  of: (strike: Strike) => SecondLine | null | undefined,
): RivalLine | null {
  const rival = strikes.map(of).findLast((each) => each);
  return rival ? { cents: rival.cents, sigmaCents: rival.sigmaCents, beatHz: rival.beatHz } : null;
}
