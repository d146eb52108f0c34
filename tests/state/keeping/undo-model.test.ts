import { describe, expect, it } from 'vitest';
import { createUndoModel, undoSeconds } from '../../../src/state/keeping/undo-model';

function timed() {
  const waiting: { seconds: number; over: () => void }[] = [];
  const undo = createUndoModel(
    (seconds) =>
      new Promise((over) => {
        waiting.push({ seconds, over });
      }),
  );
  const pass = async (nth: number) => {
    waiting[nth]?.over();
    await Promise.resolve();
  };
  return { undo, pass, waiting };
}

describe('taking back', () => {
  it('is offered for ten seconds', async () => {
    const { undo, pass, waiting } = timed();
    undo.propose({ kind: 'visit' }, () => undefined);
    expect(undo.offer.value?.done).toEqual({ kind: 'visit' });
    expect(waiting.map(({ seconds }) => seconds)).toEqual([undoSeconds]);
    expect(undoSeconds).toBe(10);
    await pass(0);
    expect(undo.offer.value).toBeNull();
  });

  it('happens once, and then is not offered any more', () => {
    const { undo } = timed();
    let back = 0;
    undo.propose({ kind: 'pan' }, () => back++);
    undo.takeBack();
    undo.takeBack();
    expect(back).toBe(1);
    expect(undo.offer.value).toBeNull();
  });

  it('gives a second offer its own ten seconds', async () => {
    const { undo, pass } = timed();
    undo.propose({ kind: 'visit' }, () => undefined);
    undo.propose({ kind: 'photo' }, () => undefined);
    await pass(0);
    expect(undo.offer.value?.done).toEqual({ kind: 'photo' });
    await pass(1);
    expect(undo.offer.value).toBeNull();
  });

  it('stays while the keyboard is on it', async () => {
    const { undo, pass } = timed();
    undo.propose({ kind: 'visit' }, () => undefined);
    undo.hold(true);
    await pass(0);
    expect(undo.offer.value).not.toBeNull();
    undo.hold(false);
    expect(undo.offer.value).toBeNull();
  });
});
