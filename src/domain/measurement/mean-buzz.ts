import { type Decibels, decibels } from '../tuning/units';

/**
 * Mean power of the buzz of some strikes, dB: a loose part is not hit alike each time. Null where it was measured in
 * none of them.
 */
export function meanBuzz(strikes: readonly { readonly buzzDb?: Decibels }[]): Decibels | null {
  const powers = strikes.flatMap(({ buzzDb }) => (buzzDb === undefined ? [] : 10 ** (buzzDb / 10)));
  if (powers.length === 0) return null;
  return decibels(10 * Math.log10(powers.reduce((sum, power) => sum + power, 0) / powers.length));
}
