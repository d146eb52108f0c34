// The audio thread: copies one channel into blocks and measures their peak, nothing else.

/** Samples in a block: 16 render quanta of 128 (chosen, no source). */
const blockLength = 2048;
/** Blocks that are made at the start (chosen): a third of a second of sound may be on its way. */
const spareBlocks = 8;
/**
 * More are made only when the analysis has fallen behind, up to this many (chosen), and kept, so that it happens once.
 */
const mostBlocks = 64;

type ToCapture = { readonly type: 'port'; readonly port: MessagePort } | { readonly type: 'stop' };

const newBlock = (): Float32Array<ArrayBuffer> => new Float32Array(blockLength);

/** Allocates nothing while blocks come back in time: messages are copied as they are sent, so one of each is enough. */
class Capture extends AudioWorkletProcessor {
  readonly #spare: Float32Array<ArrayBuffer>[] = Array.from({ length: spareBlocks }, newBlock);
  readonly #heartbeat = { peak: 0, frames: blockLength, at: 0 };
  readonly #message = { samples: newBlock(), peak: 0 };
  readonly #transferred: ArrayBuffer[] = [this.#message.samples.buffer];
  #filled = 0;
  #peak = 0;
  #sink: MessagePort | null = null;
  #running = true;

  constructor() {
    super();
    this.port.onmessage = (event: MessageEvent<ToCapture>) => {
      const message = event.data;
      if (message.type === 'stop') {
        this.#running = false;
        // Open ports would keep this node in memory for ever.
        this.#sink?.close();
        this.#sink = null;
        this.port.close();
        return;
      }
      this.#sink = message.port;
      this.#sink.onmessage = (back: MessageEvent<Float32Array<ArrayBuffer>>) => {
        if (this.#spare.length < mostBlocks) this.#spare.push(back.data);
      };
    };
  }

  process(inputs: Float32Array[][]): boolean {
    const channel = inputs[0]?.[0];
    if (channel && this.#running) this.#take(channel);
    return this.#running;
  }

  #take(channel: Float32Array): void {
    let { samples } = this.#message;
    let filled = this.#filled;
    let peak = this.#peak;
    for (let n = 0; n < channel.length; n++) {
      const sample = channel[n] ?? 0;
      const size = sample < 0 ? -sample : sample;
      if (size > peak) peak = size;
      samples[filled++] = sample;
      if (filled < blockLength) continue;
      this.#send(peak);
      samples = this.#message.samples;
      filled = 0;
      peak = 0;
    }
    this.#filled = filled;
    this.#peak = peak;
  }

  /** Sends the full block away and puts another in its place. */
  #send(peak: number): void {
    this.#heartbeat.peak = peak;
    this.#heartbeat.at = Date.now();
    this.port.postMessage(this.#heartbeat);
    // As long as nobody listens, the same block is filled again.
    if (!this.#sink) return;
    this.#message.peak = peak;
    this.#sink.postMessage(this.#message, this.#transferred);
    const next = this.#spare.pop() ?? newBlock();
    this.#message.samples = next;
    this.#transferred[0] = next.buffer;
  }
}

registerProcessor('capture', Capture);
