// The analysis thread: reads messages, calls the ear, posts what was heard.

import type { SoundBlock } from '../../domain/measurement/sound-block';
import type { Heard, ListeningContext } from '../../domain/measurement/strike';
import { standardA4 } from '../../domain/tuning/equal-temperament';
import { StrikeListener } from '../../dsp/strike-listener';
import type { FromWorker, ToWorker } from '../protocol';

let context: ListeningContext = { a4: standardA4, expected: null, notes: null };
let listener: StrikeListener | null = null;
let source: MessagePort | null = null;

const post = (message: FromWorker): void => self.postMessage(message);
const report = (heard: readonly Heard[]): void => {
  for (const each of heard) post({ type: 'heard', heard: each });
};

function listenAnew(sampleRate: number): void {
  source?.close();
  source = null;
  listener = new StrikeListener(sampleRate, context);
}

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  switch (data.type) {
    case 'hello':
      return post({ type: 'hello' });
    case 'context':
      context = data.context;
      return listener?.setContext(context);
    case 'begin':
      return listenAnew(data.sampleRate);
    case 'port': {
      listenAnew(data.sampleRate);
      source = data.port;
      const port = data.port;
      port.onmessage = ({ data: block }: MessageEvent<SoundBlock>) => {
        report(listener?.push(block.samples) ?? []);
        post({ type: 'level', levelDb: 20 * Math.log10(block.peak + 1e-9) });
        port.postMessage(block.samples, [block.samples.buffer]);
      };
      return;
    }
    case 'samples':
      return report(listener?.push(data.samples) ?? []);
    case 'finish':
      report(listener?.finish() ?? []);
      return post({ type: 'finished', ticket: data.ticket });
    default:
      return data satisfies never;
  }
};
