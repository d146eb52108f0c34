// What taking in a file would do to what is here, beyond adding what is new: shown before it is done.
import type { PanId, RackRecord } from '../rack-records';
import type { Differing } from './differing';

export interface FileEffects {
  /** Entries that say something else than the one of their name that is here; at most `mostListed` of them. */
  readonly differing: readonly Differing[];
  readonly differingCount: number;
  /** What is here and would be taken out of every result, by kind. */
  readonly erased: readonly { readonly kind: RackRecord['kind']; readonly count: number }[];
  /** Pans that are here and would be taken off the rack. */
  readonly hidden: readonly PanId[];
  /** Pans that are here and whose details would be others: the file has changes of them that are not here. */
  readonly edited: readonly PanId[];
  /** Entries of the file that are here and were taken out: taking the file in does not bring them back. */
  readonly takenOut: number;
}

export const noEffects: FileEffects = {
  differing: [],
  differingCount: 0,
  erased: [],
  hidden: [],
  edited: [],
  takenOut: 0,
};

/** Nobody reads a longer list (chosen, no source). */
export const mostListed = 200;
