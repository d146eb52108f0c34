// One short tone of the phone's own, without clicks at its ends.

/** What a short tone is: its pitch in Hz, its amplitude (linear) and how long it lasts, s. */
export interface ShortTone {
  readonly hz: number;
  readonly level: number;
  readonly seconds: number;
}

/** Without a ramp of this length, s, the ends would click (common practice, no source). */
const rampSeconds = 0.01;
/** A tone that is not over so long after it was asked for, ms, never began: no speaker, or the page was put to sleep. */
const longestMs = 1000;

/** Plays the tone from `at` (s of the context's clock) on; resolved when it is over. */
export function playShortTone(
  context: AudioContext,
  at: number,
  { hz, level, seconds }: ShortTone,
): Promise<void> {
  return new Promise((over) => {
    const gain = new GainNode(context, { gain: 0 });
    const source = new OscillatorNode(context, { frequency: hz });
    source.connect(gain).connect(context.destination);
    gain.gain.setValueAtTime(0, at);
    gain.gain.linearRampToValueAtTime(level, at + rampSeconds);
    gain.gain.setValueAtTime(level, at + seconds - rampSeconds);
    gain.gain.linearRampToValueAtTime(0, at + seconds);
    source.onended = () => over();
    source.start(at);
    source.stop(at + seconds);
    setTimeout(over, longestMs);
  });
}
