// Strikes as they are kept, and kept strikes turned into strikes again: the cents follow from the Hz and from the
// note's target.
import type {
  HeardWindow,
  Loudness,
  MeasuredPartial,
  RingingLine,
  Strike,
  UpperPartial,
} from '../measurement/strike';
import { frequencyOf } from '../tuning/equal-temperament';
import type { ThirdKind } from '../tuning/third-kind';
import {
  type Cents,
  centsBetween,
  type Decibels,
  type Hertz,
  hertz,
  type MidiNote,
  type Seconds,
  seconds,
  shiftedBy,
} from '../tuning/units';

/** One measured line as it came from the ear; cents are computed when it is read. */
export interface LineRecord {
  readonly hz: Hertz;
  readonly sigmaCents: Cents;
  readonly decaySeconds: Seconds;
  readonly levelDb: Decibels;
  /** The part of the sound in which it was heard, s after the onset; missing in lines of older apps. */
  readonly window?: HeardWindow;
}

/** One strike as it came from the ear. */
export interface StrikeRecord {
  readonly fundamental: LineRecord;
  /** The other one of two lines; like `thirdRival` missing in strikes of older apps, which looked at the octave only. */
  readonly fundamentalRival?: LineRecord | null;
  readonly isInferred: boolean;
  readonly octave: LineRecord | null;
  readonly octaveRival: (LineRecord & { readonly note: MidiNote | null }) | null;
  readonly third: (LineRecord & { readonly kind: ThirdKind }) | null;
  readonly thirdRival?: LineRecord | null;
  readonly glideCents: Cents;
  readonly peakDb: Decibels;
  readonly loudness: Loudness;
  /** See `Strike`; missing in strikes of older apps. */
  readonly buzzDb?: Decibels;
  readonly alsoRinging: readonly RingingLine[];
}

/** A settled strike as it is kept: as it came from the ear, without anything that can be computed. */
export function strikeRecordOf(strike: Strike): StrikeRecord {
  const { fundamentalRival, octave, octaveRival, third, thirdRival } = strike;
  return {
    fundamental: lineOf(strike.fundamental),
    ...(fundamentalRival === undefined
      ? {}
      : { fundamentalRival: fundamentalRival && lineOf(fundamentalRival) }),
    isInferred: strike.isInferred,
    octave: octave && lineOf(octave),
    octaveRival: octaveRival && { ...lineOf(octaveRival), note: octaveRival.note },
    third: third && { ...lineOf(third), kind: third.kind },
    ...(thirdRival === undefined ? {} : { thirdRival: thirdRival && lineOf(thirdRival) }),
    glideCents: strike.glideCents,
    peakDb: strike.peakDb,
    loudness: strike.loudness,
    ...(strike.buzzDb === undefined ? {} : { buzzDb: strike.buzzDb }),
    alsoRinging: strike.alsoRinging,
  };
}

const lineOf = ({ hz, sigmaCents, decaySeconds, levelDb, window }: LineRecord): LineRecord => ({
  hz,
  sigmaCents,
  decaySeconds,
  levelDb,
  ...(window === undefined ? {} : { window }),
});

/** How often one of two lines beats against the other. */
const beatOf = (rival: LineRecord, other: LineRecord | null): Hertz =>
  hertz(Math.abs(rival.hz - (other?.hz ?? rival.hz)));

/** What a kept strike is judged against. */
export interface StrikeAim {
  readonly note: MidiNote;
  /** The band's or the pan's A4. */
  readonly a4: Hertz;
  /** How far from equal temperament the note is meant to be. */
  readonly offset: Cents;
}

/** Where the fundamental of the note should be. */
export const targetOf = ({ note, a4, offset }: StrikeAim): Hertz =>
  shiftedBy(frequencyOf(note, a4), offset);

/**
 * A kept strike as the ear would report it: partial k against k times the target, and against k times the own
 * fundamental. `event` numbers it among the strikes of its reading and stands in for its time.
 */
export function strikeOf(record: StrikeRecord, aim: StrikeAim, event: number): Strike {
  const { fundamental, fundamentalRival, octave, octaveRival, third, thirdRival } = record;
  const target = targetOf(aim);
  const partial = (line: LineRecord, order: number): MeasuredPartial => ({
    ...lineOf(line),
    cents: centsBetween(order * target, line.hz),
  });
  const upper = (line: LineRecord, order: number): UpperPartial => ({
    ...partial(line, order),
    centsFromOwn: centsBetween(order * fundamental.hz, line.hz),
  });
  const thirdOrder = third?.kind === 'twelfth' ? 3 : 4;
  return {
    kind: 'strike',
    event,
    provisional: false,
    at: seconds(event),
    note: aim.note,
    fundamental: partial(fundamental, 1),
    ...(fundamentalRival === undefined
      ? {}
      : {
          fundamentalRival: fundamentalRival && {
            ...partial(fundamentalRival, 1),
            beatHz: beatOf(fundamentalRival, fundamental),
          },
        }),
    isInferred: record.isInferred,
    octave: octave && upper(octave, 2),
    octaveRival: octaveRival && {
      ...upper(octaveRival, 2),
      note: octaveRival.note,
      beatHz: beatOf(octaveRival, octave),
    },
    third: third && { kind: third.kind, ...upper(third, thirdOrder) },
    ...(thirdRival === undefined
      ? {}
      : {
          thirdRival: thirdRival && {
            ...upper(thirdRival, thirdOrder),
            beatHz: beatOf(thirdRival, third),
          },
        }),
    glideCents: record.glideCents,
    peakDb: record.peakDb,
    loudness: record.loudness,
    ...(record.buzzDb === undefined ? {} : { buzzDb: record.buzzDb }),
    alsoRinging: record.alsoRinging,
  };
}
