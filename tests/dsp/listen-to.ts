// Runs the whole ear over a sound in memory.
import type { Heard, ListeningContext, Strike } from '../../src/domain/measurement/strike';
import { hertz } from '../../src/domain/tuning/units';
import { StrikeListener } from '../../src/dsp/strike-listener';

export const anyNote: ListeningContext = { a4: hertz(440), expected: null, notes: null };

/** Everything that was heard, provisional results included; blocks of `block` samples. */
export function everythingHeard(
  samples: Float32Array,
  sampleRate: number,
  context: ListeningContext = anyNote,
  block = 4096,
): readonly Heard[] {
  const listener = new StrikeListener(sampleRate, context);
  const heard: Heard[] = [];
  for (let from = 0; from < samples.length; from += block) {
    heard.push(...listener.push(samples.subarray(from, from + block)));
  }
  return [...heard, ...listener.finish()];
}

/** What was finally heard: provisional strikes left out. */
export const finallyHeard = (
  samples: Float32Array,
  sampleRate: number,
  context: ListeningContext = anyNote,
): readonly Heard[] =>
  everythingHeard(samples, sampleRate, context).filter(
    (heard) => heard.kind !== 'strike' || !heard.provisional,
  );

/** The one strike in a sound; throws with what was heard instead. */
export function onlyStrike(
  samples: Float32Array,
  sampleRate: number,
  context: ListeningContext = anyNote,
): Strike {
  const heard = finallyHeard(samples, sampleRate, context);
  const [first] = heard;
  if (heard.length !== 1 || first?.kind !== 'strike') {
    throw new Error(`expected one strike, heard ${JSON.stringify(heard)}`);
  }
  return first;
}
