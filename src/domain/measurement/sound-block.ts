// What travels from the capture thread to the analysis through a message port.

/** One block of one channel, −1…1; the samples are transferred, and sent back to be filled again. */
export interface SoundBlock {
  readonly samples: Float32Array<ArrayBuffer>;
  /** Largest absolute sample. */
  readonly peak: number;
}

/** What the capture thread tells the page about each block, so that the page knows it is alive. */
export interface Heartbeat {
  readonly peak: number;
  /** Samples in the block. */
  readonly frames: number;
  /** When the block was full, ms, by the clock of the audio thread: the page may be late. */
  readonly at: number;
}
