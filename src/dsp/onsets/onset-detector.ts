// Finds the moments at which something was struck: fast rises in any octave over a floor that follows the room.
// Limits are chosen, no source; seeded scenes, blows, voices and real strikes test what comes of them.
import { dbOfPower, powerOfDb } from '../../domain/numbers/decibel-levels';
import { OctaveBands } from './octave-bands';
import {
  type AskedBand,
  askedBands,
  type BandCourse,
  longestSpan,
  restrokesIn,
  riseAt,
  sureRestrokeDb,
} from './restrokes';
import { RoomFloor } from './room-floor';

/** Length of one level step, s. */
const stepSeconds = 0.004;
/** A band's level is the mean over this many of its periods, but over at least two steps. */
const periodsInLevel = 2.2;
const leastSteps = 2;
/** A rise must exceed the loudest level of this time before it, s: beating and blooming do not. */
const beforeSeconds = 0.06;
/** Needed rise over that, and over the room, dB. */
const jumpDb = 8;
const overRoomDb = 12;
/** A note struck again while it rings rises less, but in several octaves at once: by this much in all, dB … */
const jumpInAllDb = 10;
/** … where only rises from here on count, and no octave counts more than `jumpDb`, dB … */
const leastJumpDb = 2;
/** … and only octaves so wide that noise in them is steady, Hz. */
const steadyFrom = 500;
/** In the narrow low octaves noise alone rises by a few decibels more. */
const lowJumpDb = 10;
/** Quietest onset worth a look, dB of the band. */
const quietestDb = -84;
/** For this long after an onset its own blooming partials do not count as a new one, s, unless they are this much louder, dB. */
const restSeconds = 0.12;
const muchLouderDb = 10;
/** Power that counts as silence: −200 dB of full scale, below any microphone. */
const silence = 1e-20;
/** Energies are kept for this long, s. */
const keptSeconds = 1;
/** For this long after an onset, a sure rise of all bands together is a new stroke as well, s. */
const ringingSeconds = 1;
/** The bands are consulted once the note before has sounded for this long, s. */
const askedAfter = 0.1;

export interface Onset {
  /** Sample at which the rise began, counted from the first sample ever pushed. */
  readonly sample: number;
  /** Rise over the loudest level just before, dB, in the band that rose most. */
  readonly riseDb: number;
  /** Level of all bands together after the rise, dB. */
  readonly levelDb: number;
}

/** Streaming onset detector, fed with pieces of steps; allocation-free between onsets. */
export class OnsetDetector implements BandCourse {
  readonly stepSeconds: number;
  readonly #step: number;
  readonly #bands: OctaveBands;
  readonly #room: RoomFloor;
  readonly #whole: RoomFloor;
  /** Steps in a band's level. */
  readonly #spans: readonly number[];
  readonly #delays: readonly number[];
  /** Energies of the newest steps of each band, and levels (dB), both as rings of `#depth`. */
  readonly #depth: number;
  readonly #energies: Float64Array;
  readonly #levels: Float64Array;
  readonly #sum: Float64Array;
  /** Samples of the step that is not yet full. */
  readonly #samples: Float64Array;
  #wholeSum = 0;
  #filled = 0;
  #steps = 0;
  #restUntil = 0;
  #loudestDb = -200;
  #wholeDb = -200;
  #onsetStep = Number.NEGATIVE_INFINITY;
  #asked: readonly AskedBand[] = [];

  constructor(readonly sampleRate: number) {
    this.#step = Math.max(8, Math.round(stepSeconds * sampleRate));
    this.#bands = new OctaveBands(sampleRate);
    const { centres } = this.#bands;
    this.#spans = centres.map((hz) =>
      Math.max(leastSteps, Math.round(periodsInLevel / hz / stepSeconds)),
    );
    this.#delays = centres.map((hz) => 0.25 / hz);
    this.stepSeconds = this.#step / sampleRate;
    this.#depth = Math.round(keptSeconds / this.stepSeconds);
    this.#energies = new Float64Array(this.#depth * centres.length);
    this.#levels = new Float64Array(this.#depth * centres.length).fill(-200);
    this.#sum = new Float64Array(centres.length);
    this.#samples = new Float64Array(this.#step);
    this.#room = new RoomFloor(centres.length, stepSeconds);
    this.#whole = new RoomFloor(1, stepSeconds);
  }

  /** Level of the room's own noise as it was before the newest sound, dB of full scale (root mean square). */
  get roomDb(): number {
    return this.#whole.levelDb(0);
  }

  /** Level of the newest step, dB of full scale (root mean square). */
  get levelDb(): number {
    return this.#wholeDb;
  }

  get centres(): readonly number[] {
    return this.#bands.centres;
  }

  energy(band: number, step: number): number {
    const isKept = step >= 0 && step < this.#steps && step >= this.#steps - this.#depth;
    return isKept ? this.#energies[band * this.#depth + (step % this.#depth)] : 0;
  }

  room(band: number): number {
    return powerOfDb(this.#room.levelDb(band));
  }

  /**
   * Further strokes (samples as in `Onset`, rises of all bands together in dB) of at least `leastDb` in the sound of
   * the note struck at sample `onset`, up to sample `end`; both within the last second.
   */
  restrokes(
    onset: number,
    end: number,
    leastDb: number,
  ): readonly { readonly sample: number; readonly riseDb: number }[] {
    const last = Math.min(this.#steps, Math.floor(end / this.#step));
    return restrokesIn(this, Math.round(onset / this.#step), last, leastDb).map(
      ({ step, riseDb }) => ({ sample: step * this.#step, riseDb }),
    );
  }

  /** Samples until the step that is being taken is full: no more may be taken at once. */
  get untilStep(): number {
    return this.#step - this.#filled;
  }

  /** Takes `samples[from…from + count)`; returns an onset at the end of the step in which it is certain, else null. */
  take(samples: Float32Array, from: number, count: number): Onset | null {
    const step = this.#samples;
    const filled = this.#filled;
    for (let n = 0; n < count; n++) step[filled + n] = samples[from + n];
    this.#filled += count;
    if (this.#filled < this.#step) return null;
    this.#bands.take(step, this.#filled, this.#sum);
    let sum = 0;
    for (let n = 0; n < this.#filled; n++) sum += step[n] ** 2;
    this.#wholeSum = sum;
    return this.#endStep();
  }

  #endStep(): Onset | null {
    const slot = this.#steps % this.#depth;
    const wholeDb = dbOfPower(this.#wholeSum / this.#filled, silence);
    this.#wholeDb = wholeDb;
    let best = -1;
    let bestRise = Number.NEGATIVE_INFINITY;
    let inAll = 0;
    for (let k = 0; k < this.#sum.length; k++) {
      const row = k * this.#depth;
      this.#energies[row + slot] = this.#sum[k] / this.#filled;
      const levelDb = this.#meanLevel(k);
      const rise = levelDb - this.#loudestBefore(k);
      const stands = levelDb > quietestDb && levelDb > this.#room.levelDb(k) + overRoomDb;
      this.#room.follow(k, levelDb);
      this.#levels[row + slot] = levelDb;
      const isSteady = this.#bands.centres[k] >= steadyFrom;
      if (stands && isSteady && rise > leastJumpDb) inAll += Math.min(rise, jumpDb);
      if (stands && rise > bestRise) {
        best = k;
        bestRise = rise;
      }
    }
    this.#whole.follow(0, wholeDb);
    this.#filled = 0;
    this.#steps++;
    const rested = this.#steps > this.#restUntil || wholeDb > this.#loudestDb + muchLouderDb;
    const isRise = best >= 0 && (this.#isJump(best, bestRise) || inAll >= jumpInAllDb);
    const again = isRise ? null : this.#stepOfRestroke();
    if ((!isRise && again === null) || !rested) {
      this.#loudestDb = Math.max(this.#loudestDb - 0.4, wholeDb);
      return null;
    }
    this.#restUntil = this.#steps + Math.round(restSeconds / stepSeconds);
    this.#loudestDb = wholeDb;
    const sample =
      again === null
        ? Math.max(
            0,
            Math.round((this.#steps - 1) * this.#step - this.#delays[best] * this.sampleRate),
          )
        : again * this.#step;
    this.#onsetStep = Math.round(sample / this.#step);
    this.#asked = [];
    return { sample, riseDb: bestRise, levelDb: wholeDb };
  }

  #isJump(band: number, riseDb: number): boolean {
    return riseDb >= (this.#bands.centres[band] < steadyFrom ? lowJumpDb : jumpDb);
  }

  /** The step in which a ringing note was struck again, if that can be seen yet. */
  #stepOfRestroke(): number | null {
    const since = (this.#steps - this.#onsetStep) * this.stepSeconds;
    if (since < askedAfter || since > ringingSeconds) return null;
    if (this.#asked.length === 0) this.#asked = askedBands(this, this.#onsetStep);
    const step = this.#steps - longestSpan(this.#asked);
    return riseAt(this, this.#asked, step) >= sureRestrokeDb ? step : null;
  }

  #meanLevel(band: number): number {
    const span = Math.min(this.#spans[band], this.#steps + 1);
    let energy = 0;
    for (let back = 0; back < span; back++) {
      energy += this.#energies[band * this.#depth + this.#slot(back)];
    }
    return dbOfPower(energy / span, silence);
  }

  /** The loudest earlier level that shares no sample with the newest one. */
  #loudestBefore(band: number): number {
    const span = this.#spans[band];
    const steps = Math.round(beforeSeconds / stepSeconds);
    let loudest = -110;
    for (let back = span; back < span + steps; back++) {
      loudest = Math.max(loudest, this.#levels[band * this.#depth + this.#slot(back)]);
    }
    return loudest;
  }

  #slot(back: number): number {
    return (this.#steps - back + 2 * this.#depth) % this.#depth;
  }
}
