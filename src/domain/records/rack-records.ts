// What the rack keeps, shape 1: records that are only ever added, never changed. What a pan is called today,
// what a round found and how a note moved all follow from them, so two phones are merged by taking both sets.

import type { PanLayout } from '../pans/layout';
import type { PanFamily } from '../pans/pan-family';
import type { Hertz, Instant, MidiNote } from '../tuning/units';
import type { BlowFirmness, BlowWhere } from './blow-places';
import type { ImpactPlace } from './impact-place';
import type { LookAnswer, LookKind } from './look-kinds';
import type { StrikeRecord } from './strike-record';

declare const identity: unique symbol;
type Identity<Name extends string> = string & { readonly [identity]: Name };

export type PanId = Identity<'PanId'>;
export type RoundId = Identity<'RoundId'>;
export type RecordId = Identity<'RecordId'>;
export type AttachmentId = Identity<'AttachmentId'>;

export const panId = (text: string): PanId => text as PanId;
export const roundId = (text: string): RoundId => text as RoundId;
export const recordId = (text: string): RecordId => text as RecordId;
export const attachmentId = (text: string): AttachmentId => text as AttachmentId;

interface RecordHead {
  readonly shape: 1;
  /** Unique in the world, so that the same record is the same one on every phone. */
  readonly id: RecordId;
  readonly pan: PanId;
  /** When it was made, by the clock of the phone it was made on. This is what people are shown. */
  readonly at: Instant;
  /** Its place in the order, see `record-order.ts`. Missing in records of older apps: their time is their turn. */
  readonly turn?: Instant;
  /** Digest of all other fields, made at writing (`record-digest.ts`). Missing in records of older apps. */
  readonly digest?: string;
}

/** What can be edited about a pan. Texts are free and may be empty, except the name. */
export interface PanFields {
  readonly name: string;
  readonly family: PanFamily;
  /** The pan's own copy: editing it changes no built-in layout and no reading. */
  readonly layout: PanLayout;
  readonly owner: string;
  readonly maker: string;
  readonly serial: string;
  readonly finish: string;
  readonly remarks: string;
  /** A4 this pan is to be tuned to, or null for the band's pitch of the settings. */
  readonly a4: Hertz | null;
  readonly photo: AttachmentId | null;
  /** What the tuner is asked to do, and by when. */
  readonly wanted: string;
  readonly wantedBy: string;
  /** Taken off the rack; its readings stay and it can be put back. */
  readonly isRemoved: boolean;
}

/**
 * Some fields of a pan written at once. The first edit of a pan holds all of them. A field's value is that of
 * the edits no other edit of the same field replaces: one, or several where two phones wrote at the same time.
 */
export interface PanEdit extends RecordHead {
  readonly kind: 'pan-edit';
  readonly fields: Partial<PanFields>;
  /** The edits whose values of these fields were known and are replaced. */
  readonly replaces: readonly RecordId[];
}

export type RoundWay = 'guided' | 'free' | 'quick';

/** How the pan stood before a round: one that has not settled yet is measured provisionally. */
export type Standing = 'settled' | 'unloaded' | 'sun';

export interface RoundConditions {
  /** Air temperature in degrees Celsius, or null where nobody knew. */
  readonly temperature: number | null;
  readonly standing: Standing | null;
}

/** The beginning of a round; its own `id` names the round (see `roundOf`). */
export interface RoundStart extends RecordHead {
  readonly kind: 'round';
  readonly way: RoundWay;
  /** The notes to be measured, in this order where the way is guided. */
  readonly order: readonly MidiNote[];
  readonly conditions: RoundConditions;
  /** A4 that the round was judged against when it was taken. */
  readonly a4: Hertz;
}

export const roundOf = (start: RoundStart): RoundId => roundId(start.id);

/** The end of a round; a round without one was interrupted and can be resumed. */
export interface RoundEnd extends RecordHead {
  readonly kind: 'round-end';
  readonly round: RoundId;
  readonly ending: 'finished' | 'left';
}

/** Where the sound of a reading came from and what the phone did to it. */
export interface Taking {
  readonly source: 'microphone' | 'file' | 'practice';
  readonly sampleRate: number;
  /** Phone processing that could not be switched off, in plain words. */
  readonly processing: readonly string[];
  /** Stretches of lost sound since listening began. */
  readonly gaps: number;
  readonly appVersion: string;
}

/** Blows on the note asked for that became no strike: how often each kind was heard since the note was asked for. */
export interface RefusedBlows {
  /** Heard as a mere knock. */
  readonly knocks: number;
  /** Single blows that were heard as several. */
  readonly heardAsSeveral: number;
}

/** Agreeing strikes on one note: three in a full round, one in a quick round. */
export interface ReadingRecord extends RecordHead {
  readonly kind: 'reading';
  /** The round it belongs to, or null for one taken outside a round. */
  readonly round: RoundId | null;
  readonly note: MidiNote;
  readonly strikes: readonly StrikeRecord[];
  readonly taking: Taking;
  /** Missing where there were none, where no note was asked for, and in readings of older apps. */
  readonly refused?: RefusedBlows;
  /** The kept sound, or null: keeping it is off unless the user wants it. */
  readonly sound: AttachmentId | null;
}

export type MarkKind = 'dead' | 'buzzing' | 'cracked' | 'skipped' | 'none';

/** What a person noted about a note; the newest mark of a note holds, `none` takes it back. */
export interface Mark extends RecordHead {
  readonly kind: 'mark';
  readonly round: RoundId | null;
  readonly note: MidiNote;
  readonly mark: MarkKind;
  /** See `ReadingRecord`: a note that is marked instead of read has no reading to hold them. */
  readonly refused?: RefusedBlows;
}

/** Where the blows of a set fell and how firm they were, as the tuner logged it. */
export interface LoggedBlows extends BlowWhere {
  readonly firmness: BlowFirmness;
}

/** A set of hammer blows on one note, between two readings; what it changed follows from them. */
export interface Blows extends RecordHead {
  readonly kind: 'blows';
  readonly round: null;
  readonly note: MidiNote;
  /** Null for blows that were heard but not logged. */
  readonly logged: LoggedBlows | null;
  /** How many blows were heard, or null where nobody listened. */
  readonly count: number | null;
  /** The readings of the note right before and right after, or null where there was none. */
  readonly before: RecordId | null;
  readonly after: RecordId | null;
}

/** One thing that was looked at after a fall. */
export interface Look {
  readonly look: LookKind;
  readonly answer: LookAnswer;
  readonly photo: AttachmentId | null;
}

/** What was seen on a pan after a fall; what was heard is in the readings of its round. The newest one counts. */
export interface KnockCheck extends RecordHead {
  readonly kind: 'knock-check';
  /** The soft round that was begun after the looks, or null where the looks already decided. */
  readonly round: RoundId | null;
  readonly looks: readonly Look[];
  /** Null where nobody knows. */
  readonly impact: ImpactPlace | null;
  readonly remarks: string;
}

/** A makeshift for tonight that was put on a note and must come off before the tuner comes. */
export type StopgapKind = 'magnet' | 'none';

/** A stopgap on a note; the newest one of a note holds, `none` takes it off. */
export interface Stopgap extends RecordHead {
  readonly kind: 'stopgap';
  readonly note: MidiNote;
  readonly stopgap: StopgapKind;
}

/** What a professional tuner did and said; how the pan stood before and after is in its rounds. */
export interface TunerVisit extends RecordHead {
  readonly kind: 'tuner-visit';
  /** When the tuner was done: rounds after it show the pan as it was left. */
  readonly visitedAt: Instant;
  readonly who: string;
  readonly done: string;
  readonly remarks: string;
  /** When the tuner comes again, or null where nothing was agreed. */
  readonly nextVisit: Instant | null;
  /** The pan was tuned: what changes is counted from here. */
  readonly startsBaseline: boolean;
}

/** Takes another record out of everything that is computed. The record itself stays. */
export interface Erasure extends RecordHead {
  readonly kind: 'erasure';
  readonly target: RecordId;
}

export type RackRecord =
  | PanEdit
  | RoundStart
  | RoundEnd
  | ReadingRecord
  | Mark
  | Blows
  | KnockCheck
  | Stopgap
  | TunerVisit
  | Erasure;

/** A photo or a sound: bytes beside the records, never changed once kept. */
export interface Attachment {
  readonly shape: 1;
  readonly id: AttachmentId;
  readonly pan: PanId;
  readonly at: Instant;
  readonly kind: 'photo' | 'sound';
  /** Media type, "image/jpeg" or "audio/wav". */
  readonly type: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** All records of one pan except its readings, which are many and read round by round or note by note. */
export interface PanRecords {
  readonly pan: PanId;
  readonly edits: readonly PanEdit[];
  readonly rounds: readonly RoundStart[];
  readonly ends: readonly RoundEnd[];
  readonly marks: readonly Mark[];
  readonly blows: readonly Blows[];
  readonly knockChecks: readonly KnockCheck[];
  readonly stopgaps: readonly Stopgap[];
  readonly visits: readonly TunerVisit[];
  readonly erasures: readonly Erasure[];
}
