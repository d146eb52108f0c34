// Rounds and kept readings with given cents, for tests. Frequencies are computed here, not by the app.

import {
  type Mark,
  type MarkKind,
  panId,
  type ReadingRecord,
  type RoundConditions,
  type RoundEnd,
  type RoundStart,
  type RoundWay,
  recordId,
  roundOf,
} from '../../../src/domain/records/rack-records';
import type { LineRecord, StrikeRecord } from '../../../src/domain/records/strike-record';
import type { ThirdKind } from '../../../src/domain/tuning/third-kind';
import {
  cents,
  decibels,
  hertz,
  instant,
  midiNote,
  seconds,
} from '../../../src/domain/tuning/units';

const pan = panId('pan-1');
export const day = 24 * 3600 * 1000;
export const firstDay = Date.UTC(2026, 0, 10);

export interface StartSketch {
  readonly day?: number;
  readonly way?: RoundWay;
  readonly a4?: number;
  readonly conditions?: Partial<RoundConditions>;
}

/** A round begun so many days after the first one; its name follows from the day. */
export const startSample = ({
  day: days = 0,
  way = 'guided',
  a4 = 440,
  conditions,
}: StartSketch = {}): RoundStart => ({
  kind: 'round',
  shape: 1,
  id: recordId(`round-${days}`),
  pan,
  at: instant(firstDay + days * day),
  way,
  order: [],
  conditions: { temperature: null, standing: 'settled', ...conditions },
  a4: hertz(a4),
});

export const endSample = (
  start: RoundStart,
  ending: RoundEnd['ending'] = 'finished',
): RoundEnd => ({
  kind: 'round-end',
  shape: 1,
  id: recordId(`${start.id}-end`),
  pan,
  at: instant(start.at + 3600 * 1000),
  round: roundOf(start),
  ending,
});

export const markSample = (
  note: number,
  mark: MarkKind,
  start: RoundStart | null = null,
): Mark => ({
  kind: 'mark',
  shape: 1,
  id: recordId(`mark-${note}-${mark}`),
  pan,
  at: start?.at ?? instant(firstDay),
  round: start && roundOf(start),
  note: midiNote(note),
  mark,
});

export interface NoteSketch {
  readonly note: number;
  /** Against equal temperament at A4 = 440 Hz. */
  readonly fundamental?: number;
  /** Octave and third against the own fundamental. */
  readonly octave?: number | null;
  readonly rival?: number;
  readonly third?: number | null;
  readonly thirdKind?: ThirdKind;
  readonly sigma?: number;
  /** How many strikes, or how far each of them lies from `fundamental`. */
  readonly strikes?: number | readonly number[];
  /** Time constant of all partials. */
  readonly decay?: number;
  readonly buzz?: number;
}

/** A kept reading: three strikes alike unless told otherwise. */
export function readingSample(
  start: RoundStart | null,
  sketch: NoteSketch,
  minutes = 1,
): ReadingRecord {
  const { note, strikes = 3 } = sketch;
  const away = typeof strikes === 'number' ? Array<number>(strikes).fill(0) : strikes;
  return {
    kind: 'reading',
    shape: 1,
    id: recordId(`${start?.id ?? 'alone'}-${note}-${minutes}`),
    pan,
    at: instant((start?.at ?? firstDay) + minutes * 60 * 1000),
    round: start && roundOf(start),
    note: midiNote(note),
    strikes: away.map((by) => strikeRecord(sketch, by)),
    taking: { source: 'practice', sampleRate: 48000, processing: [], gaps: 0, appVersion: '0' },
    sound: null,
  };
}

function strikeRecord(sketch: NoteSketch, by: number): StrikeRecord {
  const { note, fundamental = 0, octave = 0, rival, third = null, sigma = 0.1 } = sketch;
  const { thirdKind = 'double-octave', decay = 0.3, buzz } = sketch;
  const own = 440 * 2 ** ((note - 69) / 12) * 2 ** ((fundamental + by) / 1200);
  const line = (times: number, off: number): LineRecord => ({
    hz: hertz(times * own * 2 ** (off / 1200)),
    sigmaCents: cents(sigma),
    decaySeconds: seconds(decay),
    levelDb: decibels(-20),
  });
  return {
    fundamental: line(1, 0),
    isInferred: false,
    octave: octave === null ? null : line(2, octave),
    octaveRival: rival === undefined ? null : { ...line(2, rival), note: midiNote(note + 12) },
    third:
      third === null ? null : { ...line(thirdKind === 'twelfth' ? 3 : 4, third), kind: thirdKind },
    glideCents: cents(3),
    peakDb: decibels(-12),
    loudness: 'good',
    ...(buzz === undefined ? {} : { buzzDb: decibels(buzz) }),
    alsoRinging: [],
  };
}
