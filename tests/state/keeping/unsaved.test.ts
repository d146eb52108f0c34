import { describe, expect, it } from 'vitest';
import { createRecordKeeper, isAnyUnsaved } from '../../../src/state/keeping/record-keeper';
import { warnOnLeaving } from '../../../src/storage/browser/warn-on-leaving';
import { sampleMark } from '../../storage/rack/rack-sample';
import { memoryPanStore } from '../memory-pan-store';

const settle = () => new Promise((done) => setTimeout(done, 0));

describe('readings on a full phone', () => {
  it('are missed when the window is closed, until they are saved', async () => {
    const { store, trouble } = memoryPanStore();
    const [round, bench] = [createRecordKeeper(store), createRecordKeeper(store)];
    const unsaved = isAnyUnsaved([round, bench]);
    const target = new EventTarget();
    warnOnLeaving(target, () => unsaved.value);
    const close = () => !target.dispatchEvent(new Event('beforeunload', { cancelable: true }));
    expect(close()).toBe(false);
    trouble.now = 'full';
    void bench.keep([sampleMark('mark-1')]);
    await settle();
    expect(unsaved.value).toBe(true);
    expect(close()).toBe(true);
    trouble.now = null;
    await bench.retry();
    expect(unsaved.value).toBe(false);
    expect(close()).toBe(false);
  });
});
