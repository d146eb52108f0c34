// The capture thread, run here with ports that deliver at once: what it sends, and that it allocates nothing.
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { collectedHeap, heapNow } from '../memory/collected-heap';
import { arraysMadeBy } from '../memory/count-arrays';

const quantum = 128;
const blockLength = 2048;
const quantaInBlock = blockLength / quantum;

interface Processor {
  readonly port: FakePort;
  process(inputs: readonly (readonly Float32Array[])[]): boolean;
}
interface Block {
  readonly samples: Float32Array<ArrayBuffer>;
  readonly peak: number;
}

/** Like a MessagePort whose other side is here: `sent` sees each message, and `deliver` answers. */
class FakePort {
  onmessage: ((event: { data: unknown }) => void) | null = null;
  sent: (message: unknown, transferred: readonly ArrayBuffer[]) => void = () => {};
  closed = false;
  readonly #event: { data: unknown } = { data: null };

  postMessage(message: unknown, transferred: readonly ArrayBuffer[]): void {
    this.sent(message, transferred);
  }

  deliver(data: unknown): void {
    this.#event.data = data;
    this.onmessage?.(this.#event);
  }

  close(): void {
    this.closed = true;
  }
}

let Capture: new () => Processor;
beforeAll(async () => {
  vi.stubGlobal(
    'AudioWorkletProcessor',
    class {
      readonly port = new FakePort();
    },
  );
  vi.stubGlobal('registerProcessor', (_: string, made: new () => Processor) => {
    Capture = made;
  });
  // By its address: the types of the audio thread are not those of this room.
  const entry = new URL('../../src/audio/worklet/capture.worklet.ts', import.meta.url);
  await import(/* @vite-ignore */ entry.href);
});
afterAll(() => {
  vi.unstubAllGlobals();
});

function opened() {
  const capture = new Capture();
  const sink = new FakePort();
  capture.port.deliver({ type: 'port', port: sink });
  return { capture, sink };
}

/** A real transfer: what was sent is empty afterwards on the side that sent it. */
function received(message: unknown, transferred: readonly ArrayBuffer[]): Block {
  return structuredClone(message as Block, { transfer: [...transferred] });
}

/** Plays `count` quanta in which sample n is n / 2²⁰. */
function play(capture: Processor, from: number, count: number): void {
  const channel = new Float32Array(quantum);
  const inputs = [[channel]];
  for (let q = from; q < from + count; q++) {
    for (let n = 0; n < quantum; n++) channel[n] = (q * quantum + n) / 2 ** 20;
    capture.process(inputs);
  }
}

const isWhole = (blocks: readonly Block[]): boolean =>
  blocks.every(({ samples, peak }, b) => {
    const first = (b * blockLength) / 2 ** 20;
    const last = (b * blockLength + blockLength - 1) / 2 ** 20;
    return samples.every((value, n) => value === first + n / 2 ** 20) && peak === last;
  });

describe('the capture thread', () => {
  it('sends every sample once, in blocks with their peak', () => {
    const { capture, sink } = opened();
    const blocks: Block[] = [];
    sink.sent = (message, transferred) => {
      const block = received(message, transferred);
      blocks.push(structuredClone(block));
      sink.deliver(block.samples);
    };
    play(capture, 0, 50 * quantaInBlock);
    expect(blocks.length).toBe(50);
    expect(isWhole(blocks)).toBe(true);
  });

  it('tells the page about each block', () => {
    const { capture } = opened();
    const peaks: number[] = [];
    capture.port.sent = (message) => peaks.push((message as { peak: number }).peak);
    play(capture, 0, 2 * quantaInBlock);
    expect(peaks).toEqual([2047 / 2 ** 20, 4095 / 2 ** 20]);
  });

  it('makes no array while blocks come back, also when seven are under way', () => {
    const { capture, sink } = opened();
    const away: Float32Array[] = [];
    sink.sent = (message, transferred) => {
      away.push(received(message, transferred).samples);
      const back = away.length > 7 ? away.shift() : null;
      if (back) sink.deliver(back);
    };
    const channel = new Float32Array(quantum).fill(0.1);
    const inputs = [[channel]];
    const made = arraysMadeBy(() => {
      for (let q = 0; q < 1000 * quantaInBlock; q++) capture.process(inputs);
    });
    expect(made).toBe(0);
  });

  it('makes no array while nobody listens yet', () => {
    const capture = new Capture();
    const inputs = [[new Float32Array(quantum)]];
    const made = arraysMadeBy(() => {
      for (let q = 0; q < 1000 * quantaInBlock; q++) capture.process(inputs);
    });
    expect(made).toBe(0);
  });

  it('loses no sound when the analysis falls behind, and makes blocks for that only once', () => {
    const { capture, sink } = opened();
    const blocks: Block[] = [];
    sink.sent = (message, transferred) => blocks.push(received(message, transferred));
    const first = arraysMadeBy(() => play(capture, 0, 30 * quantaInBlock));
    // The quantum of the test itself, and the blocks beyond those there are.
    expect(first).toBe(1 + 30 - 8);
    expect(blocks.length).toBe(30);
    expect(isWhole(blocks)).toBe(true);
    for (const { samples } of blocks.splice(0)) sink.deliver(samples);
    expect(arraysMadeBy(() => play(capture, 0, 30 * quantaInBlock))).toBe(1);
    expect(isWhole(blocks)).toBe(true);
  });

  it('leaves no garbage behind but the number with the time of a block', () => {
    const { capture, sink } = opened();
    let underWay: Float32Array | null = null;
    sink.sent = (message) => {
      if (underWay) sink.deliver(underWay);
      underWay = (message as Block).samples;
    };
    const channel = new Float32Array(quantum).map((_, n) => 0.3 * Math.sin(n));
    const inputs = [[channel]];
    const run = (blocks: number): void => {
      for (let q = 0; q < blocks * quantaInBlock; q++) capture.process(inputs);
    };
    const growth = (blocks: number): number => {
      const before = collectedHeap();
      run(blocks);
      return heapNow() - before;
    };
    // Until it is compiled, the engine boxes numbers.
    run(3000);
    const least = Math.min(...Array.from({ length: 5 }, () => growth(2000)));
    // 16 bytes a block are the clock's answer. A message made anew would be some 40, a number a quantum 256.
    expect(least / 2000, 'bytes a block').toBeLessThan(32);
  });

  it('ends and closes its ports when it is told to stop', () => {
    const { capture, sink } = opened();
    capture.port.deliver({ type: 'stop' });
    expect(capture.process([[new Float32Array(quantum)]])).toBe(false);
    expect([sink.closed, capture.port.closed]).toEqual([true, true]);
  });
});
