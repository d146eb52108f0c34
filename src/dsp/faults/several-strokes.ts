// Whether what was measured as one strike was several: a roll whose strokes hide in each other's sound.
import type { Heard, MeasuredPartial } from '../../domain/measurement/strike';

/**
 * Inside the sound of one strike, a rise of all octaves together by this much is another stroke, dB: before a first
 * verdict, and where the sound does not look like one strike anyway (chosen, no source).
 */
export const doubtfulDb = 7.5;
export const suspectDb = 5;
/** Smaller rises do not count, dB. */
export const leastRiseDb = 3;
/**
 * A fundamental that rings longer than this was struck again, if there is any rise as well: time constant times the
 * root of its frequency, √s. Of 420 seeded scenes one exceeds 7 and none is refused at 9; C4 with a T60 of 2 s has 4.7,
 * B0 with 5 s 4.0. Rolls reach 44.
 */
const longestRing = 14;
/** … or this long, if the rise is a suspicious one: of 89 real single strikes two have such a rise. */
const suspectRing = 9;
/**
 * Where its sound has a suspicious rise, a strike's fundamental must be at least this sure, cents: a stroke of another
 * phase inside it fits no line. Of 425 strikes (seeded scenes, restruck leads, recordings) none with such a rise
 * exceeds 0.16.
 */
const shakyCents = 0.25;

/**
 * Both are checked only for notes so high that their fundamental is clear of noise and of slow beats, Hz (chosen, no
 * source).
 */
const askedFrom = 120;
const askedOf = (heard: Heard): MeasuredPartial | null =>
  heard.kind === 'strike' && heard.fundamental.hz >= askedFrom ? heard.fundamental : null;
const ringOf = (heard: Heard): number => {
  const asked = askedOf(heard);
  return asked ? asked.decaySeconds * Math.sqrt(asked.hz) : 0;
};
const errorOf = (heard: Heard): number => askedOf(heard)?.sigmaCents ?? 0;

/**
 * Whether the sound that was judged as `heard` holds more than one stroke; `riseDb` is the highest rise inside it, of
 * all octaves together, dB.
 */
export const areSeveralStrokes = (heard: Heard, riseDb: number, provisional: boolean): boolean =>
  (riseDb >= leastRiseDb && ringOf(heard) > longestRing) ||
  (riseDb >= suspectDb && ringOf(heard) > suspectRing) ||
  (!provisional && riseDb >= suspectDb && errorOf(heard) > shakyCents);
