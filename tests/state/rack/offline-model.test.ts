import { expect, it } from 'vitest';
import type { OfflineState } from '../../../src/domain/ports/phone-ports';
import { createOfflineModel } from '../../../src/state/rack/offline-model';

function updatesThatSay(...states: readonly OfflineState[]) {
  const heard = { applied: 0, say: (_state: OfflineState): void => undefined };
  const model = createOfflineModel(async () => ({
    onState(listener) {
      heard.say = listener;
      for (const state of states) listener(state);
      return () => undefined;
    },
    apply: () => {
      heard.applied++;
    },
  }));
  return { heard, model };
}

it('promises nothing before the copy was looked at', async () => {
  const { model } = updatesThatSay({ kind: 'ready', wrongAnswer: false });
  expect(model.state.value).toEqual({ kind: 'not-ready', wrongAnswer: false });
  await model.begin();
  expect(model.state.value).toEqual({ kind: 'ready', wrongAnswer: false });
});

it('follows what becomes of the copy, and applies an update when asked', async () => {
  const { heard, model } = updatesThatSay({ kind: 'ready', wrongAnswer: false });
  model.apply();
  await model.begin();
  heard.say({ kind: 'update-waiting', isMeasured: false });
  expect(model.state.value).toEqual({ kind: 'update-waiting', isMeasured: false });
  expect(heard.applied).toBe(0);
  model.apply();
  expect(heard.applied).toBe(1);
});

it('promises nothing where the part of the app that looks after it cannot be loaded', async () => {
  const model = createOfflineModel(() => Promise.reject(new Error('no network')));
  await model.begin();
  model.apply();
  expect(model.state.value).toEqual({ kind: 'not-ready', wrongAnswer: false });
});
