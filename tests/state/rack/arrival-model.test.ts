import { describe, expect, it, vi } from 'vitest';
import type { Arrivals } from '../../../src/domain/ports/arrivals';
import type { FileOnHand } from '../../../src/domain/ports/file-handout';
import { createArrivalModel } from '../../../src/state/rack/arrival-model';

function arrivals(files: FileOnHand[]) {
  const listeners = new Set<() => void>();
  const port: Arrivals = {
    onArrival(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    waiting: async () => files[0] ?? null,
    refused: async () => null,
    async letGo(file) {
      files.splice(files.indexOf(file), 1);
    },
  };
  return { port, tell: () => [...listeners].forEach((listener) => void listener()) };
}

const one = { name: 'one', size: 1 };
const two = { name: 'two', size: 2 };

describe('a file that arrives', () => {
  it('is seen when the app looks, and the next one when it is let go', async () => {
    const { port } = arrivals([one, two]);
    const model = createArrivalModel({ arrivals: async () => port, onArrival: () => undefined });
    expect(model.waiting.value).toBeNull();
    await model.look();
    expect(model.waiting.value).toBe(one);
    await model.letGo();
    expect(model.waiting.value).toBe(two);
    await model.letGo();
    expect(model.waiting.value).toBeNull();
    await model.letGo();
    expect(model.waiting.value).toBeNull();
  });

  it('while the app is open is told of once it can be seen', async () => {
    const files: FileOnHand[] = [];
    const { port, tell } = arrivals(files);
    const model = createArrivalModel({
      arrivals: async () => port,
      onArrival: () => seen(model.waiting.value),
    });
    const seen = vi.fn();
    await model.look();
    files.push(one);
    tell();
    await vi.waitFor(() => expect(seen).toHaveBeenCalledExactlyOnceWith(one));
  });

  it('is seen at the next look if the first could not be had', async () => {
    const { port } = arrivals([one]);
    const load = vi.fn().mockRejectedValueOnce(new Error('no network')).mockResolvedValue(port);
    const model = createArrivalModel({ arrivals: load, onArrival: () => undefined });
    await model.look();
    expect(model.waiting.value).toBeNull();
    await model.look();
    expect(model.waiting.value).toBe(one);
    await model.look();
    expect(load).toHaveBeenCalledTimes(2);
  });
});
