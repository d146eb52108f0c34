// The audio thread: copies one channel into blocks and measures their peak, nothing else.

const blockLength = 2048;
const spareBlocks = 8;

type ToCapture = { readonly type: 'port'; readonly port: MessagePort } | { readonly type: 'stop' };

class Capture extends AudioWorkletProcessor {
  readonly #spare: Float32Array<ArrayBuffer>[] = Array.from(
    { length: spareBlocks },
    () => new Float32Array(blockLength),
  );
  #block: Float32Array<ArrayBuffer> | undefined = this.#spare.pop();
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
        this.port.close();
        return;
      }
      this.#sink = message.port;
      this.#sink.onmessage = (back: MessageEvent<Float32Array<ArrayBuffer>>) => {
        if (this.#spare.length < spareBlocks) this.#spare.push(back.data);
      };
    };
  }

  process(inputs: Float32Array[][]): boolean {
    const channel = inputs[0]?.[0];
    if (channel) {
      for (let n = 0; n < channel.length; n++) this.#take(channel[n] ?? 0);
    }
    return this.#running;
  }

  #take(sample: number): void {
    const block = this.#block;
    if (!block) return;
    block[this.#filled++] = sample;
    this.#peak = Math.max(this.#peak, Math.abs(sample));
    if (this.#filled < blockLength) return;
    this.port.postMessage({ peak: this.#peak, frames: blockLength, at: Date.now() });
    this.#sink?.postMessage({ samples: block, peak: this.#peak }, [block.buffer]);
    // Blocks come back from the analysis; a new one is made only if it has fallen behind.
    this.#block = this.#spare.pop() ?? new Float32Array(blockLength);
    this.#filled = 0;
    this.#peak = 0;
  }
}

registerProcessor('capture', Capture);
