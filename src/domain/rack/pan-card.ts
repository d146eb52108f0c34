// What the rack shows of a pan without reading its records: derived, kept only to open quickly.

import type { PanFamily } from '../pans/pan-family';
import type { NoteStanding } from '../reading/note-standing';
import type { PanId, RoundId } from '../records/rack-records';
import type { Cents, Hertz, Instant, MidiNote } from '../tuning/units';
import type { NeedReason } from './tuner-need';

export interface PanCard {
  /** Cards of another version are thrown away and made anew. */
  readonly version: 3;
  /** The settings it was judged by (`judgingText`): with others it is made anew. */
  readonly judgedBy: string;
  readonly pan: PanId;
  readonly name: string;
  readonly family: PanFamily;
  readonly layoutName: string;
  readonly owner: string;
  readonly maker: string;
  readonly serial: string;
  readonly isRemoved: boolean;
  /** Two phones wrote the same field; the pan's page asks which value is right. */
  readonly hasConflict: boolean;
  readonly noteCount: number;
  /** Start of the newest finished round, or null before the first. */
  readonly lastRoundAt: Instant | null;
  readonly isProvisional: boolean;
  /** A round that was begun and not ended. */
  readonly openRound: RoundId | null;
  /** How many notes stand how now (`panNow`), marks counted in. */
  readonly standings: Readonly<Record<NoteStanding, number>>;
  /** The notes in most need, worst first, at most three. */
  readonly worst: readonly MidiNote[];
  /** Notes that were worked on since the newest finished round, lowest first. */
  readonly worked: readonly MidiNote[];
  /** What the pan is to be tuned to: its own A4, or the band's. */
  readonly a4: Hertz;
  /** Pan pitch against `a4`, or null while unknown. */
  readonly panPitch: Cents | null;
  /** Notes with a stopgap on them, which must come off before the tuner comes; lowest first. */
  readonly stopgaps: readonly MidiNote[];
  /** How much the pan needs the tuner; larger is more. 0: nothing known or nothing wrong. */
  readonly need: number;
  readonly reasons: readonly NeedReason[];
}
