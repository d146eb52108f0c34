/** A stretch of what was heard, one channel, −1…1. */
export interface CutSound {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly sampleRate: number;
}
