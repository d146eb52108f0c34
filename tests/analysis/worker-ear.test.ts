import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { FromEarWorker, ToEarWorker } from '../../src/analysis/session/protocol';
import { WorkerEar } from '../../src/analysis/worker-ear';
import type { EarState } from '../../src/domain/ports/ear-port';
import { hertz } from '../../src/domain/tuning/units';

/** Stands in for the thread; the test answers for it. */
class FakeWorker {
  static opened: FakeWorker[] = [];
  readonly got: ToEarWorker[] = [];
  terminated = false;
  onmessage: ((event: { data: FromEarWorker }) => void) | null = null;
  onerror: ((event: { message: string; preventDefault: () => void }) => void) | null = null;

  constructor() {
    FakeWorker.opened.push(this);
  }
  postMessage(message: ToEarWorker): void {
    this.got.push(message);
  }
  terminate(): void {
    this.terminated = true;
  }
  says(data: FromEarWorker): void {
    this.onmessage?.({ data });
  }
  dies(): void {
    this.onerror?.({ message: 'out of memory', preventDefault: () => undefined });
  }
  gotTypes(): string[] {
    return this.got.map(({ type }) => type);
  }
}

const context = { a4: hertz(442), expected: null, notes: null };
const port = {} as MessagePort;

function opened() {
  const ear = new WorkerEar();
  const states: EarState['kind'][] = [];
  ear.onState(({ kind }) => states.push(kind));
  const worker = (n: number): FakeWorker => {
    const found = FakeWorker.opened[n];
    if (!found) throw new Error(`no thread ${n} was opened`);
    return found;
  };
  return { ear, states, worker };
}

beforeEach(() => {
  FakeWorker.opened = [];
  vi.stubGlobal('Worker', FakeWorker);
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('the ear', () => {
  it('passes on what the thread hears', () => {
    const { ear, worker } = opened();
    const heard = vi.fn();
    const level = vi.fn();
    ear.onHeard(heard);
    const unsubscribe = ear.onLevel(level);
    worker(0).says({ type: 'level', levelDb: -30 });
    unsubscribe();
    worker(0).says({ type: 'level', levelDb: -20 });
    expect(level.mock.calls).toEqual([[-30]]);
    expect(heard).not.toHaveBeenCalled();
  });

  it('has finished when the thread says so for the same question', async () => {
    const { ear, worker } = opened();
    const done = vi.fn();
    const finished = ear.finish().then(done);
    worker(0).says({ type: 'finished', ticket: 99 });
    await Promise.resolve();
    expect(done).not.toHaveBeenCalled();
    worker(0).says({ type: 'finished', ticket: 1 });
    await finished;
    expect(done).toHaveBeenCalled();
  });

  it('tries another thread when the first one does not answer', () => {
    const { states, worker } = opened();
    vi.advanceTimersByTime(8000);
    expect(worker(0).terminated).toBe(true);
    expect(states.at(-1)).toBe('failed');
    worker(1).says({ type: 'hello' });
    expect(states.at(-1)).toBe('ready');
  });

  it('lets go of everything that waits when the thread dies', async () => {
    const { ear, worker } = opened();
    const finished = ear.finish();
    worker(0).dies();
    await finished;
  });

  it('tells a new thread the context, and begins again where sound was fed', () => {
    const { ear, states, worker } = opened();
    worker(0).says({ type: 'hello' });
    ear.setContext(context);
    ear.begin(48_000);
    worker(0).dies();
    expect(worker(1).got).toEqual([
      { type: 'hello' },
      { type: 'context', context },
      { type: 'begin', sampleRate: 48_000 },
    ]);
    worker(1).says({ type: 'hello' });
    expect(states.at(-1)).toBe('ready');
  });

  it('stays failed after a death with a microphone until the microphone is opened again', () => {
    const { ear, states, worker } = opened();
    worker(0).says({ type: 'hello' });
    ear.attach(port, 48_000);
    worker(0).dies();
    worker(1).says({ type: 'hello' });
    expect(states.at(-1)).toBe('failed');
    ear.attach(port, 48_000);
    expect(states.at(-1)).toBe('ready');
    expect(worker(1).gotTypes()).toEqual(['hello', 'port']);
  });

  it('gives up after the second death, and tries anew when the user does', async () => {
    const { ear, states, worker } = opened();
    ear.setContext(context);
    worker(0).dies();
    worker(1).dies();
    expect(FakeWorker.opened.length).toBe(2);
    expect(states.at(-1)).toBe('failed');
    await ear.finish();
    ear.begin(44_100);
    expect(worker(2).gotTypes()).toEqual(['hello', 'context', 'begin']);
    worker(2).says({ type: 'hello' });
    expect(states.at(-1)).toBe('ready');
  });

  it('notices a thread that ended without an error, and says so', async () => {
    const { ear, states, worker } = opened();
    worker(0).says({ type: 'hello' });
    ear.attach(port, 48_000);
    await vi.dynamicImportSettled();
    for (let n = 0; n < 30; n++) {
      vi.advanceTimersByTime(2000);
      worker(0).says({ type: 'level', levelDb: -60 });
    }
    expect(states.at(-1)).toBe('ready');
    // From here on it is silent, and no question is answered.
    vi.advanceTimersByTime(20_000);
    expect(worker(0).terminated).toBe(true);
    expect(states.at(-1)).toBe('failed');
    expect(FakeWorker.opened.length).toBe(2);
  });

  it('does not take a thread for dead that answers while nothing sounds', async () => {
    const { ear, states, worker } = opened();
    worker(0).says({ type: 'hello' });
    ear.attach(port, 48_000);
    await vi.dynamicImportSettled();
    for (let n = 0; n < 100; n++) {
      const asked = worker(0).gotTypes().length;
      vi.advanceTimersByTime(1000);
      if (worker(0).gotTypes().length > asked) worker(0).says({ type: 'hello' });
    }
    expect(worker(0).terminated).toBe(false);
    expect(states.at(-1)).toBe('ready');
  });

  it('does not take a thread for dead because the phone was asleep', async () => {
    const { ear, worker } = opened();
    worker(0).says({ type: 'hello' });
    ear.attach(port, 48_000);
    await vi.dynamicImportSettled();
    vi.advanceTimersByTime(4000);
    // The clock goes on and no timer runs: then all of them are late at once.
    vi.setSystemTime(Date.now() + 600_000);
    const asleep = performance.now() + 600_000;
    const now = vi.spyOn(performance, 'now').mockReturnValue(asleep);
    vi.advanceTimersByTime(4000);
    now.mockRestore();
    expect(worker(0).terminated).toBe(false);
  });
});
