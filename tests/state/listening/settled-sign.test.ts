import { signal } from '@preact/signals';
import { describe, expect, it } from 'vitest';
import { type SettledSign, usualHandsSettings } from '../../../src/domain/settings/hands-settings';
import { createDeafMoments } from '../../../src/state/listening/deaf-moments';
import { phaseAfter, type ReadoutPhase } from '../../../src/state/listening/readout-phase';
import { signSettled } from '../../../src/state/listening/settled-sign';
import { strikeSample } from '../../domain/reading/strike-sample';

/** The sign, the ear's deaf moments, and strikes that reach the readout only while the ear is not deaf. */
function signTest(sign: SettledSign, { isListening = true, isAnnounced = false } = {}) {
  const given: string[] = [];
  const ends: (() => void)[] = [];
  const pauses: (() => void)[] = [];
  const deaf = createDeafMoments(() => new Promise((over) => pauses.push(over)));
  const phase = signal<ReadoutPhase>({ kind: 'listening' });
  const give = (kind: string) => () => {
    given.push(kind);
    return new Promise<void>((over) => ends.push(over));
  };
  const stop = signSettled(
    {
      nudge: { buzz: give('buzz'), tone: give('tone') },
      listen: { ignoreDuring: deaf.during, isListening: signal(isListening) },
      settings: { hands: signal({ ...usualHandsSettings, settledSign: sign }) },
      isAnnounced: () => isAnnounced,
    },
    phase,
  );
  let event = 0;
  const look = (provisional: boolean) => {
    const heard = strikeSample({ event, fundamental: -9, provisional });
    if (!deaf.isDeafTo(heard)) phase.value = phaseAfter(phase.value, heard);
  };
  const firstLook = () => {
    event++;
    look(true);
  };
  const lastWord = () => look(false);
  const strike = () => {
    firstLook();
    lastWord();
  };
  const over = async () => {
    for (const list of [ends, pauses]) {
      for (const end of list.splice(0)) end();
      await new Promise((done) => setTimeout(done, 0));
    }
  };
  return { given, phase, firstLook, lastWord, strike, stop, over };
}

const strikesOf = (phase: ReadoutPhase): number =>
  phase.kind === 'heard' || phase.kind === 'settled' ? phase.reading.strikes.length : 0;

describe('the sign that a note is settled', () => {
  for (const sign of ['buzz', 'tone'] as const) {
    it(`is one ${sign}, after the last word on the strike that settles it`, () => {
      const { given, strike, firstLook, lastWord } = signTest(sign);
      strike();
      strike();
      firstLook();
      expect(given).toEqual([]);
      lastWord();
      expect(given).toEqual([sign]);
    });

    it(`is never taken for a strike: nothing counts before the ${sign} is over`, async () => {
      const { phase, strike, over } = signTest(sign);
      for (let n = 0; n < 3; n++) strike();
      strike();
      expect(strikesOf(phase.value)).toBe(3);
      await over();
      strike();
      expect(strikesOf(phase.value)).toBe(4);
    });
  }

  it('is not given again for more strikes of the same reading, and again for the next one', async () => {
    const { given, phase, strike, over } = signTest('buzz');
    for (let n = 0; n < 3; n++) strike();
    await over();
    strike();
    expect(strikesOf(phase.value)).toBe(4);
    expect(given).toHaveLength(1);
    phase.value = { kind: 'listening' };
    for (let n = 0; n < 3; n++) strike();
    expect(given).toHaveLength(2);
  });

  it('is not given unless it was chosen, without a microphone, or once it has ended', () => {
    expect(usualHandsSettings.settledSign).toBe('nothing');
    for (const test of [signTest('nothing'), signTest('tone', { isListening: false })]) {
      for (let n = 0; n < 3; n++) test.strike();
      expect(test.phase.value.kind).toBe('settled');
      expect(test.given).toEqual([]);
    }
    const { given, stop, strike } = signTest('buzz');
    stop();
    for (let n = 0; n < 3; n++) strike();
    expect(given).toEqual([]);
  });

  it('is no tone where a voice or beeps follow, but still a buzz', () => {
    for (const [sign, expected] of [
      ['tone', []],
      ['buzz', ['buzz']],
    ] as const) {
      const { given, strike } = signTest(sign, { isAnnounced: true });
      for (let n = 0; n < 3; n++) strike();
      expect(given).toEqual(expected);
    }
  });
});
