// One recording through the whole ear, as the app feeds it, and what became of it.
import type { Heard, ListeningContext } from '../../../src/domain/measurement/strike';
import { midiNote } from '../../../src/domain/tuning/units';
import { analyseStrike } from '../../../src/dsp/analyse-strike';
import { type EarWeights, earScores } from '../../../src/dsp/faults/ear-scores';
import { StrikeListener } from '../../../src/dsp/strike-listener';
import { anyNote, finallyHeard } from '../../dsp/listen-to';

export interface Sound {
  readonly samples: Float32Array;
  readonly sampleRate: number;
}

/** `right`, `wrong`, `knock`, `nothing`, or the reason of a refusal. */
export type Outcome = string;

/** Silence around a recording, s: listening has begun, and goes on. */
const before = 0.5;
const after = 0.3;

/** `sound` with digital silence before and after it. */
export function inSilence({ samples, sampleRate }: Sound, lead = before, tail = after): Sound {
  const first = Math.round(lead * sampleRate);
  const whole = new Float32Array(first + samples.length + Math.round(tail * sampleRate));
  whole.set(samples, first);
  return { samples: whole, sampleRate };
}

/** Told nothing, or only the note that is expected. */
export const toldNothing = anyNote;
export const toldNote = (note: number): ListeningContext => ({
  ...anyNote,
  expected: midiNote(note),
});

/** What a sound with one strike on `note` in it became: a strike decides, else the first word. */
export function outcomeOf(heard: readonly Heard[], note: number): Outcome {
  const strikes = heard.filter((each) => each.kind === 'strike');
  const wrong = strikes.find((each) => each.note !== note);
  if (wrong) return 'wrong';
  if (strikes.length > 0) return 'right';
  const [first] = heard;
  if (!first) return 'nothing';
  return first.kind === 'refused' ? first.reason : first.kind;
}

/** What a sound became, by the ear's own weights or by others. */
export function hearSound(
  { samples, sampleRate }: Sound,
  note: number,
  context: ListeningContext,
  weights?: EarWeights,
): Outcome {
  if (!weights) return outcomeOf(finallyHeard(samples, sampleRate, context), note);
  const scores = earScores(weights);
  const listener = new StrikeListener(sampleRate, context, (sound, spectrum, told) =>
    analyseStrike(sound, spectrum, told, scores),
  );
  const heard = [...listener.push(new Float32Array(samples)), ...listener.finish()];
  return outcomeOf(
    heard.filter((each) => each.kind !== 'strike' || !each.provisional),
    note,
  );
}
