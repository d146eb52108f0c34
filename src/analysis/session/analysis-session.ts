// What the analysis thread does with each message; the worker itself is only a shell around it.

import { cutFrom, cutSeconds } from '../../domain/measurement/cut-sound';
import type { SoundBlock } from '../../domain/measurement/sound-block';
import type { Heard, ListeningContext } from '../../domain/measurement/strike';
import { dbOfAmplitude } from '../../domain/numbers/decibel-levels';
import { standardA4 } from '../../domain/tuning/equal-temperament';
import { type Seconds, seconds } from '../../domain/tuning/units';
import { SoundMemory } from '../../dsp/onsets/sound-memory';
import { StrikeListener } from '../../dsp/strike-listener';
import type { FromEarWorker, ToEarWorker } from './protocol';

/** Below every real microphone; keeps the level of exact zeros finite, linear (chosen, no source). */
const lowestPeak = 1e-9;

type Cut = Extract<ToEarWorker, { readonly type: 'cut' }>;

export class AnalysisSession {
  #context: ListeningContext = { a4: standardA4, expected: null, notes: null };
  #listener: StrikeListener | null = null;
  #source: MessagePort | null = null;
  #memory: SoundMemory | null = null;
  #sampleRate = 0;
  /** The newest settled strike, whose sound is never forgotten: so many samples of `#kept`, null until it is whole. */
  #newest: { readonly from: Seconds; readonly count: number | null } | null = null;
  /** Made once for a listening: a strike makes no array. */
  #kept = new Float32Array(0);
  /** Stretches whose end has not been heard yet. */
  #cuts: readonly Cut[] = [];

  constructor(readonly post: (message: FromEarWorker) => void) {}

  /** Acts on one message of the page; answers and everything heard go out through `post`. */
  handle(message: ToEarWorker): void {
    switch (message.type) {
      case 'hello':
        this.post({ type: 'hello' });
        break;
      case 'context':
        this.#context = message.context;
        this.#listener?.setContext(message.context);
        break;
      case 'begin':
        this.#listenAnew(message.sampleRate);
        break;
      case 'port':
        this.#listenAnew(message.sampleRate);
        this.#readFrom(message.port);
        break;
      case 'samples':
        this.#hear(message.samples);
        break;
      case 'cut':
        this.#cuts = [...this.#cuts, message];
        this.#sendCuts(false);
        break;
      case 'finish':
        this.#report(this.#listener?.finish() ?? []);
        this.#keepNewest(true);
        this.#sendCuts(true);
        this.post({ type: 'finished', ticket: message.ticket });
        break;
      default:
        message satisfies never;
    }
  }

  #listenAnew(sampleRate: number): void {
    this.#source?.close();
    this.#source = null;
    // Questions about the earlier sound are not answered with this one.
    for (const { ticket } of this.#cuts) this.post({ type: 'cut', ticket, sound: null });
    this.#cuts = [];
    this.#newest = null;
    this.#listener = new StrikeListener(sampleRate, this.#context);
    this.#memory = new SoundMemory(sampleRate);
    this.#kept = new Float32Array(Math.ceil(cutSeconds * sampleRate));
    this.#sampleRate = sampleRate;
  }

  #hear(samples: Float32Array): void {
    this.#memory?.push(samples);
    this.#report(this.#listener?.push(samples) ?? []);
    this.#keepNewest(false);
    if (this.#cuts.length > 0) this.#sendCuts(false);
  }

  /** Answers the stretches that have been heard to their end; `isOver`: no more sound will come. */
  #sendCuts(isOver: boolean): void {
    const memory = this.#memory;
    const waiting: Cut[] = [];
    for (const cut of this.#cuts) {
      if (!isOver && memory && !memory.has(seconds(cut.from + cut.length))) {
        waiting.push(cut);
        continue;
      }
      const samples = memory?.cut(cut.from, cut.length) ?? this.#ofNewest(cut.from);
      const sound = samples && { samples, sampleRate: this.#sampleRate };
      this.post({ type: 'cut', ticket: cut.ticket, sound });
    }
    this.#cuts = waiting;
  }

  /** Somebody may want to look inside the newest strike long after it: its sound is put aside once it is whole. */
  #keepNewest(isOver: boolean): void {
    const memory = this.#memory;
    const newest = this.#newest;
    if (!memory || !newest || newest.count !== null) return;
    if (!isOver && !memory.has(seconds(newest.from + cutSeconds))) return;
    const count = memory.cutInto(this.#kept, newest.from, cutSeconds);
    this.#newest = { from: newest.from, count };
  }

  #ofNewest(from: Seconds): Float32Array<ArrayBuffer> | null {
    const newest = this.#newest;
    return newest?.count && newest.from === from ? this.#kept.slice(0, newest.count) : null;
  }

  #readFrom(port: MessagePort): void {
    this.#source = port;
    port.onmessage = ({ data: { samples, peak } }: MessageEvent<SoundBlock>) => {
      // Blocks that were on their way when another listening began belong to nobody.
      if (this.#source !== port) return;
      this.#hear(samples);
      this.post({ type: 'level', levelDb: dbOfAmplitude(peak, lowestPeak) });
      port.postMessage(samples, [samples.buffer]);
    };
  }

  #report(heard: readonly Heard[]): void {
    for (const each of heard) {
      if (each.kind === 'strike' && !each.provisional) {
        this.#newest = { from: cutFrom(each.at), count: null };
      }
    }
    for (const each of heard) this.post({ type: 'heard', heard: each });
  }
}
