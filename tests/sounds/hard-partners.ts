// Other notes of the pan that sound along: on the struck note's own partials, and anywhere else.
import { between, gaussianFrom } from '../../src/practice-pan/seeded-random';
import type { StruckPartial } from '../../src/practice-pan/struck-note';
import type { HardNote } from './hard-note';
import { restFigures, type Struck } from './hard-rest';

/** Lowest and highest MIDI note of the pan. */
export interface PanRange {
  readonly lowest: number;
  readonly highest: number;
}

const equal = (midi: number): number => 440 * 2 ** ((midi - 69) / 12);
const shifted = (hz: number, cents: number): number => hz * 2 ** (cents / 1200);
const level = (db: number): number => 10 ** (db / 20);

export interface Partner {
  readonly of: 'octave' | 'twelfth' | 'other';
  readonly note: number;
  readonly line: StruckPartial;
}

/**
 * Shares and levels of the ring partners on the note's own octave and twelfth; 9 to 18 cents from the octave on a
 * well-kept tenor (measuring.md's table in numbers; the shares were set with `noteFigures`).
 */
const partnerFigures = { octave: 0.35, twelfth: 0.25, cents: [9, 18], db: [-9, 3] } as const;

export function partnersOf(
  random: () => number,
  note: number,
  own: HardNote,
  { highest }: Pick<PanRange, 'highest'>,
): readonly Partner[] {
  const [octave] = own.octave.lines;
  const found: Partner[] = [];
  const partner = (of: 'octave' | 'twelfth', away: number, hz: number, amplitude: number): void => {
    const apart = (random() < 0.5 ? -1 : 1) * between(random, ...partnerFigures.cents);
    const isAtOnce = random() < 0.5;
    const line = ringingLine(
      random,
      shifted(hz, apart),
      amplitude * level(between(random, ...partnerFigures.db)),
      isAtOnce,
    );
    found.push({ of, note: note + away, line });
  };
  const lots = [random(), random()] as const;
  if (octave && note + 12 <= highest && lots[0] < partnerFigures.octave) {
    partner('octave', 12, octave.hz, octave.amplitude);
  }
  if (note + 19 <= highest && lots[1] < partnerFigures.twelfth) {
    const third = own.thirdKind === 'twelfth' ? own.third?.lines[0]?.amplitude : undefined;
    partner('twelfth', 19, 3 * own.fundamental.hz, third ?? level(-30));
  }
  return found;
}

const ringingLine = (
  random: () => number,
  hz: number,
  amplitude: number,
  isAtOnce: boolean,
): StruckPartial => ({
  hz,
  amplitude,
  decaySeconds: between(random, 2.5, 5) / Math.sqrt(hz),
  bloomSeconds: isAtOnce ? 0.001 : between(random, ...restFigures.blooming.bloomSeconds),
  glideCents: 0,
  glideSeconds: 0.05,
  phase: 2 * Math.PI * random(),
});

/** Other notes: some low ones at once, some that bloom; amplitudes against the struck note's early level. */
export function ringingAlong(
  random: () => number,
  { note, strength }: Struck,
  { lowest, highest }: PanRange,
): readonly { readonly note: number; readonly line: StruckPartial }[] {
  const gaussian = gaussianFrom(random);
  const { atOnce, blooming } = restFigures;
  // What lies on a partial is a matter of its own; the notes beside a note on a pan are fourths and more away.
  const isFree = (other: number): boolean =>
    ![0, 12, 19, 24].some((partial) => Math.abs(other - note - partial) <= (partial === 0 ? 3 : 1));
  const pick = (low: number, high: number): number => {
    for (let turn = 0; turn < 50; turn++) {
      const other = low + Math.floor((high - low + 1) * random());
      if (isFree(other)) return other;
    }
    return note - 5;
  };
  const count = Math.round(between(random, ...atOnce.count));
  const softHigh = note >= 72 ? Math.max(0, 1 - strength / 0.4) * atOnce.softHighDb : 0;
  const together = level(atOnce.db + softHigh + atOnce.spread * gaussian());
  const low = Array.from({ length: count }, () => {
    const other = pick(lowest, Math.min(highest, lowest + 17));
    const share = between(random, 0.5, 1.5) / Math.sqrt(count);
    return { note: other, isAtOnce: true, amplitude: share * together };
  });
  const late = Array.from({ length: blooming.count }, () => ({
    note: pick(lowest, highest),
    isAtOnce: false,
    amplitude: level(between(random, ...blooming.db)),
  }));
  return [...low, ...late].map(({ note: other, isAtOnce, amplitude }) => ({
    note: other,
    line: ringingLine(random, shifted(equal(other), between(random, -20, 20)), amplitude, isAtOnce),
  }));
}
