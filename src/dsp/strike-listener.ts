// Streaming: blocks of samples in, strikes, knocks and refusals out.
import type { Heard, ListeningContext } from '../domain/measurement/strike';
import { seconds } from '../domain/tuning/units';
import { analyseStrike } from './analyse-strike';
import { OnsetDetector } from './onset-detector';
import { lostRun } from './sound-faults';
import { leadSeconds, longestSeconds, StrikeSpectrum } from './strike-spectrum';

/** Sound needed after the onset for the first verdict and for the settled one, s. */
const provisionalAfter = 0.22;
const settledAfter = 0.6;
/** Shorter than this before the next onset nothing can be measured, s. */
const shortest = 0.26;

/** Rises in the first moment of a stream may be the stream's own beginning, s. */
const settlingIn = 0.03;

/** Two rises this close are one blow: the stick's touch and the note. */
const sameBlow = 0.04;
/** Rises this soon after a hole in the sound may be its end, s. */
const holeShadow = 0.03;
/** Longer runs of exact zeros are digital silence, not a lost device buffer or a few, s. */
const longestHole = 0.1;
/** Sound this many times louder than before the hole is a new strike. */
const louderThanReturning = 3;
/** The peak that is compared falls to 1/e in this time, s. */
const peakSeconds = 0.02;

interface OpenStrike {
  readonly event: number;
  readonly onset: number;
  told: boolean;
}

/** Hears strikes in a stream of one channel. Allocates its buffers once; never throws on any samples. */
export class StrikeListener {
  readonly #onsets: OnsetDetector;
  readonly #spectrum: StrikeSpectrum;
  /** The newest sound, in a ring. */
  readonly #ring: Float32Array;
  readonly #segment: Float32Array;
  #context: ListeningContext;
  #received = 0;
  #events = 0;
  #zeros = 0;
  #holeEnd = Number.NEGATIVE_INFINITY;
  #peak = 0;
  #peakBeforeHole = 0;
  readonly #peakDecay: number;
  #open: OpenStrike | null = null;

  constructor(
    readonly sampleRate: number,
    context: ListeningContext,
  ) {
    this.#context = context;
    this.#peakDecay = Math.exp(-1 / (peakSeconds * sampleRate));
    this.#onsets = new OnsetDetector(sampleRate);
    this.#spectrum = new StrikeSpectrum(sampleRate);
    this.#ring = new Float32Array(Math.ceil(2 * sampleRate));
    this.#segment = new Float32Array(Math.ceil((leadSeconds + longestSeconds) * sampleRate));
  }

  setContext(context: ListeningContext): void {
    this.#context = context;
  }

  /** Takes the next samples (−1…1, any number of them); returns what has become known by their end. */
  push(samples: Float32Array): readonly Heard[] {
    const heard: Heard[] = [];
    for (let n = 0; n < samples.length; n++) {
      const value = samples[n] ?? 0;
      const sample = Number.isFinite(value) ? Math.max(-8, Math.min(8, value)) : 0;
      this.#ring[this.#received % this.#ring.length] = sample;
      this.#received++;
      const onset = this.#onsets.push(sample);
      this.#watchForHole(sample);
      if (onset && !this.#isReturning()) this.#begin(onset.sample, heard);
      const open = this.#open;
      if (!open) continue;
      const elapsed = this.#received - open.onset;
      if (!open.told && elapsed === Math.round(provisionalAfter * this.sampleRate)) {
        this.#judge(open, elapsed, true, heard);
      } else if (elapsed === Math.round(settledAfter * this.sampleRate)) {
        this.#open = null;
        this.#judge(open, elapsed, false, heard);
      }
    }
    return heard;
  }

  #watchForHole(sample: number): void {
    if (sample === 0) {
      this.#zeros++;
      return;
    }
    if (this.#zeros >= lostRun && this.#zeros < longestHole * this.sampleRate) {
      this.#holeEnd = this.#received;
      this.#peakBeforeHole = this.#peak;
      this.#peak = 0;
    }
    this.#zeros = 0;
    this.#peak = Math.max(Math.abs(sample), this.#peak * this.#peakDecay);
  }

  /** Sound that comes back after a hole, no louder than it went, is no strike. */
  #isReturning(): boolean {
    const isNear = this.#received - this.#holeEnd < holeShadow * this.sampleRate;
    return isNear && this.#peak < louderThanReturning * this.#peakBeforeHole;
  }

  /** No more sound will come: judges what is still open. */
  finish(): readonly Heard[] {
    const heard: Heard[] = [];
    this.#close(this.#received, heard);
    return heard;
  }

  #begin(onset: number, heard: Heard[]): void {
    const open = this.#open;
    if (open && onset - open.onset < sameBlow * this.sampleRate) {
      this.#open = { ...open, onset };
      return;
    }
    this.#close(onset, heard);
    this.#open = { event: ++this.#events, onset, told: false };
  }

  #close(end: number, heard: Heard[]): void {
    const open = this.#open;
    this.#open = null;
    if (!open) return;
    const elapsed = end - open.onset;
    if (elapsed >= shortest * this.sampleRate) {
      this.#judge(open, elapsed, false, heard);
    } else if (end < this.#received) {
      const { event } = open;
      const at = seconds(open.onset / this.sampleRate);
      heard.push({ kind: 'refused', event, at, reason: 'too-fast', note: null, candidates: [] });
    }
  }

  #judge(open: OpenStrike, elapsed: number, provisional: boolean, heard: Heard[]): void {
    const lead = Math.round(leadSeconds * this.sampleRate);
    const count = Math.min(this.#segment.length, lead + elapsed);
    const start = open.onset - lead;
    for (let n = 0; n < count; n++) {
      const position = start + n;
      this.#segment[n] = position < 0 ? 0 : (this.#ring[position % this.#ring.length] ?? 0);
    }
    const result = analyseStrike(
      {
        segment: this.#segment,
        count,
        event: open.event,
        at: open.onset / this.sampleRate,
        provisional,
      },
      this.#spectrum,
      this.#context,
    );
    // Sound that was already there when listening began is not an onset; only a true strike may start that early.
    if (open.onset < settlingIn * this.sampleRate && result.kind !== 'strike') return;
    // A first look that does not succeed says nothing yet; the settled one decides.
    if (provisional && result.kind !== 'strike') return;
    if (provisional) open.told = true;
    heard.push(result);
  }
}
