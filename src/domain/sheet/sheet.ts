// What the page for the tuner says, as data: no words and no layout of a page.
import type { DamageKind } from '../knock-check/damage-evidence';
import type { PanLayout } from '../pans/layout';
import type { PanFamily } from '../pans/pan-family';
import type { JudgedStanding } from '../reading/note-standing';
import type {
  KnockCheck,
  LoggedBlows,
  MarkKind,
  RoundWay,
  Standing,
  StopgapKind,
  Taking,
  TunerVisit,
} from '../records/rack-records';
import type { WorkSince } from '../rounds/pan-now';
import type { Change, RoundChanges } from '../rounds/round-changes';
import type { PanPitch } from '../tuning/pan-pitch';
import type { Reference } from '../tuning/reference';
import type { ThirdKind } from '../tuning/third-kind';
import type { ToleranceSet } from '../tuning/tolerances';
import type { Cents, Hertz, Instant, MidiNote, Seconds } from '../tuning/units';

export interface Sheet {
  readonly madeAt: Instant;
  readonly pan: SheetPan;
  readonly layout: PanLayout;
  /** What the pan is to be tuned to: its own A4, or the band's. */
  readonly a4: Hertz;
  readonly request: SheetRequest;
  /** Null before the first finished round. */
  readonly round: SheetRound | null;
  readonly panPitch: PanPitch | null;
  /** All notes of the layout, lowest first; without a round they say only what was marked. */
  readonly notes: readonly SheetNote[];
  readonly since: SheetSince;
  /** Since the last professional tuning, or all where none is known; the newest first. */
  readonly events: readonly SheetEvent[];
  /** In the same time, note by note. */
  readonly blows: readonly NoteBlows[];
  readonly stopgaps: readonly SheetStopgap[];
}

export interface SheetPan {
  readonly name: string;
  readonly family: PanFamily;
  readonly owner: string;
  readonly maker: string;
  readonly serial: string;
  readonly finish: string;
  readonly remarks: string;
}

export interface SheetRequest {
  readonly wanted: string;
  readonly wantedBy: string;
  readonly contact: string;
}

/** How what the sheet says was measured. */
export interface SheetRound {
  readonly at: Instant;
  readonly way: RoundWay;
  /** Air in degrees Celsius. */
  readonly temperature: number | null;
  readonly standing: Standing | null;
  readonly isProvisional: boolean;
  /** Taken before the last professional tuning: it does not show the pan as it is now. */
  readonly isBeforeTuning: boolean;
  readonly limits: ToleranceSet;
  /** What the states were judged against; the cents of the table are always against the band. */
  readonly reference: Reference;
  /** Each different one of its readings, in the order they were first taken. */
  readonly takings: readonly Taking[];
}

export interface SheetNote extends JudgedStanding {
  readonly note: MidiNote;
  readonly mark: MarkKind;
  readonly stopgap: StopgapKind;
  /** The signs of damage that it showed after the newest knock. */
  readonly signs: SignsOfNote;
  /** Null where the note was read neither in this round nor on the bench since. */
  readonly measured: MeasuredNote | null;
  /** When it was measured on the bench since the round; null where the values are those of the round. */
  readonly benchAt: Instant | null;
  /** When it was measured, on the bench or in the round; null where it was not. */
  readonly readAt: Instant | null;
  /** Whether it was hammered since the round, and measured again after that. */
  readonly work: WorkSince;
  /** What the note did by itself since the baseline; null where it was not read in both rounds. */
  readonly moved: Change | null;
}

export interface SignsOfNote {
  readonly kinds: readonly DamageKind[];
  /** Heard in an earlier round than the one that the table shows. */
  readonly areEarlier: boolean;
}

export interface MeasuredNote {
  readonly hz: Hertz;
  /** Against its target at the sheet's A4, one standard error beside it. */
  readonly cents: Cents;
  readonly sigmaCents: Cents;
  /** The fundamental follows from octave and double octave: the phone did not hear it. */
  readonly isInferred: boolean;
  /** Against twice the own fundamental. */
  readonly octave: Cents | null;
  /** The other of two lines at the octave, where nobody knows which is the note's own. */
  readonly octaveRival: Cents | null;
  readonly third: { readonly kind: ThirdKind; readonly cents: Cents } | null;
  /** Until the fundamental has fallen by 60 dB, at the rate it had in the first half second. */
  readonly ring: Seconds;
  readonly strikes: number;
  /** Between the highest and the lowest fundamental of the strikes. */
  readonly spread: Cents;
  /** Each strike was lower, or higher, than the one before. */
  readonly walking: { readonly centsPerStrike: Cents } | null;
}

/** What changes are counted from. `changes` is null where no other round has been taken since. */
export type SheetSince =
  | { readonly kind: 'tuning'; readonly visit: TunerVisit; readonly changes: RoundChanges | null }
  | { readonly kind: 'first-round'; readonly at: Instant; readonly changes: RoundChanges | null }
  | { readonly kind: 'none' };

export type SheetEvent =
  | {
      readonly kind: 'knock';
      readonly at: Instant;
      readonly check: KnockCheck;
      /** The notes that showed a sign in the soft round after it; null where none was heard or a later one counts. */
      readonly signs: readonly ShownSign[] | null;
    }
  /** A visit at which the pan was not tuned. */
  | { readonly kind: 'visit'; readonly at: Instant; readonly visit: TunerVisit }
  /** Marked so, and not taken back. */
  | {
      readonly kind: 'marked';
      readonly at: Instant;
      readonly mark: 'dead' | 'buzzing' | 'cracked';
      readonly notes: readonly MidiNote[];
    };

/** A sign of damage and the notes that showed it, lowest first. */
export interface ShownSign {
  readonly sign: DamageKind;
  readonly notes: readonly MidiNote[];
}

/** The sets of blows one note was given. */
export interface NoteBlows {
  readonly note: MidiNote;
  readonly sets: number;
  /** How many blows were heard, and whether there were others that nobody counted. */
  readonly counted: number;
  readonly hasUncounted: boolean;
  readonly lastAt: Instant;
  /** Each different place, side and firmness that was logged, in the order they were first logged. */
  readonly logged: readonly LoggedBlows[];
  /** Sets that nobody logged the place of. */
  readonly unlogged: number;
}

export interface SheetStopgap {
  readonly note: MidiNote;
  readonly kind: Exclude<StopgapKind, 'none'>;
  readonly at: Instant;
}
