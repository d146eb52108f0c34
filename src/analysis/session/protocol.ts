// Messages between the page and the analysis worker, one union per direction.
import type { CutSound } from '../../domain/measurement/cut-sound';
import type { Heard, ListeningContext } from '../../domain/measurement/strike';
import type { Seconds } from '../../domain/tuning/units';

export type ToEarWorker =
  | { readonly type: 'hello' }
  | { readonly type: 'context'; readonly context: ListeningContext }
  | { readonly type: 'begin'; readonly sampleRate: number }
  /** Blocks of samples will arrive through this port as transferred Float32Array messages. */
  | { readonly type: 'port'; readonly port: MessagePort; readonly sampleRate: number }
  | { readonly type: 'samples'; readonly samples: Float32Array<ArrayBuffer> }
  /** Send this stretch of sound once all of it has been heard. */
  | {
      readonly type: 'cut';
      readonly ticket: number;
      readonly from: Seconds;
      readonly length: Seconds;
    }
  | { readonly type: 'finish'; readonly ticket: number };

export type FromEarWorker =
  | { readonly type: 'hello' }
  | { readonly type: 'heard'; readonly heard: Heard }
  | { readonly type: 'level'; readonly levelDb: number }
  | { readonly type: 'finished'; readonly ticket: number }
  /** `sound`: null if it is forgotten or belongs to an earlier listening. */
  | { readonly type: 'cut'; readonly ticket: number; readonly sound: CutSound | null };
