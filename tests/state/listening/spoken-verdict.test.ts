import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import type { Heard } from '../../../src/domain/measurement/strike';
import {
  type HandsSettings,
  usualHandsSettings,
} from '../../../src/domain/settings/hands-settings';
import { phaseAfter, type ReadoutPhase } from '../../../src/state/listening/readout-phase';
import { speakVerdicts } from '../../../src/state/listening/spoken-verdict';
import { strikeSample } from '../../domain/reading/strike-sample';

function voiceTest({ speaksVerdict = true, hasVoice = true } = {}) {
  const said: string[] = [];
  const deaf: Promise<void>[] = [];
  let hushes = 0;
  const phase = signal<ReadoutPhase>({ kind: 'listening' });
  const hands = signal<HandsSettings>({ ...usualHandsSettings, speaksVerdict });
  const stop = speakVerdicts(
    {
      announcer: {
        hasVoice: () => hasVoice,
        say: async (text) => void said.push(text),
        beep: async () => {},
        hush: () => {
          hushes++;
        },
      },
      listen: { ignoreDuring: async (sound) => void deaf.push(sound) },
      settings: { hands },
    },
    phase,
    ({ fundamental, strikes }) => `${fundamental.cents} of ${strikes.length}`,
  );
  let event = 0;
  const hear = (heard: Heard) => {
    phase.value = phaseAfter(phase.value, heard);
  };
  const strike = (fundamental: number) => {
    event++;
    hear(strikeSample({ event, fundamental, provisional: true }));
    hear(strikeSample({ event, fundamental }));
  };
  return { said, deaf, phase, hands, strike, hear, stop, hushes: () => hushes };
}

describe('the voice of the bench', () => {
  it('says a verdict once, when the reading has settled', () => {
    const { said, strike } = voiceTest();
    strike(-9);
    strike(-9);
    expect(said).toEqual([]);
    strike(-9);
    expect(said).toEqual(['-9 of 3']);
    strike(-9);
    expect(said).toHaveLength(1);
  });

  it('is never heard itself: all that it says is ignored by the ear', () => {
    const { said, deaf, strike } = voiceTest();
    for (let n = 0; n < 3; n++) strike(4);
    expect(said).toHaveLength(1);
    expect(deaf).toHaveLength(1);
  });

  it('speaks again when blows have moved the note and it was read anew', () => {
    const { said, strike, phase } = voiceTest();
    for (let n = 0; n < 3; n++) strike(-9);
    // The bench shows the old reading while blows fall.
    const shown = phase.value;
    phase.value = { kind: 'listening' };
    phase.value = shown;
    expect(said).toHaveLength(1);
    phase.value = { kind: 'listening' };
    for (let n = 0; n < 3; n++) strike(-3);
    expect(said).toEqual(['-9 of 3', '-3 of 3']);
  });

  it('says nothing about a reading that was there before', () => {
    const before = voiceTest();
    for (let n = 0; n < 3; n++) before.strike(-9);
    const { said, phase } = voiceTest();
    phase.value = before.phase.value;
    expect(said).toEqual([]);
  });

  it('is silent unless it was switched on, and on a phone without a voice', () => {
    for (const options of [{ speaksVerdict: false }, { hasVoice: false }]) {
      const { said, strike } = voiceTest(options);
      for (let n = 0; n < 3; n++) strike(-9);
      expect(said).toEqual([]);
    }
    expect(usualHandsSettings.speaksVerdict).toBe(false);
  });

  it('stops when the bench is left', () => {
    const { said, strike, stop, hushes } = voiceTest();
    stop();
    for (let n = 0; n < 3; n++) strike(-9);
    expect(said).toEqual([]);
    expect(hushes()).toBe(1);
  });
});
