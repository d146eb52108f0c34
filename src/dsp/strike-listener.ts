// Streaming: blocks of samples in, strikes, knocks and refusals out.
import type { Heard, ListeningContext } from '../domain/measurement/strike';
import { analyseStrike } from './analyse-strike';
import { HoleWatch } from './faults/hole-watch';
import { areSeveralStrokes, doubtfulDb, leastRiseDb, suspectDb } from './faults/several-strokes';
import { type Onset, OnsetDetector } from './onsets/onset-detector';
import { areRestrokes, sureRestrokeDb } from './onsets/restrokes';
import { copyFromRing, copyIntoRing, loudestInRing } from './onsets/sound-ring';
import { isInRoll, type OpenStrike, tooFast } from './open-strike';
import { leadSeconds, longestSeconds, StrikeSpectrum } from './spectrum/strike-spectrum';

/** Sound needed after the onset for the first verdict and for the settled one, s. */
const provisionalAfter = 0.22;
const settledAfter = 0.6;
/** If the next onset comes sooner than this, nothing can be measured, s (times here: chosen, no source). */
const shortest = 0.26;

/** Levels are taken over this time, as the onset detector does, s. */
const levelSeconds = 0.004;
/** Rises in the first moment of a stream may be the stream's own beginning, s. */
const settlingIn = 0.03;

/** Two rises this close together are one blow, s: the stick's touch and the note. */
const sameBlow = 0.04;
/** After a roll's last known stroke further ones may hide; what comes within this time belongs to the roll too, s. */
const rollLasts = 0.45;
/** Hears strikes in a stream of one channel. Allocates its buffers once; never throws on any samples. */
export class StrikeListener {
  readonly #onsets: OnsetDetector;
  readonly #holes: HoleWatch;
  readonly #spectrum: StrikeSpectrum;
  /** The newest sound, in a ring. */
  readonly #ring: Float32Array;
  readonly #segment: Float32Array;
  /** Sound after an onset at which the first verdict and the settled one are due, samples. */
  readonly #firstVerdict: number;
  readonly #settledVerdict: number;
  #context: ListeningContext;
  #received = 0;
  #events = 0;
  #open: OpenStrike | null = null;
  /** Until when a roll may go on (samples), and its level, dB. */
  #rollUntil = Number.NEGATIVE_INFINITY;
  #rollDb = -200;

  constructor(
    readonly sampleRate: number,
    context: ListeningContext,
    /** Differs from the ear's own only where its weights are being fitted. */
    readonly analyse: typeof analyseStrike = analyseStrike,
  ) {
    this.#context = context;
    this.#onsets = new OnsetDetector(sampleRate);
    this.#holes = new HoleWatch(sampleRate);
    this.#spectrum = new StrikeSpectrum(sampleRate);
    this.#ring = new Float32Array(Math.ceil(2 * sampleRate));
    this.#firstVerdict = Math.round(provisionalAfter * sampleRate);
    this.#settledVerdict = Math.round(settledAfter * sampleRate);
    this.#segment = new Float32Array(Math.ceil((leadSeconds + longestSeconds) * sampleRate));
  }

  setContext(context: ListeningContext): void {
    this.#context = context;
  }

  /** Takes the next samples (−1…1, any number of them); returns what has become known by their end. */
  push(samples: Float32Array): readonly Heard[] {
    const heard: Heard[] = [];
    for (let from = 0; from < samples.length; ) {
      const at = this.#received % this.#ring.length;
      const count = Math.min(
        samples.length - from,
        this.#ring.length - at,
        this.#onsets.untilStep,
        this.#untilVerdict(),
      );
      copyIntoRing(this.#ring, at, samples, from, count);
      this.#received += count;
      const onset = this.#onsets.take(this.#ring, at, count);
      this.#holes.take(this.#ring, at, count);
      if (onset && !this.#holes.isAtHole()) this.#begin(onset, heard);
      this.#judgeInTime(heard);
      from += count;
    }
    return heard;
  }

  /** Sound until a verdict on the open strike is due, samples. */
  #untilVerdict(): number {
    const open = this.#open;
    if (!open) return Number.POSITIVE_INFINITY;
    const elapsed = this.#received - open.onset;
    const first = this.#firstVerdict - elapsed;
    return !open.told && first > 0 ? first : Math.max(1, this.#settledVerdict - elapsed);
  }

  #judgeInTime(heard: Heard[]): void {
    const open = this.#open;
    if (!open) return;
    const elapsed = this.#received - open.onset;
    if (elapsed < sameBlow * this.sampleRate) {
      open.levelDb = Math.max(open.levelDb, this.#onsets.levelDb);
    }
    if (!open.told && elapsed === this.#firstVerdict) {
      this.#judge(open, elapsed, true, heard);
    } else if (elapsed === this.#settledVerdict) {
      this.#open = null;
      this.#judge(open, elapsed, false, heard);
    }
  }

  /** No more sound will come: judges what is still open. */
  finish(): readonly Heard[] {
    const heard: Heard[] = [];
    this.#close(this.#received, heard);
    return heard;
  }

  #begin({ sample, levelDb }: Onset, heard: Heard[]): void {
    const open = this.#open;
    if (open && sample - open.onset < sameBlow * this.sampleRate) {
      this.#open = { ...open, onset: sample, levelDb: Math.max(levelDb, open.levelDb) };
      return;
    }
    const isTooSoon =
      open !== null &&
      !this.#wasThereBefore(open) &&
      sample - this.#lastStroke(open, sample) < shortest * this.sampleRate;
    this.#close(sample, heard);
    const { roomDb } = this.#onsets;
    this.#open = {
      event: ++this.#events,
      onset: sample,
      levelDb,
      roomDb,
      tooSoonAfterDb: isTooSoon
        ? this.#loudestDb(open, sample)
        : sample < this.#rollUntil
          ? this.#rollDb
          : null,
      isAfterRoll: sample < this.#rollUntil + rollLasts * this.sampleRate,
      told: false,
    };
  }

  #close(end: number, heard: Heard[]): void {
    const open = this.#open;
    this.#open = null;
    if (!open) return;
    const elapsed = end - open.onset;
    if (elapsed >= shortest * this.sampleRate) this.#judge(open, elapsed, false, heard);
    else if (end < this.#received && !this.#wasThereBefore(open))
      this.#refuseRoll(open, end, heard);
  }

  /** Refuses `open`, whose sound up to `end` holds more than one stroke. */
  #refuseRoll(open: OpenStrike, end: number, heard: Heard[]): void {
    const last = this.#onsets.restrokes(open.onset, end, suspectDb).at(-1)?.sample ?? open.onset;
    this.#rollUntil = last + rollLasts * this.sampleRate;
    this.#rollDb = this.#loudestDb(open, end);
    heard.push(tooFast(open, this.sampleRate));
  }

  /** Level of the loudest stroke in the sound of `open` before `end`, dB. */
  #loudestDb(open: OpenStrike, end: number): number {
    const size = Math.round(levelSeconds * this.sampleRate);
    return Math.max(open.levelDb, loudestInRing(this.#ring, open.onset, end, size));
  }

  /** Where the last stroke in the sound of `open` before `end` began. */
  #lastStroke(open: OpenStrike, end: number): number {
    return this.#onsets.restrokes(open.onset, end, sureRestrokeDb).at(-1)?.sample ?? open.onset;
  }

  /** Sound that was already there when listening began is not an onset. */
  #wasThereBefore(open: OpenStrike): boolean {
    return open.onset < settlingIn * this.sampleRate;
  }

  #judge(open: OpenStrike, elapsed: number, provisional: boolean, heard: Heard[]): void {
    const end = open.onset + elapsed;
    if (isInRoll(open)) {
      if (!provisional) this.#refuseRoll(open, end, heard);
      return;
    }
    const rises = this.#onsets.restrokes(open.onset, end, leastRiseDb).map((each) => each.riseDb);
    const highest = Math.max(0, ...rises);
    if (provisional && highest >= doubtfulDb) return;
    const isRestruck = areRestrokes(rises) || (open.isAfterRoll && highest >= suspectDb);
    if (isRestruck && !this.#wasThereBefore(open)) {
      if (!provisional) this.#refuseRoll(open, end, heard);
      return;
    }
    const lead = Math.round(leadSeconds * this.sampleRate);
    const count = Math.min(this.#segment.length, lead + elapsed);
    copyFromRing(this.#ring, open.onset - lead, this.#segment, count);
    const result = this.analyse(
      {
        segment: this.#segment,
        count,
        event: open.event,
        at: open.onset / this.sampleRate,
        provisional,
        roomDb: open.roomDb,
      },
      this.#spectrum,
      this.#context,
    );
    // Only a true strike may start as early as the stream.
    if (this.#wasThereBefore(open) && result.kind !== 'strike') return;
    const isSeveral = areSeveralStrokes(result, highest, provisional);
    // A first look that fails says nothing yet; the settled one decides.
    if (provisional && (result.kind !== 'strike' || isSeveral)) return;
    if (provisional) open.told = true;
    const isDoubtful =
      result.kind === 'refused' && (result.reason === 'unclear' || result.reason === 'lost-audio');
    const isRoll = (isDoubtful && highest >= suspectDb) || isSeveral;
    if (isRoll) this.#refuseRoll(open, end, heard);
    else heard.push(result);
  }
}
