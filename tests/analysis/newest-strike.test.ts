// The sound of the newest strike stays to be looked into, however long the room is listened to after it.
import { expect, it } from 'vitest';
import { AnalysisSession } from '../../src/analysis/session/analysis-session';
import type { FromEarWorker } from '../../src/analysis/session/protocol';
import { cutFrom, cutSeconds } from '../../src/domain/measurement/cut-sound';
import type { Strike } from '../../src/domain/measurement/strike';
import { finallyHeard } from '../dsp/listen-to';
import { leadNote, placed } from '../synthetic-sounds/sounds';

const sampleRate = 48_000;
const truth = {
  target: 440 * 2 ** (5 / 12),
  fundamental: -9,
  octave: -5,
  third: 2,
  thirdTimes: 4,
} as const;

function heardThenSilence(seconds: number) {
  const told: FromEarWorker[] = [];
  const session = new AnalysisSession((message) => told.push(message));
  session.handle({ type: 'begin', sampleRate });
  const sound = placed([{ at: 0.5, samples: leadNote(truth, sampleRate) }], {
    sampleRate,
    seconds,
  });
  for (let from = 0; from < sound.length; from += 4096) {
    session.handle({
      type: 'samples',
      samples: Float32Array.from(sound.subarray(from, from + 4096)),
    });
  }
  const strike = told
    .flatMap((each) => (each.type === 'heard' ? [each.heard] : []))
    .find((each): each is Strike => each.kind === 'strike' && !each.provisional);
  if (!strike) throw new Error('no strike was heard');
  const cut = () => {
    session.handle({ type: 'cut', ticket: 1, from: cutFrom(strike.at), length: cutSeconds });
    const answer = told.findLast((each) => each.type === 'cut');
    return answer?.type === 'cut' ? answer.sound : null;
  };
  return { session, sound, strike, cut };
}

it('is given after ten seconds of silence, sample by sample', () => {
  const { sound, strike, cut } = heardThenSilence(10);
  const from = Math.round(cutFrom(strike.at) * sampleRate);
  const expected = sound.subarray(from, from + sampleRate);
  expect(cut()?.samples).toEqual(Float32Array.from(expected));
  // It is a copy: what was given away can be asked for again.
  expect(cut()?.samples.length).toBe(sampleRate);
});

it('is forgotten when another listening begins', () => {
  const { session, cut } = heardThenSilence(10);
  session.handle({ type: 'begin', sampleRate });
  session.handle({ type: 'samples', samples: new Float32Array(6 * sampleRate) });
  expect(cut()).toBeNull();
});

it('is heard again as the same strike when only its kept second is listened to', () => {
  const { strike, cut } = heardThenSilence(10);
  const again = finallyHeard(cut()?.samples ?? new Float32Array(0), sampleRate);
  expect(again).toHaveLength(1);
  const [heard] = again;
  if (heard?.kind !== 'strike') throw new Error(`heard ${JSON.stringify(again)}`);
  expect(heard.note).toBe(strike.note);
  expect(Math.abs(heard.fundamental.cents - strike.fundamental.cents)).toBeLessThan(0.1);
});
