import type { WorkArrays } from '../numbers/work-arrays';

/** Complex samples of one narrow band, heterodyned to its centre; only the first `count` of each array count. */
export interface BandSignal {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly count: number;
  /** Samples per second. */
  readonly rate: number;
  /** The band passes everything up to this distance from its centre unchanged, Hz. */
  readonly flatHz: number;
  /** Where the band's arrays come from, and those of all that is derived from it. */
  readonly work: WorkArrays;
}
