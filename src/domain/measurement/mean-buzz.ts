import { meanOf } from '../numbers/averages';
import { dbOfPower, powerOfDb } from '../numbers/decibel-levels';
import { type Decibels, decibels } from '../tuning/units';

/** The lowest level of a kept strike (see its rules), as a power. */
const leastPower = powerOfDb(-500);

/**
 * Mean power of the buzz of some strikes, dB: a loose part is not hit alike each time. Null where it was measured in
 * none of them.
 */
export function meanBuzz(strikes: readonly { readonly buzzDb?: Decibels }[]): Decibels | null {
  const power = meanOf(
    strikes.flatMap(({ buzzDb }) => (buzzDb === undefined ? [] : powerOfDb(buzzDb))),
  );
  return power === null ? null : decibels(dbOfPower(power, leastPower));
}
