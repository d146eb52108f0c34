// A round as it is when it begins.
import { notesOf } from '../../domain/pans/layout';
import type {
  PanFields,
  PanId,
  ReadingRecord,
  RoundConditions,
  RoundStart,
  RoundWay,
} from '../../domain/records/rack-records';
import { octaveOrder } from '../../domain/rounds/round-order';
import { beginRound } from '../../domain/rounds/round-progress';
import type { Hertz, MidiNote } from '../../domain/tuning/units';
import type { NewHead } from '../keeping/new-head';
import type { OpenRound } from './open-round';

export interface NewRound {
  readonly pan: PanId;
  readonly fields: PanFields;
  readonly way: RoundWay;
  readonly conditions: RoundConditions;
  /** In which order a guided round asks for the notes; octave pairs, highest first, where nothing else is wanted. */
  readonly order?: readonly MidiNote[];
  /** The pan was knocked: choked notes are to be heard as notes. */
  readonly mayBeChoked?: boolean;
  /** Newest readings of the pan, to help the ear. */
  readonly earlier: readonly ReadingRecord[];
}

/** The round with nothing done in it; `a4` holds where the pan has no pitch of its own. */
export function begunRound(begin: NewRound, a4: Hertz, head: NewHead): OpenRound {
  const { fields, way, conditions, mayBeChoked = false } = begin;
  const order = begin.order ?? octaveOrder(notesOf(fields.layout));
  const start: RoundStart = {
    ...head,
    kind: 'round',
    way,
    order,
    conditions,
    a4: fields.a4 ?? a4,
  };
  const progress = beginRound(way, order);
  return {
    fields,
    start,
    progress,
    kept: progress,
    readings: [],
    lastDone: null,
    isOver: false,
    mayBeChoked,
  };
}
