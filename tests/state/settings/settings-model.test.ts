import { describe, expect, it } from 'vitest';
import type { SettingsStore } from '../../../src/domain/ports/settings-store';
import { defaultSettings, type Settings } from '../../../src/domain/settings/settings';
import { hertz } from '../../../src/domain/tuning/units';
import { createSettingsModel } from '../../../src/state/settings/settings-model';

function memoryStore(works: boolean): SettingsStore & { saved: Partial<Settings>[] } {
  const saved: Partial<Settings>[] = [];
  return {
    saved,
    load: async () => ({ kind: 'loaded', settings: defaultSettings, repairs: [] }),
    save: async (changes) => {
      if (works) saved.push(changes);
      return works;
    },
  };
}

describe('the settings', () => {
  it('keep a band pitch from 400 to 480 Hz and refuse every other', async () => {
    const store = memoryStore(true);
    const model = createSettingsModel(store);
    expect(model.setA4(442)).toBe(true);
    expect(model.setA4(399.9)).toBe(false);
    expect(model.setA4(480.1)).toBe(false);
    expect(model.setA4(Number.NaN)).toBe(false);
    expect(model.a4.value).toBe(442);
    await new Promise((done) => setTimeout(done, 0));
    expect(store.saved.map((each) => each.a4)).toEqual([442]);
  });

  it('say so when the phone does not keep them', async () => {
    const model = createSettingsModel(memoryStore(false));
    model.set({ theme: 'light' });
    await new Promise((done) => setTimeout(done, 0));
    expect(model.theme.value).toBe('light');
    expect(model.isNotKept.value).toBe(true);
  });

  it('keep a stored band pitch when the theme is changed before they have been read', async () => {
    const stored: Settings = { ...defaultSettings, a4: hertz(442) };
    const store = {
      ...memoryStore(true),
      load: async () => ({ kind: 'loaded', settings: stored, repairs: [] }) as const,
    };
    const model = createSettingsModel(store);
    const loading = model.load();
    model.set({ theme: 'dark' });
    await loading;
    await new Promise((done) => setTimeout(done, 0));
    expect(model.a4.value).toBe(442);
    // Only what was changed: another window may have changed the rest meanwhile.
    expect(store.saved).toEqual([{ theme: 'dark' }]);
  });

  it('are tried again, all that were not kept, with the next change', async () => {
    const store = memoryStore(true);
    let works = false;
    const model = createSettingsModel({
      ...store,
      save: async (changes) => works && store.save(changes),
    });
    model.set({ theme: 'light' });
    await new Promise((done) => setTimeout(done, 0));
    works = true;
    model.set({ announcement: 'beep' });
    await new Promise((done) => setTimeout(done, 0));
    model.set({ keepsSound: true });
    await new Promise((done) => setTimeout(done, 0));
    expect(store.saved).toEqual([{ theme: 'light', announcement: 'beep' }, { keepsSound: true }]);
    expect(model.isNotKept.value).toBe(false);
  });

  it('are never written over a store that could not be read', async () => {
    const store = { ...memoryStore(true), load: async () => ({ kind: 'unavailable' }) as const };
    const model = createSettingsModel(store);
    await model.load();
    model.set({ theme: 'dark' });
    await new Promise((done) => setTimeout(done, 0));
    expect(store.saved).toEqual([]);
    expect(model.isNotKept.value).toBe(true);
    expect(model.theme.value).toBe('dark');
  });
});
